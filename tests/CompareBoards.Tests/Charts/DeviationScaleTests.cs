using CompareBoards.Charts;

namespace CompareBoards.Tests.Charts;

public sealed class DeviationScaleTests
{
    [Fact]
    public void Place_SpreadOfOneSize_IsEven()
    {
        var scale = new DeviationScale([-0.001, 0.0005, 0.0012]);

        Assert.False(scale.IsCompressed);
        Assert.Equal(2, scale.Place(0.001) / scale.Place(0.0005), 5);
    }

    [Fact]
    public void Place_OutlierFarOut_KeepsTheRestApart()
    {
        var scale = new DeviationScale([-0.001, 0.0005, 0.0012, 0.12]);

        Assert.True(scale.IsCompressed);
        Assert.InRange(scale.Place(0.12), 0, scale.Limit);

        // On an even scale these two would be 0.4 % of the width apart.
        Assert.True(scale.Place(0.0005) - scale.Place(-0.001) > 0.15 * scale.Limit);
    }

    [Fact]
    public void Place_OppositeDeviations_AreMirrored()
    {
        var scale = new DeviationScale([0.001, 0.05]);

        Assert.Equal(-scale.Place(0.02), scale.Place(-0.02));
        Assert.Equal(0, scale.Place(0));
    }

    [Fact]
    public void Limit_NoSpreadAtAll_IsAboveZero() => Assert.True(new DeviationScale([0, 0, 0]).Limit > 0);

    [Fact]
    public void Ticks_AnySpread_StandWithinTheLimit()
    {
        foreach (var largest in (ReadOnlySpan<double>)[1e-6, 0.0023, 0.05, 0.9, 3])
        {
            foreach (var rest in (ReadOnlySpan<double>)[1, 1e-2, 1e-4])
            {
                var scale = new DeviationScale([largest, largest * rest, -largest * rest]);
                var ticks = scale.TickPlaces.ToArray();

                Assert.Contains(0.0, ticks);
                Assert.True(ticks.Length >= 3, $"{largest}, {rest}: {ticks.Length} ticks");
                Assert.All(ticks, tick => Assert.InRange(tick, -scale.Limit, scale.Limit));
            }
        }
    }
}
