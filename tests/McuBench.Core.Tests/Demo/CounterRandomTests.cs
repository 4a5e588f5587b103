using DemoStudy;

namespace McuBench.Core.Tests.Demo;

public sealed class CounterRandomTests
{
    private static readonly CounterRandom Random = new(seed: 7);

    [Fact]
    public void Bits_SamePlaceInAnyOrder_AreTheSame()
    {
        var forwards = Enumerable.Range(0, 50).Select(i => Random.Bits(3, i)).ToArray();
        var backwards = Enumerable.Range(0, 50).Reverse().Select(i => new CounterRandom(7).Bits(3, i)).Reverse();

        Assert.Equal(forwards, backwards);
    }

    [Fact]
    public void Bits_OtherStreamIndexOrSeed_AreOthers()
    {
        var all = (
            from seed in new ulong[] { 7, 8 }
            from stream in Enumerable.Range(0, 40)
            from index in Enumerable.Range(0, 40)
            select new CounterRandom(seed).Bits(stream, index)
        ).ToArray();

        Assert.Equal(all.Length, all.Distinct().Count());
    }

    [Fact]
    public void Normal_ManyDraws_HaveTheMomentsOfANormal()
    {
        const int n = 20_000;
        var draws = Enumerable.Range(0, n).Select(i => Random.Normal(0, i)).ToArray();

        // Standard errors at this n: mean 0.007, variance 0.010; the bounds are four of them.
        Assert.InRange(draws.Average(), -0.028, 0.028);
        Assert.InRange(draws.Average(x => x * x), 0.96, 1.04);
    }

    [Fact]
    public void Shuffled_Items_KeepsThemAllInAnotherOrder()
    {
        var items = Enumerable.Range(0, 30).ToArray();
        var shuffled = Random.Shuffled(items, stream: 1);

        Assert.NotEqual(items, shuffled);
        Assert.Equal(items, shuffled.Order());
    }
}
