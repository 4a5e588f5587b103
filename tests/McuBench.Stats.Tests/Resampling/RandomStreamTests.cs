using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using McuBench.Stats.Resampling;
using McuBench.Stats.Tests.Distributions;

namespace McuBench.Stats.Tests.Resampling;

public sealed class RandomStreamTests
{
    private const int Draws = 20_000;

    // The largest distance between the empirical and the true distribution of 20,000 draws exceeds this once in 1e5
    // seeds (Kolmogorov's limit, √(ln(2e5)/(2n))); the seed is fixed.
    private const double Distance = 0.0175;

    [Fact]
    public void Normal_ManyDraws_FollowTheNormalDistribution() =>
        Follows(stream => stream.Normal(), Normal.Standard.Cdf);

    [Theory]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(9.3)]
    [InlineData(1e9)]
    [InlineData(double.PositiveInfinity)]
    public void StudentT_ManyDraws_FollowTheTDistribution(double df) =>
        Follows(
            stream => stream.StudentT(df),
            double.IsInfinity(df) ? Normal.Standard.Cdf : t => StudentT.Of(df).Cdf(t)
        );

    [Fact]
    public void Rectangular_ManyDraws_FollowTheRectangularDistribution() =>
        Follows(stream => stream.Rectangular(-3, 5), x => (x + 3) / 8);

    [Fact]
    public void Triangular_ManyDraws_FollowTheTriangularDistribution() =>
        Follows(stream => stream.Triangular(-3, 5), x => x < 1 ? (x + 3) * (x + 3) / 32 : 1 - (5 - x) * (5 - x) / 32);

    [Fact]
    public void UShaped_ManyDraws_FollowTheArcSineDistribution() =>
        Follows(stream => stream.UShaped(-3, 5), x => 0.5 + Math.Asin((x - 1) / 4) / Math.PI);

    [Fact]
    public void Index_ManyDrawsOfSeven_AreSpreadEvenly()
    {
        var random = RandomStream.Of(5);
        int[] counts = new int[7];
        for (int i = 0; i < 70_000; i++)
        {
            counts[random.Index(7)]++;
        }

        double chiSquared = counts.Sum(count => (count - 10_000.0) * (count - 10_000.0) / 10_000.0);
        // Chi-squared with 6 degrees of freedom exceeds 38.3 once in 1e6 seeds.
        Assert.InRange(chiSquared, 0.1, 38.3);
    }

    [Property]
    public void Index_AnyCount_IsBelowIt(ulong seed, int number)
    {
        int count = (number & int.MaxValue) | 1;
        var random = RandomStream.Of(seed);
        for (int i = 0; i < 20; i++)
        {
            Assert.InRange(random.Index(count), 0, count - 1);
        }
    }

    [Property]
    public void MoveTo_AnyStream_IsItsStart(ulong seed, ulong stream, byte drawn)
    {
        var moved = RandomStream.Of(seed, stream + 1);
        for (int i = 0; i < drawn; i++)
        {
            moved.Bits();
        }

        moved.MoveTo(stream);
        var fresh = RandomStream.Of(seed, stream);

        Assert.Equal(stream, moved.Number);
        for (int i = 0; i < 9; i++)
        {
            Assert.Equal(fresh.Bits(), moved.Bits());
        }
    }

    [Property]
    public void Shuffle_AnyItems_KeepsEachOfThem(ulong seed, int[] items)
    {
        int[] shuffled = [.. items];
        RandomStream.Of(seed).Shuffle(shuffled.AsSpan());

        Assert.Equal(items.Order(), shuffled.Order());
    }

    [Fact]
    public void Shuffle_ThreeItems_GivesEachOrderAsOften()
    {
        var random = RandomStream.Of(11);
        var counts = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int i = 0; i < 60_000; i++)
        {
            char[] items = ['a', 'b', 'c'];
            random.Shuffle(items.AsSpan());
            string order = new(items);
            counts[order] = counts.GetValueOrDefault(order) + 1;
        }

        Assert.Equal(6, counts.Count);
        // Five standard deviations of a count, √(60,000 · 1/6 · 5/6) = 91.
        Assert.All(counts.Values, count => Assert.InRange(count, 10_000 - 456, 10_000 + 456));
    }

    [Fact]
    public void Rectangular_LimitsAtTheEndsOfTheRange_StaysFinite()
    {
        var random = RandomStream.Of(1);

        Assert.All(
            Enumerable.Range(0, 100),
            _ => Assert.True(double.IsFinite(random.Rectangular(double.MinValue, double.MaxValue)))
        );
    }

    [Fact]
    public void Draws_ParametersOutOfRange_AreRefused()
    {
        var random = RandomStream.Of(1);

        Refusal.Of(() => random.Index(0), "count", "Count to choose from must be at least 1; was 0.");
        Refusal.Of(
            () => random.Rectangular(2, 1),
            "upper",
            "Upper limit must be at or above the lower limit 2; was 1."
        );
        Refusal.Of(() => random.Triangular(double.NaN, 1), "lower", "Lower limit must be a finite number; was NaN.");
        Refusal.Of(() => random.StudentT(0), "degreesOfFreedom", "Degrees of freedom must be above 0; was 0.");
    }

    private static void Follows(Func<RandomStream, double> draw, Func<double, double> cdf)
    {
        var random = RandomStream.Of(20_240_229);
        double[] values = [.. Enumerable.Range(0, Draws).Select(_ => draw(random)).Order()];
        double distance = values.Select((x, i) => Math.Abs(cdf(x) - (i + 0.5) / Draws)).Max();

        Assert.InRange(distance, 0, Distance);
    }
}
