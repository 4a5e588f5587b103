using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class ScaleTests
{
    // The certified values belong to decimal data; binary64 data are off by up to the second column, which the
    // reference set worked out in exact arithmetic.
    [Theory]
    [InlineData("Lew", 1e-14)]
    [InlineData("Lottery", 1e-14)]
    [InlineData("Mavro", 1e-12)]
    [InlineData("Michelso", 2e-14)]
    [InlineData("NumAcc1", 0)]
    [InlineData("NumAcc2", 1e-14)]
    [InlineData("NumAcc3", 4e-10)]
    [InlineData("NumAcc4", 6e-9)]
    [InlineData("PiDigits", 1e-14)]
    public void StandardDeviation_NistData_HoldsTheCertifiedDigits(string set, double tolerance)
    {
        double expected = NistUnivariate.Certified(set).StandardDeviation;
        double[] values = NistUnivariate.Values(set);

        Agree.Relative(expected, Scale.StandardDeviation(values), tolerance);
        Agree.Relative(expected * expected, Scale.Variance(values), 2 * tolerance + 2e-16);
    }

    [Theory]
    [InlineData("NumAcc3", 0.100000000034924597)]
    [InlineData("NumAcc4", 0.100000000558793545)]
    public void StandardDeviation_NumAccAsRounded_IsExactArithmetics(string set, double expected) =>
        Agree.Relative(expected, Scale.StandardDeviation(NistUnivariate.Values(set)), 1e-14);

    [Fact]
    public void StandardDeviation_AllEqual_IsZero() =>
        Assert.Equal(0, Scale.StandardDeviation(Enumerable.Repeat(0.1, 10).ToArray()));

    [Theory]
    [InlineData(1e300)]
    [InlineData(1e-300)]
    [InlineData(1e-310)]
    public void StandardDeviation_SquaresOutOfRange_IsRight(double unit) =>
        Agree.Relative(unit, Scale.StandardDeviation([1 * unit, 2 * unit, 3 * unit]), 1e-13);

    [Fact]
    public void Variance_AboveTheGreatestNumber_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => Scale.Variance([1e200, 2e200]));

        Assert.Equal("values", refusal.ParamName);
        Assert.StartsWith("Variance of the values must be below 1.8E308", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Variance_OneValue_IsRefusedWithTheNumberThatWouldDo()
    {
        var refusal = Assert.Throws<ArgumentException>(() => Scale.Variance([1]));

        Assert.Equal("values", refusal.ParamName);
        Assert.StartsWith("Count of values must be at least 2; was 1.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void MedianAbsoluteDeviation_ThreeConsistencies_AreThePublishedFactors()
    {
        double[] values = [1, 2, 4, 8, 16];

        Assert.Equal(3, Scale.MedianAbsoluteDeviation(values, Consistency.None));
        Agree.Relative(3 * 1.482602218505602, Scale.MedianAbsoluteDeviation(values), 1e-15);
        Agree.Relative(
            3 * 1.482602218505602 * 1.206,
            Scale.MedianAbsoluteDeviation(values, Consistency.NormalSmallSample),
            1e-15
        );
    }

    [Fact]
    public void MedianAbsoluteDeviation_MoreThanHalfEqual_IsZero() =>
        Assert.Equal(0, Scale.MedianAbsoluteDeviation([5, 5, 5, 9, -400]));

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void MedianAbsoluteDeviation_AnyValues_IsTheDefinition(Dyadic data)
    {
        double median = Location.Median(data.Values);

        Assert.Equal(
            Location.Median(data.Map(value => Math.Abs(value - median))),
            Scale.MedianAbsoluteDeviation(data.Values, Consistency.None)
        );
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void EveryScale_ShiftedScaledAndPermuted_FollowsTheData(Dyadic data, int seed)
    {
        double[] moved = [.. data.Shuffled(seed).Select(value => -8 * (value - 512))];

        Assert.Equal(8 * Scale.MedianAbsoluteDeviation(data.Values), Scale.MedianAbsoluteDeviation(moved));
        if (data.Values.Length > 1)
        {
            Agree.Relative(8 * Scale.StandardDeviation(data.Values), Scale.StandardDeviation(moved), 1e-13);
            Agree.Relative(64 * Scale.Variance(data.Values), Scale.Variance(moved), 1e-13);
        }
    }

    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void EveryScale_DataSets_AgreesWithRAndSciPy(string set)
    {
        double[] values = Datasets.Values(set);
        ReferenceCase r = RobustReference.R(set);
        ReferenceCase scipy = RobustReference.SciPy(set);

        RobustReference.AgreeWithBoth(set, "variance", Scale.Variance(values), 1e-14);
        // Quartiles round in the last place of the values, and so does their difference.
        Assert.Equal(r.Number("iqr"), Scale.InterquartileRange(values), 4e-16 * values.Max());
        Assert.Equal(scipy.Number("iqr"), Scale.InterquartileRange(values), 4e-16 * values.Max());
        Agree.Relative(scipy.Number("mad"), Scale.MedianAbsoluteDeviation(values), 1e-15);
        // R rounds the factor to 1.4826.
        Agree.Relative(r.Number("mad"), Scale.MedianAbsoluteDeviation(values, Consistency.None) * 1.4826, 1e-15);
        Agree.Relative(r.Numbers("winsorized_20")[1], Scale.WinsorizedVariance(values, 0.2), 1e-13);
        Agree.Relative(scipy.Numbers("winsorized_20")[1], Scale.WinsorizedVariance(values, 0.2), 1e-13);
        RobustReference.AgreeWithBoth(set, "sn_raw", Scale.Sn(values, Consistency.None), 1e-15);
        Agree.Relative(r.Number("sn"), Scale.Sn(values), 1e-14);
        Agree.Relative(scipy.Number("qn_raw"), Scale.Qn(values, Consistency.None), 0);
        // robustbase 0.95 passes Qn through single precision, on the offset data of 10 million as well.
        double single = set is "offset" ? 1e-6 : 6e-8;
        Agree.Relative(r.Number("qn_raw"), Scale.Qn(values, Consistency.None), single);
        Agree.Relative(r.Number("qn"), Scale.Qn(values), single);
    }

    [Fact]
    public void SnAndQn_SmallSamples_AgreeWithRobustbase()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-sn-qn-small");
        double[][] samples = reference.Rows("input", "samples");
        for (int i = 0; i < samples.Length; i++)
        {
            Agree.Relative(reference.Numbers("expected", "Sn_raw")[i], Scale.Sn(samples[i], Consistency.None), 1e-15);
            Agree.Relative(reference.Numbers("expected", "Sn")[i], Scale.Sn(samples[i]), 1e-11);
            Agree.Relative(reference.Numbers("expected", "Qn_raw")[i], Scale.Qn(samples[i], Consistency.None), 1e-15);
            Agree.Relative(reference.Numbers("expected", "Qn_new_constants")[i], Scale.Qn(samples[i]), 6e-8);
        }
    }

    [Fact]
    public void SnAndQn_PassageTimes_AgreeWithTheReference()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-newcomb");
        double[] values = reference.Numbers("input", "y");

        Assert.Equal(reference.Number("recomputed", "Sn_raw"), Scale.Sn(values, Consistency.None));
        Agree.Relative(reference.Number("expected", "Sn"), Scale.Sn(values), 1e-12);
        Assert.Equal(reference.Number("recomputed", "Qn_raw_order_statistic"), Scale.Qn(values, Consistency.None));
        Agree.Relative(reference.Number("expected", "Qn_robustbase_0.95"), Scale.Qn(values), 1e-11);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Sn_AnyValues_IsTheDefinition(Dyadic data)
    {
        double[] values = [.. data.Values, 0, 1];
        double[] inner =
        [
            .. values.Select(a => values.Select(b => Math.Abs(a - b)).Order().ElementAt(values.Length / 2)),
        ];

        Assert.Equal(inner.Order().ElementAt((values.Length + 1) / 2 - 1), Scale.Sn(values, Consistency.None));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Qn_AnyValues_IsTheDefinition(Dyadic data)
    {
        double[] values = [.. data.Values, 0, 1];
        int half = values.Length / 2 + 1;
        IEnumerable<double> pairs = values.SelectMany((a, i) => values.Skip(i + 1).Select(b => Math.Abs(a - b)));

        Assert.Equal(pairs.Order().ElementAt(half * (half - 1) / 2 - 1), Scale.Qn(values, Consistency.None));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void SnAndQn_ShiftedScaledAndPermuted_FollowTheData(Dyadic data, int seed)
    {
        double[] values = [.. data.Values, 3];
        double[] moved = [.. data.Shuffled(seed).Append(3).Select(value => -4 * (value + 16))];

        Assert.Equal(4 * Scale.Sn(values), Scale.Sn(moved));
        Assert.Equal(4 * Scale.Qn(values), Scale.Qn(moved));
        Assert.Equal(4 * Scale.InterquartileRange(values), Scale.InterquartileRange(moved), 1e-12);
    }

    [Fact]
    public void SnAndQn_OneValue_AreRefusedWithTheNumberThatWouldDo()
    {
        Assert.StartsWith(
            "Count of values must be at least 2; was 1.",
            Assert.Throws<ArgumentException>(() => Scale.Sn([1])).Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() => Scale.Qn([1]));
    }

    [Fact]
    public void Qn_DifferenceAboveTheGreatestNumber_IsRefused() =>
        Assert.StartsWith(
            "Qn of the values must be below 1.8E308",
            Assert.Throws<ArgumentOutOfRangeException>(() => Scale.Qn([-1.7e308, 1.7e308])).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void NormalizedInterquartileRange_NormalQuartiles_IsOne() =>
        Agree.Relative(
            1,
            Scale.NormalizedInterquartileRange([-1, -0.674489750196081743, 0, 0.674489750196081743, 1]),
            1e-15
        );
}
