using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Turns two uncertain numbers into a ratio and a verdict.</summary>
internal static class CompareFigures
{
    /// <summary>The share of studies in which the smallest detectable difference would be shown.</summary>
    private const double Power = 0.80;

    /// <summary>The first divided by the second.</summary>
    /// <param name="quantity">What is compared.</param>
    /// <param name="first">The first side's figure, above zero.</param>
    /// <param name="second">The second side's figure, above zero.</param>
    /// <param name="trials">The number of trials behind both.</param>
    /// <param name="options">Confidence and margin.</param>
    /// <param name="withheld">Why there is to be no verdict, or null.</param>
    public static QuantityComparison Of(
        ComparedQuantity quantity,
        UncertainValue first,
        UncertainValue second,
        int trials,
        ConclusionOptions options,
        NoVerdictReason? withheld
    )
    {
        var ratio = first.Over(second);
        var measure = new Measure(options.Confidence, trials, MethodOf(ratio));
        var measured = measure.Of(ratio, number => number, Ends.Logarithmic);
        var savedByFirst = measure.Complement(ratio);
        var savedBySecond = measure.Complement(second.Over(first));
        if (!measured.HasInterval)
        {
            return new QuantityComparison(
                quantity,
                measured,
                savedByFirst,
                savedBySecond,
                Verdict.NoVerdict,
                less: null,
                NoVerdictReason.NoInterval,
                smallestDetectableDifference: null,
                options.Margin
            );
        }

        var twoSided = CoverageReach.Of(ratio, (1 - options.Confidence) / 2) / ratio.Value;
        var oneSided = CoverageReach.Of(ratio, 1 - options.Confidence) / ratio.Value;
        var distance = Math.Abs(Math.Log(ratio.Value));

        // Equality is shown where even the far end of the two one-sided tests' interval lies within the margin
        // (schuirmann-1987), which on logarithms is the same on either side of 1.
        var isDifferent = distance > twoSided;
        var isWithin = options.Margin is { } margin && distance + oneSided < Math.Log(1 + Si.Fraction(margin));
        var verdict = (withheld, isDifferent, isWithin) switch
        {
            (not null, _, _) => Verdict.NoVerdict,
            (_, true, false) => Verdict.Different,
            (_, true, true) => Verdict.DifferentWithinMargin,
            (_, false, true) => Verdict.EqualWithinMargin,
            _ => Verdict.NotResolved,
        };
        Side? less = verdict is Verdict.Different or Verdict.DifferentWithinMargin
            ? ratio.Value < 1
                ? Side.First
                : Side.Second
            : null;
        var smallest = Math.Exp(twoSided + CoverageReach.Of(ratio, 1 - Power) / ratio.Value) - 1;
        return new QuantityComparison(
            quantity,
            measured,
            savedByFirst,
            savedBySecond,
            verdict,
            less,
            withheld,
            double.IsFinite(smallest) ? Si.Ratio(smallest) : null,
            options.Margin
        );
    }

    /// <summary>How many times as fast the first is: the reciprocal of the ratio of run times, ends and all.</summary>
    public static Measured<double> SpeedRatio(
        UncertainValue first,
        UncertainValue second,
        int trials,
        double confidence
    )
    {
        var ratio = first.Over(second);
        return new Measure(confidence, trials, MethodOf(ratio)).Reciprocal(
            1,
            ratio,
            number => number,
            Ends.Logarithmic
        );
    }

    private static string MethodOf(UncertainValue ratio)
    {
        var parts = new List<string> { "ratio of means, Student t on logarithms (Welch–Satterthwaite)" };
        if (ratio.Contributions.Any(c => c.Source.Key.StartsWith(ReadingMean.StepKey, StringComparison.Ordinal)))
        {
            parts.Add("steps by the likelihood of what readings stand for");
        }

        if (ratio.Contributions.Any(c => c.Source.IsLimit))
        {
            parts.Add("the largest limit as a uniform distribution");
        }

        return string.Join(", ", parts);
    }
}
