using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Marl: 0.4 s + 20 million cycles; Tuff: 50 million cycles and no fixed time. At 100 MHz Marl takes 0.6 s and
/// Tuff 0.5 s, yet of Marl's run only 0.2 s follow the clock.</summary>
public class ClockScaledComparisonTests
{
    [Fact]
    public void Of_OrderThatRestsOnFixedTime_IsReversed()
    {
        var (marl, tuff) = Splits();
        var scaled = ClockScaledComparison.Of(marl, tuff);

        Assert.Equal(0.4, scaled.CyclesPerItem.Ratio.Value, 1e-9);
        Assert.Equal((Verdict.Different, Side.First), (scaled.CyclesPerItem.Verdict, scaled.CyclesPerItem.Less));
        Assert.Equal(4, scaled.Pairs.Count);

        var same = scaled.Pairs[0];
        Assert.Equal(1.2, same.Gross.RunTime.Ratio.Value, 1e-9);
        Assert.Equal(0.4, same.Scaling.Ratio.Value, 1e-9);
        Assert.True(same.IsOrderReversed);
    }

    [Fact]
    public void Of_OrderThatHoldsEitherWay_IsNotReversed()
    {
        // Marl at 200 MHz takes 0.5 s as Tuff does at 100: gross not resolved. Marl at 100 and Tuff at 200: 0.6 to 0.25
        // gross, 0.2 to 0.25 net, reversed again.
        var (marl, tuff) = Splits();
        var pairs = ClockScaledComparison.Of(marl, tuff).Pairs;

        Assert.Equal([true, true, false, true], pairs.Select(p => p.IsOrderReversed));
        Assert.Equal(Verdict.NotResolved, pairs[2].Gross.RunTime.Verdict);
    }

    [Fact]
    public void Of_ExchangedSides_GivesReciprocals()
    {
        var (marl, tuff) = Splits();
        var forth = ClockScaledComparison.Of(marl, tuff).CyclesPerItem;
        var back = ClockScaledComparison.Of(tuff, marl).CyclesPerItem;

        Assert.Equal(1, forth.Ratio.Value * back.Ratio.Value, 1e-12);
        Assert.Equal(1, forth.Ratio.Lower!.Value * back.Ratio.Upper!.Value, 1e-12);
        Assert.Equal(forth.Verdict, back.Verdict);
    }

    [Fact]
    public void Of_SplitWithoutAScalingPart_Refuses()
    {
        var (marl, _) = Splits();
        var still = ClockSplit.Of([Around(Bench.Tuff, 100, 0.5), Around(Bench.Tuff, 200, 0.6)]);

        Refusal.Is<ArgumentException>(
            () => ClockScaledComparison.Of(marl, still),
            "second",
            "A split must have a part that follows the clock; run times of Tuff don't fall as the clock rises."
        );
    }

    private static (ClockSplit Marl, ClockSplit Tuff) Splits() =>
        (
            ClockSplit.Of([Around(Bench.Marl, 100, 0.6), Around(Bench.Marl, 200, 0.5)]),
            ClockSplit.Of([Around(Bench.Tuff, 100, 0.5), Around(Bench.Tuff, 200, 0.25)])
        );

    private static SetupSummary Around(Board board, double megahertz, double seconds) =>
        SetupSummary.Of(
            Bench.Series(
                Bench.At(board, megahertz),
                Bench.Fine,
                seconds - 1e-3,
                seconds,
                seconds + 1e-3,
                seconds - 1e-3,
                seconds + 1e-3
            )
        );
}
