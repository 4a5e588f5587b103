using FsCheck.Xunit;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Intervals;

public sealed class ProportionIntervalTests
{
    [Theory]
    [InlineData(0, 7)]
    [InlineData(3, 10)]
    [InlineData(90, 100)]
    [InlineData(5, 5)]
    public void WilsonAndClopperPearson_Counts_AgreeWithRAndStatsmodels(int successes, int trials)
    {
        string set = $"{successes}/{trials}";
        double[] wilson = IntervalReference.Ends(ProportionInterval.Wilson(successes, trials, 0.9));
        double[] exact = IntervalReference.Ends(ProportionInterval.ClopperPearson(successes, trials, 0.9));

        // R's and statsmodels' ends at 0 and 1 are off by rounding, so absolutely.
        foreach (string file in (string[])["intervals-r", "intervals-scipy"])
        {
            double[] expected = ReferenceCase.Of(file, "wilson_90").Numbers(set);
            Assert.Equal(expected[0], wilson[0], 1e-12);
            Assert.Equal(expected[1], wilson[1], 1e-12);
        }

        Agree.Relative(ReferenceCase.Of("intervals-scipy", "clopper_pearson_90").Numbers(set), exact, 1e-11);
        Agree.Relative(ReferenceCase.Of("intervals-r", "clopper_pearson_90").Numbers(set), exact, 1e-11);
    }

    [Fact]
    public void WilsonAndClopperPearson_PublishedCounts_AgreeWithTheTable()
    {
        var reference = ReferenceCase.Of("critical-values", "cv-proportion-intervals");
        double[][] counts = reference.Rows("input", "x_n");
        for (int i = 0; i < counts.Length; i++)
        {
            (int successes, int trials) = ((int)counts[i][0], (int)counts[i][1]);

            // Kept to ten digits.
            Agree.Relative(
                reference.Rows("recomputed", "wilson")[i],
                IntervalReference.Ends(ProportionInterval.Wilson(successes, trials)),
                1e-9
            );
            Agree.Relative(
                reference.Rows("recomputed", "clopper_pearson")[i],
                IntervalReference.Ends(ProportionInterval.ClopperPearson(successes, trials)),
                1e-9
            );
        }
    }

    [Property]
    public void WilsonAndClopperPearson_FailuresCounted_MirrorTheEnds(byte a, byte b)
    {
        int trials = a + b + 1;
        foreach (
            Func<int, int, double, Estimate> of in new Func<int, int, double, Estimate>[]
            {
                ProportionInterval.Wilson,
                ProportionInterval.ClopperPearson,
            }
        )
        {
            double[] ends = IntervalReference.Ends(of(a, trials, 0.95));
            double[] mirrored = IntervalReference.Ends(of(trials - a, trials, 0.95));

            Assert.Equal(1 - ends[0], mirrored[1], 1e-13);
            Assert.InRange((double)a / trials, ends[0], ends[1]);
        }
    }

    [Theory]
    [InlineData(-1, 5, "successes")]
    [InlineData(6, 5, "successes")]
    [InlineData(0, 0, "trials")]
    public void Wilson_CountsOutOfRange_AreRefused(int successes, int trials, string name) =>
        Assert.Equal(
            name,
            Assert.Throws<ArgumentOutOfRangeException>(() => ProportionInterval.Wilson(successes, trials)).ParamName
        );
}
