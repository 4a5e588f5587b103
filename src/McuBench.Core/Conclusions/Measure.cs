using McuBench.Core.Quantities;
using McuBench.Stats.Distributions;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Turns an uncertain number into a result: interval, degrees of freedom, budget and notes.</summary>
internal sealed record Measure(double Confidence, int Trials, string Method)
{
    private const double WidestSymmetric = 0.5;

    private const string WideNote = "The interval is so wide that it was computed on logarithms, to stay above zero.";

    private const string NothingKnownNote =
        "Nothing is known of what it was measured with, and readings don't scatter: there is no interval.";

    private const string BoundlessNote = "Readings scatter so much that no finite interval can be given.";

    /// <summary>A result in a unit.</summary>
    public Measured<T> Of<T>(UncertainValue value, Func<double, T> wrap, Ends ends, params IEnumerable<string> notes)
        where T : struct
    {
        var (lower, upper, wide) = EndsOf(value, ends);
        return Result(
            value.Value,
            value.StandardUncertainty,
            lower,
            upper,
            value,
            Budget(value),
            wrap,
            wide ? notes.Append(WideNote) : notes
        );
    }

    /// <summary>A result whose ends were found elsewhere.</summary>
    public Measured<T> Between<T>(UncertainValue value, double lower, double upper, Func<double, T> wrap)
        where T : struct =>
        Result(value.Value, value.StandardUncertainty, lower, upper, value, Budget(value), wrap, []);

    /// <summary>A constant divided by a positive value, ends and all, so that the two results never contradict each other.</summary>
    public Measured<T> Reciprocal<T>(
        double numerator,
        UncertainValue value,
        Func<double, T> wrap,
        Ends ends,
        params IEnumerable<string> notes
    )
        where T : struct
    {
        var (lower, upper, wide) = EndsOf(value, ends);
        return Result(
            numerator / value.Value,
            numerator / value.Value * (value.StandardUncertainty / value.Value),
            numerator / upper,
            numerator / lower,
            value,
            Budget(value),
            wrap,
            wide ? notes.Append(WideNote) : notes
        );
    }

    /// <summary>One less a ratio whose interval is computed on logarithms.</summary>
    public Measured<Ratio> Complement(UncertainValue ratio)
    {
        var (lower, upper, _) = EndsOf(ratio, Ends.Logarithmic);
        return Result(
            1 - ratio.Value,
            ratio.StandardUncertainty,
            1 - upper,
            1 - lower,
            ratio,
            Budget(ratio),
            share => Si.Ratio(share),
            []
        );
    }

    /// <summary>The coverage factor: Student's t at the value's effective degrees of freedom.</summary>
    public double CoverageFactor(double degreesOfFreedom) =>
        StudentT.Of(degreesOfFreedom).UpperQuantile((1 - Confidence) / 2);

    private (double Lower, double Upper, bool Wide) EndsOf(UncertainValue value, Ends ends)
    {
        var uncertainty = value.StandardUncertainty;
        if (value.Missing is not null || uncertainty == 0)
        {
            return (value.Value, value.Value, false);
        }

        var reach = CoverageReach.Of(value, (1 - Confidence) / 2);
        var wide = ends == Ends.Positive && reach > WidestSymmetric * value.Value;
        if (ends != Ends.Logarithmic && !wide)
        {
            return (value.Value - reach, value.Value + reach, false);
        }

        var factor = Math.Exp(reach / value.Value);
        return (value.Value / factor, value.Value * factor, wide);
    }

    private Measured<T> Result<T>(
        double value,
        double uncertainty,
        double lower,
        double upper,
        UncertainValue source,
        IEnumerable<BudgetLine> budget,
        Func<double, T> wrap,
        IEnumerable<string> notes
    )
        where T : struct
    {
        if (source.Missing is { } missing)
        {
            return new Measured<T>(wrap(value), spread: null, Confidence, Trials, Method, [], notes.Prepend(missing));
        }

        // Two readings with hardly anything in common may give ends beyond a double.
        var isFinite = double.IsFinite(uncertainty) && double.IsFinite(lower) && double.IsFinite(upper);
        return isFinite && lower < upper && uncertainty > 0
            ? new Measured<T>(
                wrap(value),
                new MeasuredSpread<T>(wrap(uncertainty), wrap(lower), wrap(upper), source.DegreesOfFreedom),
                Confidence,
                Trials,
                Method,
                budget,
                notes
            )
            : new Measured<T>(
                wrap(value),
                spread: null,
                Confidence,
                Trials,
                Method,
                [],
                notes.Prepend(isFinite ? NothingKnownNote : BoundlessNote)
            );
    }

    private static IEnumerable<BudgetLine> Budget(UncertainValue value)
    {
        var uncertainty = value.StandardUncertainty;

        // A net figure may come out at zero, where relative figures have no base: the whole uncertainty stands in.
        var size = value.Value == 0 ? uncertainty : Math.Abs(value.Value);
        return value
            .Contributions.OrderByDescending(c => Math.Abs(c.Amount))
            .ThenBy(c => c.Source.Key, StringComparer.Ordinal)
            .Select(c => new BudgetLine(
                c.Source.Component,
                c.Source.Evaluation,
                Math.Abs(c.Amount) / size,
                c.Amount / uncertainty * (c.Amount / uncertainty),
                c.Source.AveragesDown,
                c.Source.DegreesOfFreedom,
                c.Source.Kind,
                c.Source.Size
            ));
    }
}
