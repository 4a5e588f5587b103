using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class HuberTests
{
    [Theory]
    [InlineData("copper")]
    public void Location_WholemealFlour_AgreesWithTheReference(string set)
    {
        var reference = ReferenceCase.Of("classic-data", "cl-huber");

        Assert.Equal(
            reference.Number("expected", set, "huber_mad_scale_k1.5_mu"),
            Huber.Location(reference.Numbers("input", set)),
            5e-5
        );
    }

    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void LocationAndAlgorithmA_DataSets_AgreeWithRAndSciPy(string set)
    {
        double[] values = Datasets.Values(set);
        ReferenceCase r = RobustReference.R(set);
        ReferenceCase scipy = RobustReference.SciPy(set);
        LocationAndScale exact = Huber.AlgorithmA(values);
        LocationAndScale standard = Huber.AlgorithmA(values, AlgorithmAOptions.Standard);

        Agree.Relative(scipy.Number("huber"), Huber.Location(values), 1e-14);
        Agree.Relative(scipy.Numbers("algorithm_a_exact"), [exact.Location, exact.Scale], 1e-11);
        Agree.Relative(r.Numbers("algorithm_a_exact"), [exact.Location, exact.Scale], 1e-11);
        Agree.Relative(r.Numbers("algorithm_a_standard"), [standard.Location, standard.Scale], 1e-11);
        Assert.True(exact.Converged);
    }

    [Fact]
    public void AlgorithmA_Creosote_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-algorithm-a-creosote");
        double[] values = reference.Numbers("input", "y");
        LocationAndScale exact = Huber.AlgorithmA(values);

        // Kept to eight digits.
        Agree.Relative(reference.Number("expected", "mean"), exact.Location, 5e-9);
        Agree.Relative(reference.Number("expected", "s_exact_factor"), exact.Scale, 5e-8);
        Agree.Relative(
            reference.Number("expected", "s_factor_1.134_start_1.483"),
            Huber.AlgorithmA(values, AlgorithmAOptions.Standard).Scale,
            5e-8
        );
    }

    [Fact]
    public void AlgorithmA_Copper_AgreesWithTheConvergedReference()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-huber");
        LocationAndScale both = Huber.AlgorithmA(reference.Numbers("input", "copper"));

        Agree.Relative(reference.Number("recomputed", "copper", "hubers_converged_mu"), both.Location, 1e-10);
        Agree.Relative(reference.Number("recomputed", "copper", "hubers_converged_s"), both.Scale, 1e-10);
    }

    [Theory]
    [InlineData("k1", 1)]
    [InlineData("k1.5", 1.5)]
    [InlineData("k2", 2)]
    public void AlgorithmA_NickelAtThreeTunings_AgreesWithTheReference(string name, double tuning)
    {
        var reference = ReferenceCase.Of("classic-data", "cl-huber");
        LocationAndScale both = Huber.AlgorithmA(
            reference.Numbers("input", "nickel"),
            new AlgorithmAOptions { Tuning = tuning }
        );

        // The reference stopped iterating at 1e-4.
        Agree.Relative(reference.Numbers("expected", "nickel_hubers_mu_s", name), [both.Location, both.Scale], 2e-4);
    }

    [Fact]
    public void LocationAndAlgorithmA_MostValuesEqual_CloseInOnThem()
    {
        double[] values = [5, 5, 5, 5, 5, 5, 5, 9, -1];
        LocationAndScale both = Huber.AlgorithmA(values);

        Assert.Equal(5, Huber.Location(values));
        Assert.Equal((5, 0), (both.Location, both.Scale));
        Assert.True(both.Converged);
    }

    [Fact]
    public void AlgorithmA_AllEqual_HasNoScale() =>
        Assert.Equal(new LocationAndScale(2, 0, 0, Converged: true), Huber.AlgorithmA([2, 2, 2]));

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void LocationAndAlgorithmA_ShiftedScaledAndPermuted_FollowTheData(Dyadic data, int seed)
    {
        double[] values = [.. data.Values, 0, 1, 2];
        double[] moved = [.. data.Shuffled(seed).Append(2).Append(0).Append(1).Select(value => -2 * (value + 32))];
        LocationAndScale before = Huber.AlgorithmA(values);
        LocationAndScale after = Huber.AlgorithmA(moved);

        Assert.Equal(-2 * (Huber.Location(values) + 32), Huber.Location(moved), 1e-10);
        Assert.Equal(-2 * (before.Location + 32), after.Location, 1e-9);
        Assert.Equal(2 * before.Scale, after.Scale, 1e-9);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Location_AnyTuning_BalancesThePulledInDeviations(Dyadic data)
    {
        double[] values = [.. data.Values, 0, 1, 2];
        foreach (double tuning in (double[])[0.1, 0.5, 1.345, 3])
        {
            double location = Huber.Location(values, tuning);
            double reach = tuning * Scale.MedianAbsoluteDeviation(values);
            double pull = values.Sum(value => Math.Clamp(value - location, -reach, reach));

            Assert.Equal(0, pull, 1e-10);
        }
    }

    [Fact]
    public void Options_OutOfRange_AreRefused()
    {
        Assert.Equal(
            "Tuning",
            Assert.Throws<ArgumentOutOfRangeException>(() => new AlgorithmAOptions { Tuning = 0 }).ParamName
        );
        Assert.Equal(
            "ScaleFactor",
            Assert.Throws<ArgumentOutOfRangeException>(() => new AlgorithmAOptions { ScaleFactor = -1 }).ParamName
        );
        Assert.Equal("tuning", Assert.Throws<ArgumentOutOfRangeException>(() => Huber.Location([1], 0)).ParamName);
    }
}
