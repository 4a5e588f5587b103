using FsCheck.Xunit;
using McuBench.Stats.Planning;

namespace McuBench.Stats.Tests.Planning;

public sealed class RunOrderTests
{
    [Property]
    public void RandomisedBlocks_AnySeed_HoldEveryTreatmentOnce(ulong seed, byte treatments, byte blocks)
    {
        int count = treatments % 9 + 2;

        var order = RunOrder.RandomisedBlocks(count, blocks + 1, seed);

        Assert.Equal(blocks + 1, order.Blocks.Length);
        Assert.Equal(count, order.Treatments);
        Assert.All(order.Blocks, block => Assert.Equal(Enumerable.Range(0, count), block.Order()));
        Assert.Equal(seed, order.Seed);
    }

    [Fact]
    public void RandomisedBlocks_ManyBlocks_PutEachOrderEquallyOften()
    {
        var order = RunOrder.RandomisedBlocks(3, 60_000, 1);

        int[] counts = [.. order.Blocks.CountBy(block => string.Join(' ', block)).Select(pair => pair.Value)];

        // Each of the six orders 10,000 times; five standard deviations of a binomial count.
        Assert.Equal(6, counts.Length);
        Assert.All(counts, count => Assert.InRange(count, 10_000 - 457, 10_000 + 457));
    }

    [Theory]
    [InlineData(2, 2)]
    [InlineData(3, 6)]
    [InlineData(4, 4)]
    [InlineData(5, 10)]
    [InlineData(8, 8)]
    [InlineData(9, 18)]
    public void Williams_AnyCount_BalancesPlacesAndNeighbours(int treatments, int blocks)
    {
        foreach (int repeats in new[] { 1, 3 })
        {
            var order = RunOrder.Williams(treatments, repeats, 11);
            int[,] places = new int[treatments, treatments];
            int[,] follows = new int[treatments, treatments];
            foreach (var block in order.Blocks)
            {
                for (int place = 0; place < treatments; place++)
                {
                    places[place, block[place]]++;
                    if (place > 0)
                    {
                        follows[block[place - 1], block[place]]++;
                    }
                }
            }

            int each = repeats * (treatments % 2 == 0 ? 1 : 2);
            Assert.Equal(blocks * repeats, order.Blocks.Length);
            for (int i = 0; i < treatments; i++)
            {
                for (int k = 0; k < treatments; k++)
                {
                    Assert.Equal(each, places[i, k]);
                    Assert.Equal(i == k ? 0 : each, follows[i, k]);
                }
            }
        }
    }

    [Fact]
    public void Orders_SameSeed_AreEqualAndOtherSeedsDiffer()
    {
        var order = RunOrder.Williams(6, 2, 5);

        Assert.Equal(order, RunOrder.Williams(6, 2, 5));
        Assert.Equal(order.GetHashCode(), RunOrder.Williams(6, 2, 5).GetHashCode());
        Assert.NotEqual(order.ToString(), RunOrder.Williams(6, 2, 6).ToString());
        Assert.NotEqual(RunOrder.RandomisedBlocks(6, 12, 5), order);
    }

    [Fact]
    public void Orders_OutOfRange_AreRefused()
    {
        Distributions.Refusal.Of(
            () => RunOrder.RandomisedBlocks(1, 5, 1),
            "treatments",
            "Count of treatments must be at least 2; was 1."
        );
        Distributions.Refusal.Of(
            () => RunOrder.Williams(3, 0, 1),
            "repeats",
            "Count of blocks or repeats must be at least 1; was 0."
        );
        Distributions.Refusal.Of(
            () => RunOrder.RandomisedBlocks(1000, 1001, 1),
            "blocks",
            "Count of places must be at most 1E+06; was 1001000."
        );
    }
}
