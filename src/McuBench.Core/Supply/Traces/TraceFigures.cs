using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Stats.Series;

namespace McuBench.Core.Supply.Traces;

/// <summary>Turns the integrals of a trace into results with their budgets.</summary>
internal sealed record TraceFigures(
    TraceAccuracy Accuracy,
    IntegralFigures Current,
    IntegralFigures? Power,
    long Clipped
)
{
    private const string Method = "trapezoidal rule on a trace";

    public TraceTotals Totals(double confidence, double? volts)
    {
        var measure = new Measure(confidence, (int)Math.Min(Current.Count, int.MaxValue), Method);
        var charge = Charge();
        var notes = Notes().ToArray();
        var energy =
            Power is not null ? Energy(Power)
            : volts is { } constant ? WithGain(charge.Times(constant), constant)
            : null;
        return new TraceTotals
        {
            Samples = Current.Count,
            Missing = Current.Missing,
            Clipped = Clipped,
            Gaps = Current.Gaps,
            Time = Si.Duration(Current.Span),
            InGaps = Si.Duration(Current.Uncovered),
            Least = Si.Current(Current.Minimum),
            Greatest = Si.Current(Current.Maximum),
            Charge = measure.Of(charge, value => Si.Charge(value), Ends.Symmetric, notes),
            ChargeHeld = Si.Charge(Current.Held + Current.Bridged),
            MeanCurrent =
                Current.Span > 0
                    ? measure.Of(MeanCurrent(charge), value => Si.Current(value), Ends.Symmetric, notes)
                    : null,
            Energy = energy is null ? null : measure.Of(energy, value => Si.Energy(value), Ends.Symmetric, notes),
        };
    }

    private IEnumerable<string> Notes()
    {
        if (Current.Gaps > 0)
        {
            yield return FormattableString.Invariant(
                $"{Current.Gaps} gaps, {Current.Uncovered / Current.Span * 100:0.###} % of the time, are bridged by straight lines."
            );
        }

        if (Current.HalvingDifference is null)
        {
            yield return "What lies between the samples is not in the budget: with gaps, or fewer than three samples, it can't be judged.";
        }
    }

    private UncertainValue Charge()
    {
        var gain = RunTimeFigures.OfTolerance(Si.Fraction(Accuracy.Gain)) * CoveredAndBridged(Current);
        var offset = RunTimeFigures.OfTolerance(Si.Amperes(Accuracy.Offset)) * Current.Span;
        return Judged(
            UncertainValue.Of(
                CoveredAndBridged(Current),
                [
                    new Contribution(Known("gain", "gain of the meter"), gain),
                    new Contribution(Known("offset", "offset of the meter"), offset),
                    TimeBase(Current),
                    .. Sampled(Current),
                ]
            )
        );
    }

    private UncertainValue Energy(IntegralFigures power)
    {
        var whole = CoveredAndBridged(power);
        var meanVolts = Current.Trapezoid > 0 ? power.Trapezoid / Current.Trapezoid : 0;
        var offset = RunTimeFigures.OfTolerance(Si.Amperes(Accuracy.Offset)) * Current.Span * meanVolts;
        return Judged(
            UncertainValue.Of(
                whole,
                [
                    new Contribution(
                        Known("gain", "gain of the meter"),
                        RunTimeFigures.OfTolerance(Si.Fraction(Accuracy.Gain)) * whole
                    ),
                    new Contribution(
                        Known("voltage", "voltage"),
                        RunTimeFigures.OfTolerance(Si.Fraction(Accuracy.VoltageGain)) * whole
                    ),
                    new Contribution(Known("offset", "offset of the meter"), offset),
                    TimeBase(power),
                    .. Sampled(power),
                ]
            )
        );
    }

    private UncertainValue WithGain(UncertainValue energy, double volts) =>
        volts > 0 && Si.Fraction(Accuracy.VoltageGain) > 0
            ? energy.WithRelative(
                Known("voltage", "voltage"),
                RunTimeFigures.OfTolerance(Si.Fraction(Accuracy.VoltageGain))
            )
            : energy;

    /// <summary>The charge over the time: the clock's error is in both, and goes out.</summary>
    private UncertainValue MeanCurrent(UncertainValue charge) =>
        charge.Without(new HashSet<string>(StringComparer.Ordinal) { "trace|time base" }).Times(1 / Current.Span);

    private UncertainValue Judged(UncertainValue value)
    {
        if (Clipped > 0)
        {
            return value.WithMissing(
                FormattableString.Invariant(
                    $"{Clipped} samples are clipped: the truth is above this, by an unknown amount."
                )
            );
        }

        return Current.Span > 0 ? value : value.WithMissing("One sample alone spans no time.");
    }

    private Contribution TimeBase(IntegralFigures figures) =>
        new(
            Known("time base", "time base of the meter"),
            RunTimeFigures.OfTolerance(Si.Fraction(Accuracy.TimeBase)) * CoveredAndBridged(figures)
        );

    private static IEnumerable<Contribution> Sampled(IntegralFigures figures)
    {
        if (figures.HalvingDifference is { } difference)
        {
            yield return new Contribution(
                Known("sampling", "sampling and noise, from every other sample"),
                RunTimeFigures.OfTolerance(Math.Abs(difference))
            );
        }

        if (figures.Uncovered > 0)
        {
            yield return new Contribution(
                Known("gaps", "gaps"),
                RunTimeFigures.OfTolerance(figures.Uncovered * (figures.Maximum - figures.Minimum))
            );
        }
    }

    private static double CoveredAndBridged(IntegralFigures figures) => figures.Trapezoid + figures.Bridged;

    private static Source Known(string key, string component) =>
        new($"trace|{key}", component, EvaluationType.TypeB, double.PositiveInfinity, AveragesDown: false);
}
