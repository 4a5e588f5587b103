using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;
using McuBench.Core.Studies;
using McuBench.Core.Trials;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class RankingTests
{
    private static readonly double[] Wobble = [0.9990, 1.0004, 1.0012, 0.9996, 0.9998];

    [Fact]
    public void Of_ClearOrder_PlacesEachAloneAndSaysSo()
    {
        var ranking = RankingOf(ConclusionOptions.Default, 3.0, 1.0, 2.0);

        Assert.Equal(["b", "c", "a"], ranking.Places.Select(p => p.Summary.Setup.Name));
        Assert.Equal([1, 2, 3], ranking.Places.Select(p => p.BestPlace));
        Assert.Equal([1, 2, 3], ranking.Places.Select(p => p.WorstPlace));
        Assert.All(ranking.Places, p => Assert.Equal(1, p.PlaceProbabilities[p.Place - 1]));
        Assert.Equal([1, 1, 1], ranking.Groups.Select(g => g.Members.Count));
        Assert.Equal(
            "By run time on the frame checksum b comes first, told apart from all 2 others.",
            RankingStatement.Of(ranking)
        );
    }

    [Fact]
    public void Of_TwoThatLookAlike_ShareAGroupAndTheirPlaces()
    {
        var ranking = RankingOf(ConclusionOptions.Default, 1.0, 1.0001, 2.0);

        Assert.Equal([1, 1, 3], ranking.Places.Select(p => p.BestPlace));
        Assert.Equal([2, 2, 3], ranking.Places.Select(p => p.WorstPlace));
        Assert.Equal([2, 1], ranking.Groups.Select(g => g.Members.Count));
        Assert.InRange(ranking.Places[0].PlaceProbabilities[0], 0.5, 0.65);
        Assert.StartsWith(
            "By run time on the frame checksum a and b may each be first. Chance of being first: a 5",
            RankingStatement.Of(ranking),
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            "Not told apart from one another: a and b.",
            RankingStatement.Of(ranking),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_ManyPairs_AdjustsPValuesAndIntervals()
    {
        var ranking = RankingOf(new ConclusionOptions { Family = ClaimFamily.Workload }, 1.0, 1.001, 1.002);

        // Three pairs by run time and three by cycles per item.
        Assert.Equal(6, ranking.ComparisonsInFamily);
        Assert.All(ranking.Pairs, p => Assert.True(p.AdjustedPValue >= p.PValue));
        Assert.All(ranking.Pairs, p => Assert.True(p.Lower < p.Unadjusted.Ratio.Lower));
        Assert.All(ranking.Pairs, p => Assert.True(p.Upper > p.Unadjusted.Ratio.Upper));
    }

    [Fact]
    public void Of_OneComparison_IsItsUnadjustedOne()
    {
        var options = new ConclusionOptions { Margin = Ratio.FromPercent(2), Family = ClaimFamily.Workload };
        var setups = new[] { 1.0, 1.0005 };
        foreach (var ranking in Conclude(options, setups).Rankings.Where(r => r.Quantity == ComparedQuantity.RunTime))
        {
            var pair = Assert.Single(ranking.Pairs);

            // Cycles at one clock say the same as run times: two comparisons, so twice the p-value.
            Assert.Equal(2 * pair.PValue!.Value, pair.AdjustedPValue!.Value, 1e-12);
            Assert.Equal(Verdict.EqualWithinMargin, pair.Verdict);
            Assert.Equal(Verdict.EqualWithinMargin, pair.Unadjusted.Verdict);
        }
    }

    [Fact]
    public void Of_PValue_IsOneLessTheConfidenceWhereTheIntervalReachesOne()
    {
        var pair = RankingOf(ConclusionOptions.Default, 1.0, 1.001).Pairs[0];
        var confidence = 1 - pair.PValue!.Value;
        var same = RankingOf(new ConclusionOptions { Confidence = confidence }, 1.0, 1.001).Pairs[0].Unadjusted.Ratio;

        Assert.Equal(1, same.Upper!.Value, 1e-9);
    }

    [Fact]
    public void Of_SingleTrial_HasNoPlaceButIsNamed()
    {
        var trials = Trials(1.0, 2.0).Concat(Bench.Series(At(2), Bench.Fine, 1.5).Trials);
        var ranking = StudyConclusions
            .Of(Study.FromTrials("study", trials), cancellationToken: TestContext.Current.CancellationToken)
            .Rankings[0];

        Assert.Equal(["a", "b"], ranking.Places.Select(p => p.Summary.Setup.Name));
        Assert.Equal(["c"], ranking.Unplaced.Select(s => s.Setup.Name));
    }

    [Fact]
    public void Of_VerdictWithheld_GivesNoProbability()
    {
        // All of a before all of b in one session, and a drifts.
        var timed = new[] { 1.000, 1.001, 1.002, 1.003, 1.004, 1.005, 1.006, 1.007 };
        var trials = timed
            .Select((t, i) => Trial(0, t, i + 1))
            .Concat(timed.Select((_, i) => Trial(1, 1.0 + (i % 3) * 0.001, i + 9)));
        var ranking = StudyConclusions
            .Of(Study.FromTrials("study", trials), cancellationToken: TestContext.Current.CancellationToken)
            .Rankings[0];

        Assert.Equal(Verdict.NoVerdict, Assert.Single(ranking.Pairs).Verdict);
        Assert.All(ranking.Places, p => Assert.Empty(p.PlaceProbabilities));
        Assert.Null(ranking.ProbabilityMethod);
        Assert.Contains(ranking.Notes, n => n.Contains("no place has a probability", StringComparison.Ordinal));
        Assert.Equal(2, Assert.Single(ranking.Groups).Members.Count);

        static Trial Trial(int setup, double seconds, int order) =>
            new(At(setup), Bench.Frames, Bench.Fine, Duration.FromSeconds(seconds)) { Order = order };
    }

    [Fact]
    public void Of_SetupTimedTwice_TakesOnePlace()
    {
        var trials = Trials(1.0, 2.0).Concat(Bench.Series(At(1), Bench.Tenths, 2.0, 2.0, 2.0, 2.1).Trials);
        var ranking = StudyConclusions
            .Of(Study.FromTrials("study", trials), cancellationToken: TestContext.Current.CancellationToken)
            .Rankings[0];

        Assert.Equal(["a", "b"], ranking.Places.Select(p => p.Summary.Setup.Name));
        Assert.Equal(
            "b was timed with 2 timers; it is ranked by \"fine timer\", whose interval is narrowest.",
            Assert.Single(ranking.Notes)
        );
        Assert.Single(ranking.Pairs);
    }

    /// <summary>Five equal boards, ten pairs: without adjustment a quarter of such studies makes a false claim. Whole
    /// studies are simulated in tests/McuBench.Simulation.</summary>
    [Fact]
    public void Adjust_FiveEqualBoards_MakesAFalseClaimInAtMostFivePercentOfStudies()
    {
        const int studies = 400;
        const int boards = 5;
        var (adjusted, plain) = (0, 0);
        for (var i = 0; i < studies; i++)
        {
            var random = RandomStream.Of(77, (ulong)i);
            var summaries = Enumerable
                .Range(0, boards)
                .Select(b => Bench.Series(At(b), Bench.Fine, Six(random)))
                .Select(series => SetupSummary.Of(series))
                .ToArray();
            double[] p =
            [
                .. from a in Enumerable.Range(0, boards)
                from b in Enumerable.Range(a + 1, boards - a - 1)
                select Evidence(summaries[a], summaries[b]),
            ];
            adjusted += StepDown.Adjust([.. p.Select(v => (v, (double?)null))]).Any(v => v.Difference < 0.05) ? 1 : 0;
            plain += p.Any(v => v < 0.05) ? 1 : 0;
        }

        // 5 % and three simulation errors.
        Assert.InRange(adjusted, 1, studies * 0.05 + 3 * Math.Sqrt(studies * 0.05 * 0.95));
        Assert.True(plain > 0.15 * studies, FormattableString.Invariant($"{plain}"));

        static double[] Six(RandomStream random) => [.. Enumerable.Range(0, 6).Select(_ => 1 + 0.01 * random.Normal())];
        static double Evidence(SetupSummary one, SetupSummary other) =>
            PairEvidence
                .Of(
                    CompareFigures.Of(
                        ComparedQuantity.RunTime,
                        one.Workings.RunTime,
                        other.Workings.RunTime,
                        12,
                        ConclusionOptions.Default,
                        withheld: null
                    )
                )!
                .Difference;
    }

    private static Ranking RankingOf(ConclusionOptions options, params double[] seconds) =>
        Conclude(options, seconds).Rankings[0];

    private static StudyConclusions Conclude(ConclusionOptions options, params double[] seconds) =>
        StudyConclusions.Of(
            Study.FromTrials("study", Trials(seconds)),
            options,
            cancellationToken: TestContext.Current.CancellationToken
        );

    private static IEnumerable<Trial> Trials(params double[] seconds) =>
        seconds.SelectMany(
            (s, i) =>
                Bench
                    .Series(At(i), Bench.Fine, Wobble.Select(w => w * s).ToArray())
                    .Trials.Select(t => t with { Order = null })
        );

    private static Setup At(int number)
    {
        var name = ((char)('a' + number)).ToString();
        return Bench.At(new Board(name), 100) with { Name = name };
    }
}
