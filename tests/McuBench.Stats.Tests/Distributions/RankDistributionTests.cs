using System.Globalization;
using System.Numerics;
using System.Text.Json;
using FsCheck.Xunit;
using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class RankDistributionTests
{
    [Fact]
    public void MannWhitney_StandardTable_HasTheCriticalValues()
    {
        var table = Table("cv-mann-whitney");
        var sizes = table.GetProperty("input").GetProperty("n1_rows_and_n2_columns");
        foreach (var (key, level) in new[] { ("two_sided_0.05", 0.025), ("two_sided_0.01", 0.005) })
        {
            var rows = table.GetProperty("expected").GetProperty(key);
            for (var i = 0; i < sizes.GetArrayLength(); i++)
            {
                for (var j = 0; j < sizes.GetArrayLength(); j++)
                {
                    var law = RankDistribution.MannWhitney(sizes[i].GetInt32(), sizes[j].GetInt32());
                    AssertCriticalValue(rows[i][j], law, level);
                }
            }
        }
    }

    [Fact]
    public void SignedRank_StandardTable_HasTheCriticalValues()
    {
        var table = Table("cv-wilcoxon-signed-rank");
        var counts = table.GetProperty("input").GetProperty("n");
        var levels = table.GetProperty("input").GetProperty("one_sided_level");
        var rows = table.GetProperty("expected").GetProperty("rows");
        for (var i = 0; i < counts.GetArrayLength(); i++)
        {
            var law = RankDistribution.SignedRank(counts[i].GetInt32());
            for (var j = 0; j < levels.GetArrayLength(); j++)
            {
                AssertCriticalValue(rows[i][j], law, levels[j].GetDouble());
            }
        }
    }

    [Fact]
    public void Kendall_StandardTable_HasTheCriticalValues()
    {
        var table = Table("cv-spearman-kendall");
        var counts = table.GetProperty("input").GetProperty("kendall_n");
        var levels = table.GetProperty("input").GetProperty("one_sided_level");
        var rows = table.GetProperty("expected").GetProperty("kendall_S");
        for (var i = 0; i < counts.GetArrayLength(); i++)
        {
            var law = RankDistribution.Kendall(counts[i].GetInt32());
            for (var j = 0; j < levels.GetArrayLength(); j++)
            {
                var level = levels[j].GetDouble();
                if (rows[i][j].ValueEquals("-"))
                {
                    Assert.True(law.AtLeast(law.Largest) > level);
                    continue;
                }

                var critical = double.Parse(rows[i][j].GetString()!, CultureInfo.InvariantCulture);
                Assert.True(law.AtLeast(critical) <= level);
                Assert.True(law.AtLeast(critical - law.Step) > level);
            }
        }
    }

    [Fact]
    public void MannWhitney_FiftyAndFifty_IsTheExactCountOverAllOrders()
    {
        // The Gaussian binomial coefficient in whole numbers: each factor (1 − q^(m+i))/(1 − q^i) in turn.
        const int m = 50;
        const int n = 50;
        var ways = new BigInteger[(m * n) + 1];
        ways[0] = 1;
        for (var i = 1; i <= n; i++)
        {
            for (var u = ways.Length - 1; u >= m + i; u--)
            {
                ways[u] -= ways[u - m - i];
            }

            for (var u = i; u < ways.Length; u++)
            {
                ways[u] += ways[u - i];
            }
        }

        AssertMasses(ways, RankDistribution.MannWhitney(m, n));
    }

    [Fact]
    public void SignedRank_Sixty_IsTheExactCountOverAllSigns()
    {
        const int n = 60;
        var ways = new BigInteger[(n * (n + 1) / 2) + 1];
        ways[0] = 1;
        for (var rank = 1; rank <= n; rank++)
        {
            for (var sum = ways.Length - 1; sum >= rank; sum--)
            {
                ways[sum] += ways[sum - rank];
            }
        }

        AssertMasses(ways, RankDistribution.SignedRank(n));
    }

    [Fact]
    public void Kendall_Forty_IsTheExactCountOverAllOrders()
    {
        const int n = 40;
        var ways = new BigInteger[(n * (n - 1) / 2) + 1];
        ways[0] = 1;
        for (var i = 2; i <= n; i++)
        {
            for (var k = ways.Length - 1; k >= 0; k--)
            {
                for (var j = 1; j < i && j <= k; j++)
                {
                    ways[k] += ways[k - j];
                }
            }
        }

        AssertMasses(ways, RankDistribution.Kendall(n));
    }

    [Property(MaxTest = 60)]
    public void MannWhitney_WithTies_IsTheCountOverAllSplits(byte[] levels, byte size)
    {
        // Up to eight values on four levels.
        var values = levels.Concat(new byte[] { 1, 2 }).Take(8).Select(v => v % 4).Order().ToArray();
        var first = 1 + (size % (values.Length - 1));
        var splits = Enumerable
            .Range(0, 1 << values.Length)
            .Where(bits => BitOperations.PopCount((uint)bits) == first)
            .Select(bits =>
                (
                    from i in Enumerable.Range(0, values.Length)
                    from j in Enumerable.Range(0, values.Length)
                    where (bits >> i & 1) == 1 && (bits >> j & 1) == 0
                    select (1 + Math.Sign(values[i] - values[j])) / 2.0
                ).Sum()
            )
            .ToArray();
        AssertAsEnumerated(splits, RankDistribution.MannWhitney(first, values.Length - first, Groups(values)));
    }

    [Property(MaxTest = 60)]
    public void SignedRank_WithTies_IsTheCountOverAllSigns(byte[] levels)
    {
        var values = levels.Append((byte)1).Take(8).Select(v => v % 4).Order().ToArray();
        var ranks = values.Select(v => values.Count(w => w < v) + ((values.Count(w => w == v) + 1) / 2.0)).ToArray();
        var sums = Enumerable
            .Range(0, 1 << values.Length)
            .Select(bits => ranks.Where((_, i) => (bits >> i & 1) == 1).Sum())
            .ToArray();
        AssertAsEnumerated(sums, RankDistribution.SignedRank(Groups(values)));
    }

    [Property(MaxTest = 30)]
    public void Kendall_WithTies_IsTheCountOverAllOrders(byte[] levels)
    {
        var values = levels.Take(5).Select(v => v % 4).Concat([7, 0]).Order().ToArray();
        var statistics = Orders(values.Length)
            .Select(order =>
                (double)
                    (
                        from i in Enumerable.Range(0, values.Length)
                        from j in Enumerable.Range(0, i)
                        select Math.Sign(values[i] - values[j]) * Math.Sign(order[i] - order[j])
                    ).Sum()
            )
            .ToArray();
        AssertAsEnumerated(statistics, RankDistribution.Kendall(Groups(values)));
    }

    [Property(MaxTest = 60)]
    public void Quantile_IsTheSmallestValueThatReachesTheProbability(byte first, byte second, ushort pStep)
    {
        var law = RankDistribution.MannWhitney(1 + (first % 12), 1 + (second % 12));
        var p = (pStep + 0.5) / (ushort.MaxValue + 1);
        var lower = law.Quantile(p);
        Assert.True(law.Cdf(lower) >= p * (1 - 1e-11));
        Assert.True(law.Cdf(lower - law.Step) < p);
        var upper = law.UpperQuantile(p);
        Assert.True(law.UpperTail(upper) <= p * (1 + 1e-11));
        Assert.True(law.UpperTail(upper - law.Step) > p);
    }

    [Fact]
    public void Tails_BetweenAndBeyondTheValues_AreThoseOfTheNeighbours()
    {
        // U of 1 and 2 is 0, 1 or 2, a third each.
        var law = RankDistribution.MannWhitney(1, 2);
        Assert.Equal((0, 2, 1), (law.Smallest, law.Largest, law.Step));
        Assert.Equal(0, law.Cdf(-0.1));
        AssertClose(1 / 3.0, law.Cdf(0.9), 1e-15, "cdf");
        Assert.Equal(1, law.Cdf(2));
        Assert.Equal(1, law.AtLeast(0));
        AssertClose(2 / 3.0, law.AtLeast(0.1), 1e-15, "at least");
        Assert.Equal(0, law.AtLeast(2.1));
        AssertClose(2 / 3.0, law.UpperTail(0.9), 1e-15, "upper tail");
        AssertClose(1 / 3.0, law.UpperTail(1), 1e-15, "upper tail");
        Assert.Equal(1, law.UpperTail(-3));
        Assert.Equal(0, law.UpperTail(2));
        Assert.Equal(0, law.Mass(0.5));
        Assert.Equal(0, law.Mass(3));
    }

    [Fact]
    public void Factories_SizesOutOfRange_Refuse()
    {
        Refusal.Of(() => RankDistribution.MannWhitney(0, 3), "first", "Sample size must be at least 1; was 0.");
        Refusal.Of(() => RankDistribution.MannWhitney(3, -1), "second", "Sample size must be at least 1; was -1.");
        Refusal.Of(
            () => RankDistribution.MannWhitney(200, 101),
            "second",
            "Product of the sample sizes must be at most 20000 for the exact distribution; was 20200."
        );
        Refusal.Of(
            () => RankDistribution.SignedRank(1001),
            "count",
            "Count of values must be between 1 and 1000; was 1001."
        );
        Refusal.Of(() => RankDistribution.Kendall(1), "count", "Count of values must be between 2 and 200; was 1.");
        Refusal.Of(() => RankDistribution.Kendall([2, 0]), "groups", "Group at index 1 must be at least 1; was 0.");
        Refusal.Of(
            () => RankDistribution.SignedRank([int.MaxValue, int.MaxValue, 4]),
            "groups",
            "Count of values must be between 1 and 1000; was 2147483647."
        );
        var fault = Assert.Throws<ArgumentException>(() => RankDistribution.MannWhitney(2, 3, [1, 3]));
        Assert.StartsWith(
            "Sum of the groups must be 5, the count of all values; was 4.",
            fault.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentException>(() => RankDistribution.Kendall([5]));
    }

    [Fact]
    public void Questions_OfNoFiniteValueOrProbability_Refuse()
    {
        var law = RankDistribution.SignedRank(4);
        const string message = "Value must be a finite number; was NaN.";
        Refusal.Of(() => law.Mass(double.NaN), "value", message);
        Refusal.Of(() => law.Cdf(double.NaN), "value", message);
        Refusal.Of(() => law.AtLeast(double.NaN), "value", message);
        Refusal.Of(() => law.UpperTail(double.NaN), "value", message);
        Refusal.Of(() => law.Quantile(0), "probability", "Probability must be above 0 and below 1; was 0.");
        Refusal.Of(() => law.UpperQuantile(1), "probability", "Probability must be above 0 and below 1; was 1.");
    }

    private static JsonElement Table(string id) =>
        Cases("rank-critical-values.json", "cases").Single(c => c.GetProperty("id").ValueEquals(id));

    private static void AssertCriticalValue(JsonElement entry, RankDistribution law, double level)
    {
        if (entry.ValueEquals("-"))
        {
            Assert.True(law.Cdf(0) > level);
            return;
        }

        var critical = double.Parse(entry.GetString()!, CultureInfo.InvariantCulture);
        Assert.True(law.Cdf(critical) <= level);
        Assert.True(law.Cdf(critical + 1) > level);
    }

    private static void AssertMasses(BigInteger[] ways, RankDistribution law)
    {
        var total = ways.Aggregate(BigInteger.Add);
        BigInteger atMost = 0;
        for (var i = 0; i < ways.Length; i++)
        {
            var value = law.Smallest + (i * law.Step);
            atMost += ways[i];
            AssertClose(Ratio(ways[i], total), law.Mass(value), 1e-12, $"mass {value}");
            AssertClose(Ratio(atMost, total), law.Cdf(value), 1e-12, $"cdf {value}");
            AssertClose(Ratio(total - atMost, total), law.UpperTail(value), 1e-12, $"upper tail {value}");
            AssertClose(Ratio(total - atMost + ways[i], total), law.AtLeast(value), 1e-12, $"at least {value}");
        }
    }

    private static double Ratio(BigInteger part, BigInteger whole) =>
        part.IsZero ? 0 : Math.Exp(BigInteger.Log(part) - BigInteger.Log(whole));

    private static void AssertAsEnumerated(double[] statistics, RankDistribution law)
    {
        Assert.Equal(statistics.Min(), law.Smallest);
        Assert.Equal(statistics.Max(), law.Largest);
        for (var value = law.Smallest; value <= law.Largest; value += law.Step)
        {
            double Share(Func<double, bool> isCounted) => statistics.Count(isCounted) / (double)statistics.Length;
            Assert.Equal(Share(s => s == value), law.Mass(value), 1e-14);
            Assert.Equal(Share(s => s <= value), law.Cdf(value), 1e-14);
            Assert.Equal(Share(s => s >= value), law.AtLeast(value), 1e-14);
            Assert.Equal(Share(s => s > value), law.UpperTail(value), 1e-14);
        }
    }

    private static int[] Groups(int[] sorted) => [.. sorted.GroupBy(v => v).Select(g => g.Count())];

    private static IEnumerable<int[]> Orders(int count) =>
        count == 0
            ?
            [
                [],
            ]
            : Orders(count - 1)
                .SelectMany(order =>
                    Enumerable.Range(0, count).Select(i => (int[])[.. order[..i], count, .. order[i..]])
                );
}
