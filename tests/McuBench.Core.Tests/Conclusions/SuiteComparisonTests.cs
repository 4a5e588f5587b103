using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;
using McuBench.Core.Studies;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class SuiteComparisonTests
{
    private static readonly double[] Wobble = [0.9990, 1.0004, 1.0012, 0.9996, 0.9998];

    private static readonly Setup[] Setups = [Bench.At(Bench.Marl, 100), Bench.At(Bench.Tuff, 100)];

    [Fact]
    public void Of_ThreeWorkloads_IsTheGeometricMeanOfTheirRatios()
    {
        var suite = RunTime(Conclude((1, 2), (1, 4), (1, 8)));

        Assert.Equal(0.25, suite.Mean.Ratio.Value, 1e-12);
        Assert.Equal(Verdict.Different, suite.AdjustedVerdict);
        Assert.Equal(3, suite.Members.Count);
        Assert.Empty(suite.Deciding);

        // Three independent ratios of one relative uncertainty: that of the mean is a √3rd of it.
        var one = suite.Members[0].RunTime.Ratio;
        Assert.Equal(
            one.StandardUncertainty!.Value / one.Value / Math.Sqrt(3),
            suite.Mean.Ratio.StandardUncertainty!.Value / 0.25,
            1e-9
        );
        Assert.True(suite.Lower < suite.Mean.Ratio.Lower);
        Assert.Contains(
            "as a geometric mean: Marl 100 takes less on average over these workloads. Single workloads go from 0.12",
            SuiteStatement.Of(suite),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_OneWorkloadThatDecides_IsNamedAndFound()
    {
        // Twice as fast on one, 2 % slower on two others.
        var conclusions = Conclude((1, 2), (1.02, 1), (1.02, 1));
        var suite = RunTime(conclusions);

        Assert.Equal(Side.First, suite.Mean.Less);
        Assert.Equal(["workload 0"], suite.Deciding.Select(w => w.Name));
        Assert.Equal(Side.Second, suite.LeftOut[0].Mean.Less);
        Assert.EndsWith(
            "Without workload 0 the verdict on the mean would be another.",
            SuiteStatement.Of(suite),
            StringComparison.Ordinal
        );
        var finding = Assert.Single(conclusions.Review.Findings, f => f.Kind == FindingKind.OneWorkloadDecides);
        Assert.Equal("Marl 100 and Tuff 100", finding.Subject);
        Assert.Equal(1.02, finding.Figures[1].Value, 1e-3);
    }

    [Fact]
    public void Of_OneWorkload_HasNoSuite() => Assert.Empty(Conclude((1, 2)).Suites);

    [Fact]
    public void Of_EmptyWorkload_IsNotInTheMean() =>
        Assert.Empty(Conclude(Workload(0), Workload(1) with { IsEmpty = true }).Suites);

    [Fact]
    public void Of_FamilyOfEachWorkload_KeepsSuitesApart()
    {
        var study = Conclude(ConclusionOptions.Default, [Workload(0), Workload(1)], [(1, 2), (1, 3)]);
        var apart = Conclude(
            new ConclusionOptions { Family = ClaimFamily.Workload },
            [Workload(0), Workload(1)],
            [(1, 2), (1, 3)]
        );

        // By run time and by cycles: one pair on each of two workloads, and one suite.
        Assert.All(study.Rankings, r => Assert.Equal(6, r.ComparisonsInFamily));
        Assert.All(apart.Rankings, r => Assert.Equal(2, r.ComparisonsInFamily));
    }

    private static SuiteComparison RunTime(StudyConclusions conclusions) =>
        Assert.Single(conclusions.Suites, s => s.Mean.Quantity == ComparedQuantity.RunTime);

    private static StudyConclusions Conclude(params (double First, double Second)[] seconds) =>
        Conclude(ConclusionOptions.Default, [.. seconds.Select((_, i) => Workload(i))], seconds);

    private static StudyConclusions Conclude(params Workload[] workloads) =>
        Conclude(ConclusionOptions.Default, workloads, [.. workloads.Select(_ => (1.0, 2.0))]);

    private static StudyConclusions Conclude(
        ConclusionOptions options,
        Workload[] workloads,
        (double First, double Second)[] seconds
    ) =>
        StudyConclusions.Of(
            Study.FromTrials(
                "study",
                workloads.SelectMany(
                    (w, i) =>
                        Wobble.SelectMany(wobble =>
                            new[]
                            {
                                new Trial(Setups[0], w, Bench.Fine, Duration.FromSeconds(wobble * seconds[i].First)),
                                new Trial(Setups[1], w, Bench.Fine, Duration.FromSeconds(wobble * seconds[i].Second)),
                            }
                        )
                )
            ),
            options,
            cancellationToken: TestContext.Current.CancellationToken
        );

    private static Workload Workload(int number) => new(FormattableString.Invariant($"workload {number}"), 1000);
}
