using FsCheck.Xunit;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Tests.Hypotheses;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class AutocorrelationTests
{
    [Theory]
    // The certified values belong to decimal data: rounding NumAcc3 and NumAcc4 to doubles moves them.
    [InlineData("Lew", 1e-14)]
    [InlineData("Lottery", 1e-13)]
    [InlineData("Mavro", 2e-14)]
    [InlineData("Michelso", 1e-13)]
    [InlineData("NumAcc1", 0)]
    [InlineData("NumAcc2", 1e-14)]
    [InlineData("NumAcc3", 1e-9)]
    [InlineData("NumAcc4", 1e-8)]
    [InlineData("PiDigits", 1e-12)]
    public void LagOne_StrdSet_HasTheCertifiedDigits(string set, double tolerance) =>
        Agree.Relative(
            NistUnivariate.CertifiedAutocorrelation(set),
            Autocorrelation.LagOne(NistUnivariate.Values(set)),
            tolerance
        );

    [Fact]
    public void AtLag_BeamDeflection_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("ranks", "hb-lew");
        double[] printed = reference.Numbers("expected", "autocorrelation", "r");
        double[] computed = reference.Numbers("recomputed", "autocorrelation", "r");
        for (int lag = 1; lag < printed.Length; lag++)
        {
            double correlation = Autocorrelation.AtLag(NistUnivariate.Values("Lew"), lag);
            Assert.Equal(printed[lag], correlation, 0.005);
            Assert.Equal(computed[lag], correlation, 1e-10);
        }
    }

    [Fact]
    public void LagOne_HeatFlow_AgreesWithTheReference() =>
        Agree.Relative(
            ReferenceCase.Of("ranks", "hb-case-zarr13").Number("recomputed", "autocorrelation_lag1"),
            Autocorrelation.LagOne(ReferenceCase.Of("nist-handbook", "hb-mean-ci-zarr13").Numbers("input", "y")),
            1e-11
        );

    [Theory]
    [MemberData(nameof(OrderReference.Series), MemberType = typeof(OrderReference))]
    public void LagOne_DataSets_AgreesWithRAndStatsmodels(string series)
    {
        double[] values = OrderReference.Values(series);

        Agree.Relative(
            OrderReference.Expected("lag_one_kept_adjusted", series),
            [Autocorrelation.LagOne(values), Autocorrelation.LagOne(values, Bias.Adjusted)],
            1e-11
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void AtLag_ReversedShiftedAndScaled_StaysTheSame(Dyadic data)
    {
        double[] values = [.. data.Values, 1, -2, 3.5];
        double before = Autocorrelation.AtLag(values, 2);

        Assert.Equal(before, Autocorrelation.AtLag([.. values.Reverse().Select(v => 64 - 2 * v)], 2), 1e-12);
        Assert.InRange(before, -1, 1);
        Assert.InRange(Autocorrelation.LagOne(values, Bias.Adjusted), -1, 1);
    }

    [Fact]
    public void LagOne_NearOverflowAndDenormal_IsRight()
    {
        double plain = Autocorrelation.LagOne([1, 2, 4, 3]);

        Agree.Relative(plain, Autocorrelation.LagOne([4e307, 8e307, 1.6e308, 1.2e308]), 1e-14);
        Agree.Relative(plain, Autocorrelation.LagOne([1e-310, 2e-310, 4e-310, 3e-310]), 1e-10);
    }

    [Fact]
    public void AtLag_WhatCantBeDone_IsRefused()
    {
        Assert.Equal(
            "lag",
            Assert.Throws<ArgumentOutOfRangeException>(() => Autocorrelation.AtLag([1, 2], 0)).ParamName
        );
        Assert.StartsWith(
            "Count of values must be at least 3; was 2.",
            Assert.Throws<ArgumentException>(() => Autocorrelation.AtLag([1, 2], 2)).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Values must differ; all were equal",
            Assert.Throws<ArgumentException>(() => Autocorrelation.LagOne([3, 3, 3])).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => Autocorrelation.LagOne([3, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Autocorrelation.LagOne([3, 4], (Bias)2));
    }
}
