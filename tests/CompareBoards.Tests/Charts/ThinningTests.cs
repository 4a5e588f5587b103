using CompareBoards.Charts;

namespace CompareBoards.Tests.Charts;

public sealed class ThinningTests
{
    private static readonly int[] Few = [3, 1, 2];

    [Fact]
    public void Of_FewItems_KeepsThemAll() => Assert.Equal(Few, Thinning.Of(Few, item => item, 3));

    [Fact]
    public void Of_ManyItems_KeepsTheExtremesOfEachStretchInOrder()
    {
        // Two stretches of four: 5 and 1, then 9 and 2.
        int[] items = [3, 5, 1, 4, 4, 9, 2, 4];

        Assert.Equal([5, 1, 9, 2], Thinning.Of(items, item => item, 4));
    }

    [Theory]
    [InlineData(1000, 30)]
    [InlineData(1001, 7)]
    public void Of_ManyItems_KeepsNoMoreThanAskedForAndEveryOutlier(int count, int most)
    {
        var items = Enumerable.Range(0, count).Select(i => i == 617 ? 50.0 : Math.Sin(i)).ToArray();

        var kept = Thinning.Of(items, item => item, most);

        Assert.InRange(kept.Count, 2, most);
        Assert.Contains(50.0, kept);
        Assert.Contains(items.Min(), kept);
    }

    [Fact]
    public void Of_EqualItems_KeepsOneOfEachStretch() =>
        Assert.Equal(5, Thinning.Of(Enumerable.Repeat(1.8, 100).ToArray(), item => item, 10).Count);
}
