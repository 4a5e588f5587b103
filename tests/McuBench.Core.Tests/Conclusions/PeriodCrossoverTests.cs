using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Reporting;
using McuBench.Core.Supply;
using McuBench.Stats.Distributions;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Marl runs 0.2 s at 50 mA and idles at 3 mA; Tuff runs 0.5 s at 30 mA and idles at 1 mA. Beside idling they take
/// 9.4 mC and 14.5 mC, so they meet at (14.5 − 9.4)/(3 − 1) s = 2.55 s.</summary>
public class PeriodCrossoverTests
{
    private const double Meeting = 2.55;

    [Fact]
    public void Of_FastAndSlow_MeetWhereTheLinesCross()
    {
        var crossover = PeriodCrossover.Of(Marl(), Tuff());

        Assert.Equal(Meeting, Si.Seconds(crossover.Period!.Value), 1e-9);
        Assert.Equal(Side.Second, crossover.LessForLongPeriods);
        Assert.Equal(Side.First, crossover.LessForShortPeriods);
        Assert.Equal(0.5, Si.Seconds(crossover.Shortest), 1e-12);
        Assert.InRange(Meeting, Si.Seconds(crossover.Period.Lower!.Value), Si.Seconds(crossover.Period.Upper!.Value));
        Assert.StartsWith(
            "Tuff 100 takes less charge in periods longer than ",
            crossover.ToString(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ClockStatement_Crossover_SaysWhichForWhichPeriods()
    {
        var said = ClockStatement.Of(PeriodCrossover.Of(Marl(), Tuff()));

        Assert.StartsWith(
            "For the frame checksum, repeated with idling in between: Tuff 100 takes less charge in periods longer than 2.5",
            said,
            StringComparison.Ordinal
        );
        Assert.EndsWith("; Marl 100 in shorter ones.", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_SidesExchanged_MeetAtTheSamePeriod()
    {
        var (one, other) = (PeriodCrossover.Of(Marl(), Tuff()), PeriodCrossover.Of(Tuff(), Marl()));

        Assert.Equal(Si.Seconds(one.Period!.Lower!.Value), Si.Seconds(other.Period!.Lower!.Value), 1e-12);
        Assert.Equal(Si.Seconds(one.Period.Upper!.Value), Si.Seconds(other.Period.Upper!.Value), 1e-12);
        Assert.Equal(Side.First, other.LessForLongPeriods);
    }

    [Fact]
    public void Of_WakeCharge_MovesTheMeeting() =>
        Assert.Equal(
            Meeting + 1,
            Si.Seconds(PeriodCrossover.Of(Marl(), Tuff(), secondWake: ElectricCharge.FromCoulombs(2e-3)).Period!.Value),
            1e-9
        );

    [Fact]
    public void Of_IdleScatterAlone_HasFiellersEnds()
    {
        // Each idle current is a mean of three at ±0.1 mA; the charges and times scatter by nothing that shows.
        var period = PeriodCrossover.Of(Marl(), Tuff()).Period!;
        var u = 1e-4 / Math.Sqrt(3);
        var t = StudentT.Of(period.DegreesOfFreedom!.Value).UpperQuantile(0.025);

        // n − T d = (14.5 mC + …) − T·2 mA moves by u·(T − t_run) for each board's idle current.
        double Excess(double at) =>
            Math.Abs(5.1e-3 - at * 2e-3) - t * u * Math.Sqrt((at - 0.2) * (at - 0.2) + (at - 0.5) * (at - 0.5));

        Assert.Equal(0, Excess(Si.Seconds(period.Lower!.Value)), 2e-8);
        Assert.Equal(0, Excess(Si.Seconds(period.Upper!.Value)), 2e-8);
    }

    [Fact]
    public void Of_IdleCurrentsNotToldApart_HasNoInterval()
    {
        var period = PeriodCrossover.Of(Marl(idle: 1.02e-3), Tuff()).Period!;

        Assert.False(period.HasInterval);
        Assert.Contains("The idle currents can't be told apart: nothing bounds the period.", period.Notes);
    }

    [Fact]
    public void Of_OneThatIsAlwaysLess_HasNoPeriod()
    {
        var crossover = PeriodCrossover.Of(Marl(idle: 0.5e-3), Tuff());

        Assert.Null(crossover.Period);
        Assert.Equal(Side.First, crossover.LessForLongPeriods);
        Assert.Equal(
            "Marl 100 takes less charge than Tuff 100 in every period that holds a run of both",
            crossover.ToString()
        );
    }

    [Fact]
    public void Of_NoIdleCurrent_Refuses() =>
        Refusal.Is<ArgumentException>(
            () => PeriodCrossover.Of(Marl(), At(Bench.Tuff, 0.5, 0.030, null)),
            "second",
            "A repeated task must have running and idle current read; Tuff 100 has not both."
        );

    private static SetupSummary Marl(double idle = 3e-3) => At(Bench.Marl, 0.2, 0.050, idle);

    private static SetupSummary Tuff() => At(Bench.Tuff, 0.5, 0.030, 1e-3);

    private static SetupSummary At(Board board, double seconds, double running, double? idle)
    {
        var setup = Bench.At(board, 100);
        var meter = Bench.Meter(resolution: 1e-9);
        return SetupSummary.Of(
            Bench.Series(setup, Bench.Fine, seconds - 1e-8, seconds, seconds + 1e-8),
            Bench
                .Running(setup, meter, null, running - 1e-8, running, running + 1e-8)
                .Concat(idle is { } i ? Bench.Read(setup, meter, SupplyPhase.Idle, null, [i - 1e-4, i, i + 1e-4]) : [])
        );
    }
}
