using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Intervals;

public sealed class FiellerEndsTests
{
    private static readonly double[] Above = [10.2, 9.7, 10.9, 10.4, 9.9];
    private static readonly double[] Below = [4.1, 3.8, 4.4, 4.0, 4.3];

    [Fact]
    public void Of_IndependentMeans_IsTheIntervalOfTheirRatio()
    {
        var (numerator, denominator) = (Sample.Of(Above), Sample.Of(Below));
        var estimate = RatioInterval.Fieller(numerator, denominator);
        double t = StudentT.Of(estimate.DegreesOfFreedom!.Value).UpperQuantile(0.025);

        var ends = FiellerEnds.Of(
            (Location.Mean(Above), Location.Mean(Below)),
            (
                Scale.StandardDeviation(numerator.Values) / Math.Sqrt(5),
                Scale.StandardDeviation(denominator.Values) / Math.Sqrt(5)
            ),
            0,
            t
        );

        Assert.Equal(estimate.Interval!.Lower, ends!.Value.Lower, 1e-12);
        Assert.Equal(estimate.Interval.Upper, ends.Value.Upper, 1e-12);
    }

    [Fact]
    public void Of_CorrelatedEstimates_SolvesTheQuadratic()
    {
        var ends = FiellerEnds.Of((6, -2), (0.3, 0.2), 0.04, 2)!.Value;

        Assert.Equal(4, Excess(ends.Lower), 1e-9);
        Assert.Equal(4, Excess(ends.Upper), 1e-9);
        Assert.InRange(-3, ends.Lower, ends.Upper);

        static double Excess(double r) => (6 + 2 * r) * (6 + 2 * r) / (0.09 - 2 * r * 0.04 + r * r * 0.04);
    }

    [Fact]
    public void Of_ErrorsThatCancel_LeaveNoWidth()
    {
        // Both moved by one factor: the ratio doesn't move.
        var ends = FiellerEnds.Of((6, 2), (0.6, 0.2), 0.12, 2)!.Value;

        Assert.Equal(3, ends.Lower, 1e-7);
        Assert.Equal(3, ends.Upper, 1e-7);
    }

    [Fact]
    public void Of_DenominatorNotResolved_HasNoEnds() => Assert.Null(FiellerEnds.Of((6, 2), (0.1, 1), 0, 2));

    [Fact]
    public void Of_NegativeError_IsRefused()
    {
        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => FiellerEnds.Of((6, 2), (-0.1, 1), 0, 2));

        Assert.Equal("standardErrors", refused.ParamName);
        Assert.StartsWith(
            "Standard error of the numerator must be a finite number, 0 or more; was -0.1.",
            refused.Message,
            StringComparison.Ordinal
        );
    }
}
