using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Reporting;
using McuBench.Core.Supply;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Marl waits 0.1 s and computes 40 million cycles, Tuff waits 0.3 s and computes 20 million.</summary>
public class ClockMatchedComparisonTests
{
    [Fact]
    public void AtEqualClock_RunTimes_AreThoseOfTheLines()
    {
        // At 160 MHz: 0.35 s and 0.425 s.
        var compared = ClockMatchedComparison.AtEqualClock(Marl(), Tuff(), Frequency.FromMegahertz(160));

        Assert.Equal(0.35 / 0.425, compared.RunTime.Ratio.Value, 1e-12);
        Assert.Equal(Side.First, compared.RunTime.Less);
        Assert.Equal(ComparedQuantity.RunTime, compared.RunTime.Quantity);
        Assert.Equal(ClockMatch.EqualClock, compared.Match);
        Assert.Null(compared.ChargePerTask);
    }

    [Fact]
    public void AtEqualClock_FixedTimeThatIsNotTheBoards_ReversesTheOrder()
    {
        var compared = ClockMatchedComparison.AtEqualClock(
            Marl(),
            Tuff(),
            Frequency.FromMegahertz(160),
            new ClockMatchOptions { IsFixedTimeForeign = true }
        );

        Assert.Equal(2, compared.RunTime.Ratio.Value, 1e-9);
        Assert.Equal(Side.Second, compared.RunTime.Less);
        Assert.Equal(ComparedQuantity.ScalingRunTime, compared.RunTime.Quantity);
        Assert.True(compared.IsFixedTimeForeign);
    }

    [Fact]
    public void AtDefaults_EachAtItsOwn_ComparesThose()
    {
        // Marl at 100 MHz 0.5 s, Tuff at 200 MHz 0.4 s.
        var compared = ClockMatchedComparison.AtDefaults(
            Marl(),
            Frequency.FromMegahertz(100),
            Tuff(),
            Frequency.FromMegahertz(200)
        );

        Assert.Equal(0.5 / 0.4, compared.RunTime.Ratio.Value, 1e-12);
        Assert.Equal(ClockMatch.Defaults, compared.Match);
        Assert.StartsWith(
            "Each at its default clock (Marl at 100 MHz, Tuff at 200 MHz): ",
            ClockStatement.Of(compared),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void AtBest_BestClocks_ComparesChargeAndRunTimeThere()
    {
        var (marl, tuff) = (BestClock.Of(Marl()), BestClock.Of(Tuff()));
        var compared = ClockMatchedComparison.AtBest(marl, tuff);

        Assert.Equal(marl.Clock, compared.FirstClock);
        Assert.Equal(
            Si.Coulombs(marl.Charge.Value) / Si.Coulombs(tuff.Charge.Value),
            compared.ChargePerTask!.Ratio.Value,
            1e-12
        );
        Assert.Equal(
            (0.1 + 40e6 / Si.Hertz(marl.Clock)) / (0.3 + 20e6 / Si.Hertz(tuff.Clock)),
            compared.RunTime.Ratio.Value,
            1e-9
        );
    }

    [Fact]
    public void AtEqualClock_BeyondARange_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => ClockMatchedComparison.AtEqualClock(Marl(), Tuff(), Frequency.FromMegahertz(240)),
            "clock",
            "Clock must lie within the range that was run, 100 MHz to 200 MHz; was 240 MHz."
        );

    private static ClockSplit Marl() => Split(Bench.Marl, 0.1, 40e6);

    private static ClockSplit Tuff() => Split(Bench.Tuff, 0.3, 20e6);

    private static ClockSplit Split(Board board, double fixedTime, double cycles) =>
        ClockSplit.Of(
            new[] { 100.0, 200 }.Select(m =>
            {
                var setup = Bench.At(board, m);
                var t = fixedTime + cycles / (m * 1e6);
                return SetupSummary.Of(
                    Bench.Series(setup, Bench.Fine, t - 1e-4, t, t + 1e-4),
                    Bench
                        .Read(setup, Bench.Meter(), SupplyPhase.Waiting, null, Around(8e-3 + 2e-5 * m))
                        .Concat(Bench.Read(setup, Bench.Meter(), SupplyPhase.Computing, null, Around(6e-3 + 12e-5 * m)))
                );
            })
        );

    private static double[] Around(double amperes) => [amperes - 1e-4, amperes, amperes + 1e-4];
}
