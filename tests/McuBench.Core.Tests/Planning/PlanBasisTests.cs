using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Tests.Conclusions;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Planning;

public class PlanBasisTests
{
    [Fact]
    public void FromPilot_OneSession_TakesTheSpreadOfTrials()
    {
        // 1, 2 and 3 ms about 1 s: a standard deviation of 1 ms.
        var basis = PlanBasis.FromPilot(
            SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, 100), Bench.Fine, 1.000, 1.001, 0.999))
        );

        Assert.Equal(0.001, basis.TrialSpread.DecimalFractions, 1e-9);
        Assert.Equal(0, basis.SessionSpread.DecimalFractions);
        Assert.Equal(1, basis.RunTime.Seconds, 1e-12);
    }

    /// <summary>Two sessions of two about 0.99 and 1.01 s: mean square between 4e-4, within 2e-6, so (4e-4 − 2e-6)/2.</summary>
    [Fact]
    public void FromPilot_TwoSessions_TakesTheSpreadBetweenThemByMoments()
    {
        var setup = Bench.At(Bench.Marl, 100);
        var trials = new[] { (0.989, "a"), (0.991, "a"), (1.009, "b"), (1.011, "b") }.Select(t => new Trial(
            setup,
            Bench.Frames,
            Bench.Fine,
            Duration.FromSeconds(t.Item1)
        )
        {
            Session = t.Item2,
        });
        var basis = PlanBasis.FromPilot(SetupSummary.Of(new TrialSeries(trials)));

        Assert.Equal(Math.Sqrt(2e-6), basis.TrialSpread.DecimalFractions, 1e-9);
        Assert.Equal(Math.Sqrt(1.99e-4), basis.SessionSpread.DecimalFractions, 1e-9);
    }

    [Fact]
    public void FromPilot_RoundedReadings_LeavesOutWhatTheStepAdds()
    {
        // Variance 1/300 of readings in steps of 0.1 s, less 0.01/12.
        var pilot = SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, 100), Bench.Tenths, 1.0, 1.0, 1.1));
        var basis = PlanBasis.FromPilot(pilot);

        Assert.Equal(
            Math.Sqrt(0.01 / 3 - 0.01 / 12) / pilot.RunTime.Value.Seconds,
            basis.TrialSpread.DecimalFractions,
            1e-12
        );
    }

    [Fact]
    public void FromPilot_OneTrial_Refuses() =>
        Refusal.Is<ArgumentException>(
            () => PlanBasis.FromPilot(SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, 100), Bench.Fine, 1.0))),
            "pilot",
            "A pilot must hold a session of at least two trials; was of 1 in 1."
        );

    [Fact]
    public void New_SpreadOfAll_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => new PlanBasis(Bench.Frames, Bench.Fine, Duration.FromSeconds(1), Ratio.FromPercent(100)),
            "trialSpread",
            "Spread between trials must be at least 0 % and below 100 %; was 100 %."
        );
}
