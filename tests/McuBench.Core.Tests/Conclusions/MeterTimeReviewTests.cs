using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class MeterTimeReviewTests
{
    private static readonly double[] TwoSeconds = [2.0, 2.001, 1.999];

    private static readonly Setup Marl100 = Bench.At(Bench.Marl, 100);

    [Theory]
    [InlineData(2.5, true)]
    [InlineData(1.5, false)]
    public void MeterSlowerThanRun_AveragesLongerThanTwoSeconds_IsFound(double averaging, bool isFound)
    {
        var meter = Bench.Meter() with { AveragingTime = Duration.FromSeconds(averaging) };
        var findings = Findings(FindingKind.MeterSlowerThanRun, Marl100, Bench.Frames, meter, 5);

        Assert.Equal(isFound ? 1 : 0, findings.Length);
        Assert.All(findings, f => Assert.Equal(2.5, f.Figures[0].Value));
    }

    [Theory]
    [InlineData(0.1, true)]
    [InlineData(0.02, false)]
    public void MeterAliases_FewPeriodsInAnAverage_IsFound(double period, bool isFound)
    {
        var workload = Bench.Frames with { LoadPeriod = Duration.FromSeconds(period) };
        var meter = Bench.Meter() with { AveragingTime = Duration.FromSeconds(0.4) };
        var findings = Findings(FindingKind.MeterAliases, Marl100, workload, meter, 5);

        Assert.Equal(isFound ? 1 : 0, findings.Length);
        Assert.All(
            findings,
            f => Assert.Equal(4, f.Figures.Single(x => x.Name == "periods in an average").Value, 1e-9)
        );
    }

    [Theory]
    [InlineData(4.7, true)]
    [InlineData(4.95, false)]
    public void VoltageSag_BelowTheTolerance_IsFound(double volts, bool isFound)
    {
        var setup = Marl100 with
        {
            Supply = new BoardSupply(ElectricPotential.FromVolts(5)) { Tolerance = Ratio.FromPercent(2) },
        };
        var findings = Findings(FindingKind.VoltageSag, setup, Bench.Frames, Bench.Meter(), volts);

        Assert.Equal(isFound ? 1 : 0, findings.Length);
        Assert.All(findings, f => Assert.Equal(0.06, f.Figures.Single(x => x.Name == "sag").Value, 1e-9));
    }

    [Fact]
    public void VoltageSag_AgainstIdle_TakesTheIdleVoltage()
    {
        var readings = Bench
            .Running(Marl100, Bench.Meter(), 4.5, 0.03)
            .Concat(Bench.Read(Marl100, Bench.Meter(), SupplyPhase.Idle, 5, [0.01]));
        var finding = Assert.Single(Conclude(Marl100, Bench.Frames, readings), f => f.Kind == FindingKind.VoltageSag);

        Assert.Contains("10 % less than when idle, 5 V", finding.Evidence, StringComparison.Ordinal);
    }

    private static Finding[] Findings(FindingKind kind, Setup setup, Workload workload, Meter meter, double volts) =>
        [
            .. Conclude(
                    setup,
                    workload,
                    [
                        new SupplyReading(
                            setup,
                            meter,
                            SupplyPhase.Running,
                            ElectricCurrent.FromAmperes(0.03),
                            workload
                        )
                        {
                            BoardVoltage = ElectricPotential.FromVolts(volts),
                        },
                    ]
                )
                .Where(f => f.Kind == kind),
        ];

    private static IReadOnlyList<Finding> Conclude(
        Setup setup,
        Workload workload,
        IEnumerable<SupplyReading> readings
    ) =>
        Bench
            .Conclude(
                Study.FromTrials(
                    "study",
                    TwoSeconds.Select(s => new Trial(setup, workload, Bench.Fine, Duration.FromSeconds(s))),
                    readings
                )
            )
            .Review.Findings;
}
