using FsCheck.Xunit;
using McuBench.Stats.Resampling;

namespace McuBench.Stats.Tests.Resampling;

public sealed class ResamplingSchemeTests
{
    private static readonly BootstrapOptions s_percentile = new()
    {
        Method = BootstrapMethod.Percentile,
        Resamples = 100_000,
        Seed = 2,
    };

    [Property]
    public void Stratified_EveryResample_KeepsEachStratum(ulong seed)
    {
        int[] strata = [7, 7, 3, 7, 3, 9];
        int[] places = new int[6];

        ResamplingScheme.Stratified(strata).Draw(places, 6, RandomStream.Of(seed));

        Assert.Equal(strata, places.Select(place => strata[place]));
    }

    [Property]
    public void MovingBlocks_EveryResample_IsRunsOfNeighbours(ulong seed)
    {
        int[] places = new int[10];

        int count = ResamplingScheme.MovingBlocks(3).Draw(places, 10, RandomStream.Of(seed));

        Assert.Equal(10, count);
        for (int i = 0; i < 10; i++)
        {
            Assert.InRange(places[i], i % 3, 9);
            Assert.True(i % 3 == 0 || places[i] == places[i - 1] + 1);
        }
    }

    [Fact]
    public void Stratified_Mean_HasTheClosedFormStandardError()
    {
        // Two strata with means far apart: only the spread within counts, n·σ² within over N².
        double[] values = [1, 2, 3, 101, 102, 103, 104];
        double within = 3 * (2.0 / 3) + 4 * 1.25;

        Estimate estimate = Bootstrap
            .Of(Sample.Of(values), ResamplingScheme.Stratified(0, 0, 0, 1, 1, 1, 1), Statistic.Mean, s_percentile)
            .Estimate;

        Agree.Relative(Math.Sqrt(within) / 7, estimate.StandardError!.Value, 0.01);
        Assert.Contains(", percentile bootstrap, stratified, ", estimate.Method, StringComparison.Ordinal);
    }

    [Fact]
    public void Nested_Mean_HasTheClosedFormStandardError()
    {
        // Balanced, one session each: variance of specimen means over g, plus the mean variance within over g·n, each by
        // its divisor of g and n.
        double[] values = [1, 3, 11, 15, 21, 23];
        double[] means = [2, 13, 22];
        double centre = means.Average();
        double between = means.Sum(mean => (mean - centre) * (mean - centre)) / 3;
        double within = (1.0 + 4 + 1) / 3;

        Estimate estimate = Bootstrap
            .Of(
                Sample.Of(values),
                ResamplingScheme.Nested([1, 1, 2, 2, 3, 3], [1, 1, 1, 1, 1, 1]),
                Statistic.Mean,
                s_percentile
            )
            .Estimate;

        Agree.Relative(Math.Sqrt(between / 3 + within / 6), estimate.StandardError!.Value, 0.01);
    }

    [Fact]
    public void MovingBlocks_MeanOfWholeBlocks_HasTheClosedFormStandardError()
    {
        // Of 4 values in blocks of 2: two of the means 1.5, 3.5, 6 drawn with equal chance.
        double[] means = [1.5, 3.5, 6];
        double centre = means.Average();
        double variance = means.Sum(mean => (mean - centre) * (mean - centre)) / 3 / 2;

        Estimate estimate = Bootstrap
            .Of(Sample.Of(1, 2, 5, 7), ResamplingScheme.MovingBlocks(2), Statistic.Mean, s_percentile)
            .Estimate;

        Agree.Relative(Math.Sqrt(variance), estimate.StandardError!.Value, 0.01);
    }

    [Fact]
    public void Nested_UnequalGroups_ResamplesWithinItsRoom()
    {
        var scheme = ResamplingScheme.Nested([1, 1, 1, 1, 2, 3], [1, 1, 1, 2, 1, 1]);
        int[] places = new int[scheme.Capacity(6)];
        for (ulong stream = 0; stream < 500; stream++)
        {
            int count = scheme.Draw(places, 6, RandomStream.Of(1, stream));

            Assert.InRange(count, 3, places.Length);
        }
    }

    [Fact]
    public void Nested_BiasCorrected_LeavesSpecimensOut()
    {
        BootstrapResult result = Bootstrap.Of(
            Sample.Of(1, 3, 11, 15, 21, 23, 40, 45),
            ResamplingScheme.Nested([1, 1, 2, 2, 3, 3, 4, 4], [1, 1, 1, 1, 1, 1, 1, 1]),
            Statistic.Mean
        );

        Assert.True(result.Estimate.Interval!.Contains(result.Estimate.Value));
    }

    [Fact]
    public void Schemes_ThatDontFit_AreRefused()
    {
        var sample = Sample.Of(1, 2, 3);
        Refused(
            () => Bootstrap.Of(sample, ResamplingScheme.MovingBlocks(2), Statistic.Mean),
            "options",
            "Method must be Percentile or Basic for a moving blocks of 2 bootstrap; was BiasCorrectedAccelerated."
        );
        Refused(
            () =>
                Bootstrap.Of(
                    sample,
                    ResamplingScheme.Stratified(1, 1, 1),
                    Statistic.Mean,
                    new BootstrapOptions { Method = BootstrapMethod.Studentized }
                ),
            "options",
            "Method must be Percentile or Basic or BiasCorrectedAccelerated for a stratified bootstrap; was Studentized."
        );
        Refused(
            () => Bootstrap.Of(sample, ResamplingScheme.MovingBlocks(3), Statistic.Mean, s_percentile),
            "sample",
            "Count of values must be at least 4; was 3."
        );
        Refused(
            () => Bootstrap.Of(sample, ResamplingScheme.Stratified(1, 1), Statistic.Mean, s_percentile),
            "scheme",
            "Count of strata's labels must be 3, one for each value; was 2."
        );
        Refused(
            () => ResamplingScheme.Nested([1, 1], [1, 2]),
            "specimens",
            "Count of specimens must be at least 2; was 1, which says nothing of how specimens differ."
        );
        Refused(() => ResamplingScheme.MovingBlocks(0), "length", "Length of a block must be at least 1; was 0.");
    }

    private static void Refused(Func<object> act, string parameter, string message)
    {
        var fault = Assert.ThrowsAny<ArgumentException>(act);
        Assert.Equal(parameter, fault.ParamName);
        Assert.StartsWith(message, fault.Message, StringComparison.Ordinal);
    }
}
