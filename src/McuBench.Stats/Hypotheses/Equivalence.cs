using McuBench.Stats.Distributions;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Hypotheses;

/// <summary>Tests that earn a "no difference": two one-sided tests against a stated margin (schuirmann-1987).</summary>
public static class Equivalence
{
    /// <summary>Whether two means are within a margin of one another, without taking the variances to be equal. O(n).</summary>
    /// <param name="first">The first sample, two values or more.</param>
    /// <param name="second">The second sample, two values or more, in the same unit.</param>
    /// <param name="margin">What counts as equal, for first mean less second mean.</param>
    /// <param name="significance">The chance, at most, of a wrong "equivalent"; above 0 and below 0.5.</param>
    /// <exception cref="ArgumentNullException">A sample or the margin is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The significance lies outside (0, 0.5), or an end of the
    /// interval is above the greatest number.</exception>
    /// <exception cref="ArgumentException">A sample has one value, or neither sample spreads.</exception>
    public static EquivalenceResult Welch(
        Sample first,
        Sample second,
        EquivalenceMargin margin,
        double significance = 0.05
    )
    {
        ArgumentNullException.ThrowIfNull(margin);
        return Against(TwoSample.Welch(first, second, Options(significance)).Estimate, margin, significance);
    }

    /// <summary>Whether two means are within a margin of one another, for populations known to spread alike. O(n).</summary>
    /// <param name="first">The first sample.</param>
    /// <param name="second">The second sample, in the same unit; three values or more in both together.</param>
    /// <param name="margin">What counts as equal, for first mean less second mean.</param>
    /// <param name="significance">The chance, at most, of a wrong "equivalent"; above 0 and below 0.5.</param>
    /// <exception cref="ArgumentNullException">A sample or the margin is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The significance lies outside (0, 0.5), or an end of the
    /// interval is above the greatest number.</exception>
    /// <exception cref="ArgumentException">There are fewer than three values, or neither sample spreads.</exception>
    public static EquivalenceResult Pooled(
        Sample first,
        Sample second,
        EquivalenceMargin margin,
        double significance = 0.05
    )
    {
        ArgumentNullException.ThrowIfNull(margin);
        return Against(TwoSample.Pooled(first, second, Options(significance)).Estimate, margin, significance);
    }

    /// <summary>Whether the ratio of two geometric means is within a margin: Welch's test on the logarithms. O(n).</summary>
    /// <remarks>The target is that of <see cref="RatioInterval.WelchOnLogs"/>. The statistics are those of the
    /// logarithms.</remarks>
    /// <param name="numerator">The sample above the line, two values or more, all above 0.</param>
    /// <param name="denominator">The sample below the line, two values or more, all above 0, in the same unit.</param>
    /// <param name="margin">What counts as equal, for the ratio; both ends above 0.</param>
    /// <param name="significance">The chance, at most, of a wrong "equivalent"; above 0 and below 0.5.</param>
    /// <exception cref="ArgumentNullException">A sample or the margin is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The significance lies outside (0, 0.5), a value or the margin's lower
    /// end is not above 0, or the ratio or an end of its interval is not a finite number.</exception>
    /// <exception cref="ArgumentException">A sample has one value, or neither sample spreads.</exception>
    public static EquivalenceResult WelchOnLogs(
        Sample numerator,
        Sample denominator,
        EquivalenceMargin margin,
        double significance = 0.05
    )
    {
        ArgumentNullException.ThrowIfNull(numerator);
        ArgumentNullException.ThrowIfNull(denominator);
        EquivalenceMargin logMargin = OnLogs(margin);
        var above = Sample.Of(RatioInterval.Logarithms(numerator, nameof(numerator)));
        var below = Sample.Of(RatioInterval.Logarithms(denominator, nameof(denominator)));
        EquivalenceResult onLogs = Welch(above, below, logMargin, significance);
        return onLogs with
        {
            Estimate = RatioInterval.WelchOnLogs(numerator, denominator, 1 - 2 * significance),
            Margin = margin,
        };
    }

    /// <summary>Whether one population is shifted against another of the same shape by no more than a margin: two one-sided
    /// Mann–Whitney tests (wellek-2010, chapter 6; mann-whitney-1947). O(n log n), and O(n²m²) where exact.</summary>
    /// <remarks>The estimate is the Hodges–Lehmann shift with its interval (<see cref="HodgesLehmannInterval.Shift"/>). Without ties,
    /// deciding by that interval or by the p-values is the same; with ties it may differ by a step of the statistic, and the
    /// p-values decide. The statistics are U against either end of the margin. Where the shapes differ the significance may not
    /// hold.</remarks>
    /// <param name="first">The first sample; at a significance of 5 % three values or more where the other has as many.</param>
    /// <param name="second">The second sample, in the same unit.</param>
    /// <param name="margin">What counts as equal, for the shift of first against second.</param>
    /// <param name="significance">The chance, at most, of a wrong "equivalent"; above 0 and below 0.5.</param>
    /// <param name="distribution">Where ranks and p-values come from.</param>
    /// <exception cref="ArgumentNullException">A sample or the margin is null.</exception>
    /// <exception cref="ArgumentException">There are too few values ever to show equivalence; the message says how many a side
    /// would do.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The significance lies outside (0, 0.5), the distribution is not a named one or
    /// out of reach, or a difference is above the greatest number.</exception>
    public static EquivalenceResult MannWhitney(
        Sample first,
        Sample second,
        EquivalenceMargin margin,
        double significance = 0.05,
        NullDistribution distribution = NullDistribution.Automatic
    )
    {
        ArgumentNullException.ThrowIfNull(margin);
        double confidence = Options(significance).Confidence;
        Estimate shift = HodgesLehmannInterval.Shift(first, second, confidence, distribution);
        var above = new RankTestOptions
        {
            NullValue = margin.Lower,
            Alternative = Alternative.Greater,
            Distribution = distribution,
        };
        RankTestResult lower = TwoSample.MannWhitney(first, second, above);
        RankTestResult upper = TwoSample.MannWhitney(
            first,
            second,
            above with
            {
                NullValue = margin.Upper,
                Alternative = Alternative.Less,
            }
        );
        return new EquivalenceResult(
            shift,
            margin,
            significance,
            lower.Statistic,
            lower.PValue,
            upper.Statistic,
            upper.PValue
        );
    }

    /// <summary>Whether one population is a multiple of another by a factor within a margin: the Mann–Whitney tests on the
    /// logarithms. O(n log n), and O(n²m²) where exact.</summary>
    /// <remarks>The estimate is that of <see cref="HodgesLehmannInterval.Ratio"/>; all else is as for the shift.</remarks>
    /// <param name="numerator">The sample above the line, all values above 0; counts as for the shift.</param>
    /// <param name="denominator">The sample below the line, all values above 0, in the same unit.</param>
    /// <param name="margin">What counts as equal, for the ratio; both ends above 0.</param>
    /// <param name="significance">The chance, at most, of a wrong "equivalent"; above 0 and below 0.5.</param>
    /// <param name="distribution">Where ranks and p-values come from.</param>
    /// <exception cref="ArgumentNullException">A sample or the margin is null.</exception>
    /// <exception cref="ArgumentException">There are too few values ever to show equivalence; the message says how many a side
    /// would do.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The significance lies outside (0, 0.5), a value or the margin's lower end is
    /// not above 0, the distribution is not a named one or out of reach, or the ratio or an end of its interval is not a finite
    /// number.</exception>
    public static EquivalenceResult MannWhitneyOnLogs(
        Sample numerator,
        Sample denominator,
        EquivalenceMargin margin,
        double significance = 0.05,
        NullDistribution distribution = NullDistribution.Automatic
    )
    {
        ArgumentNullException.ThrowIfNull(numerator);
        ArgumentNullException.ThrowIfNull(denominator);
        var above = Sample.Of(RatioInterval.Logarithms(numerator, nameof(numerator)));
        var below = Sample.Of(RatioInterval.Logarithms(denominator, nameof(denominator)));
        EquivalenceResult onLogs = MannWhitney(above, below, OnLogs(margin), significance, distribution);
        return onLogs with
        {
            Estimate = HodgesLehmannInterval.Ratio(numerator, denominator, 1 - 2 * significance, distribution),
            Margin = margin,
        };
    }

    private static EquivalenceMargin OnLogs(EquivalenceMargin margin)
    {
        ArgumentNullException.ThrowIfNull(margin);
        Check.Positive(margin.Lower, "Lower end of a margin for a ratio", nameof(margin));
        return EquivalenceMargin.Of(Math.Log(margin.Lower), Math.Log(margin.Upper));
    }

    private static TTestOptions Options(double significance) =>
        significance > 0 && significance < 0.5
            ? new TTestOptions { Confidence = 1 - 2 * significance }
            : throw Check.OutOfRange(nameof(significance), "Significance", "above 0 and below 0.5", significance);

    private static EquivalenceResult Against(Estimate estimate, EquivalenceMargin margin, double significance)
    {
        var t = StudentT.Of(estimate.DegreesOfFreedom!.Value);
        double error = estimate.StandardError!.Value;
        double lower = (estimate.Value - margin.Lower) / error;
        double upper = (estimate.Value - margin.Upper) / error;
        return new EquivalenceResult(estimate, margin, significance, lower, t.UpperTail(lower), upper, t.Cdf(upper));
    }
}
