using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class HarrellDavisTests
{
    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void Quantile_DataSets_AgreesWithSciPy(string set)
    {
        var sample = Sample.Of(Datasets.Values(set));
        double[] probabilities = [0.1, 0.5, 0.75];
        for (int i = 0; i < probabilities.Length; i++)
        {
            Estimate quantile = HarrellDavis.Quantile(sample, probabilities[i]);

            Agree.Relative(RobustReference.SciPy(set).Numbers("harrell_davis")[i], quantile.Value, 1e-13);
            // SciPy sums the values themselves, of which the offset ones agree in seven digits.
            Agree.Relative(
                RobustReference.SciPy(set).Numbers("harrell_davis_error")[i],
                quantile.StandardError!.Value,
                set is "offset" ? 1e-6 : 1e-11
            );
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Quantile_AnyValues_IsTheMeanByBetaWeightsLeavingEachOut(Dyadic data)
    {
        double[] values = [.. data.Values, 0, 1];
        int n = values.Length;
        Estimate quantile = HarrellDavis.Quantile(Sample.Of(values), 0.4);
        double[] leftOut =
        [
            .. Enumerable
                .Range(0, n)
                .Select(i => HarrellDavis.Quantile(Sample.Of([.. values.Where((_, k) => k != i)]), 0.4).Value),
        ];
        double mean = leftOut.Average();
        double error = Math.Sqrt((n - 1.0) / n * leftOut.Sum(value => (value - mean) * (value - mean)));

        Assert.Equal(error, quantile.StandardError!.Value, 1e-10);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Quantile_ShiftedScaledAndMirrored_FollowsTheData(Dyadic data)
    {
        double[] mirrored = data.Map(value => -2 * (value + 8));
        double before = HarrellDavis.Quantile(Sample.Of(data.Values), 0.3).Value;

        Assert.Equal(-2 * (before + 8), HarrellDavis.Quantile(Sample.Of(mirrored), 0.7).Value, 1e-11);
    }

    [Fact]
    public void Quantile_NoSpread_HasNoErrorAndSaysWhy()
    {
        Assert.Equal(
            "One value shows no spread, so no standard error.",
            Assert.Single(HarrellDavis.Quantile(Sample.Of(3), 0.5).Notes)
        );
        Assert.Equal(3, HarrellDavis.Quantile(Sample.Of(3, 3, 3), 0.5).Value);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Quantile_ProbabilityAtTheEnds_IsRefused(double probability) =>
        Assert.StartsWith(
            "Probability must be above 0 and below 1; was ",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => HarrellDavis.Quantile(Sample.Of(1, 2), probability))
                .Message,
            StringComparison.Ordinal
        );
}
