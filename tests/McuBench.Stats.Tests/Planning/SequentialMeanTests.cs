using McuBench.Stats.Planning;
using McuBench.Stats.Resampling;

namespace McuBench.Stats.Tests.Planning;

public sealed class SequentialMeanTests
{
    [Fact]
    public void Judge_EveryPrefix_AgreesWithSciPy()
    {
        var reference = ReferenceCase.Of("sequential-mean", "decisions");
        double[] values = reference.Numbers("values");
        double wanted = reference.Number("halfWidth");
        double[] halfWidths = reference.Numbers("halfWidths");
        int reachedAt = (int)reference.Number("reachedAt");

        for (int n = 2; n <= values.Length; n++)
        {
            var decision = SequentialMean.Judge(values.AsSpan(0, n), wanted);

            // SciPy's t quantile holds about 8 digits.
            Agree.Relative(halfWidths[n - 2], decision.HalfWidth!.Value, 1e-8);
            Assert.Equal(n < reachedAt ? null : reachedAt, decision.ReachedAt);
            Assert.Equal(
                n < reachedAt ? SequentialOutlook.GoOn
                    : n < reachedAt + 4 ? SequentialOutlook.Confirm
                    : SequentialOutlook.Enough,
                decision.Outlook
            );
            Assert.Equal(n >= reachedAt + 4, decision.Interval is not null);
        }
    }

    [Theory]
    [InlineData(20)]
    [InlineData(30)]
    [InlineData(50)]
    public void Judge_StoppedByTheRule_IntervalHoldsAtLeastAsOftenAsItSays(int wantedCount)
    {
        const int studies = 4000;
        double wanted = 1.96 / Math.Sqrt(wantedCount);
        int held = 0;
        double[] values = new double[400];
        for (int study = 0; study < studies; study++)
        {
            var random = RandomStream.Of(2026, (ulong)study);
            int n = 0;
            SequentialDecision decision;
            do
            {
                values[n++] = random.Normal();
                decision =
                    n < 14
                        ? new SequentialDecision(SequentialOutlook.GoOn, n, null, null, null, null)
                        : SequentialMean.Judge(values.AsSpan(0, n), wanted);
            } while (decision.Outlook is SequentialOutlook.GoOn or SequentialOutlook.Confirm);

            held += decision.Interval!.Contains(0) ? 1 : 0;
        }

        // The simulation of the script gives 95.1 % or more; three standard errors of this one are 1 %.
        Assert.True(held >= 0.94 * studies, $"{held} of {studies}");
    }

    [Fact]
    public void Judge_NoValue_GoesOn()
    {
        var decision = SequentialMean.Judge([], 1);

        Assert.Equal(new SequentialDecision(SequentialOutlook.GoOn, 0, null, null, null, null), decision);
    }

    [Fact]
    public void Judge_AllEqual_ClaimsTheWantedWidthAndNotNone()
    {
        double[] values = [.. Enumerable.Repeat(5.0, 14)];

        var decision = SequentialMean.Judge(values, 0.25);

        Assert.Equal(SequentialOutlook.Enough, decision.Outlook);
        Assert.Equal(new Interval(4.75, 5.25, 0.95), decision.Interval);
    }

    [Fact]
    public void Judge_ValuesWhoseSpreadNoNumberHolds_AreRefused()
    {
        double[] values = [-1e308, 1e308, -1e308];

        var refused = Assert.Throws<ArgumentOutOfRangeException>(() => SequentialMean.Judge(values, 1));

        Assert.Equal("values", refused.ParamName);
    }

    [Fact]
    public void Judge_MinimumAboveMaximum_IsRefused()
    {
        var options = new SequentialOptions { Minimum = 20, Maximum = 10 };

        var refused = Assert.Throws<ArgumentException>(() => SequentialMean.Judge([1, 2], 1, options));

        Assert.StartsWith(
            "Minimum must not be above the maximum of 10; was 20.",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Judge_HalfWidthZero_IsRefused() =>
        Assert.Equal(
            "halfWidth",
            Assert.Throws<ArgumentOutOfRangeException>(() => SequentialMean.Judge([1, 2], 0)).ParamName
        );

    [Fact]
    public void Options_MinimumBelowFive_IsRefused() =>
        Assert.Equal(
            "Minimum",
            Assert.ThrowsAny<ArgumentException>(() => new SequentialOptions { Minimum = 4 }).ParamName
        );
}
