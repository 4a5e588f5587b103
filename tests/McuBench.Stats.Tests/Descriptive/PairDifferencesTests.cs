using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class PairDifferencesTests
{
    public static TheoryData<string> Shapes =>
        ["normal", "few values", "two values", "equal", "even steps", "clusters", "heavy"];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Select_MoreThanFitInMemoryAtOnce_IsThatOfAllSorted(string shape)
    {
        double[] rows = Values(shape, 301, 1);
        double[] columns = Values(shape, 499, 2);
        double[] all = [.. rows.SelectMany(row => columns.Select(column => column - row)).Order()];
        var pairs = new PairDifferences(rows, columns, PairRegion.All);

        Assert.Equal(all.Length, pairs.Count);
        foreach (int rank in (int[])[0, 1, 777, all.Length / 4, all.Length / 2, all.Length - 2, all.Length - 1])
        {
            Assert.Equal(all[rank], pairs.Select(rank));
            if (rank + 1 < all.Length)
            {
                Assert.Equal(all[rank + 1], pairs.Following(rank, all[rank]));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Select_PairsOfOneSample_IsThatOfAllSorted(string shape)
    {
        double[] values = Values(shape, 400, 3);
        double[] all = [.. values.SelectMany((a, i) => values.Skip(i + 1).Select(b => b - a)).Order()];
        var pairs = new PairDifferences(values, values, PairRegion.AfterOwn);

        Assert.Equal(all.Length, pairs.Count);
        foreach (int rank in (int[])[0, all.Length / 4, all.Length / 2, all.Length - 1])
        {
            Assert.Equal(all[rank], pairs.Select(rank));
        }
    }

    private static double[] Values(string shape, int count, int seed)
    {
        var random = new Random(seed);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                    shape switch
                    {
                        "normal" => Normal(),
                        "few values" => random.Next(5),
                        "two values" => random.Next(2),
                        "equal" => 3,
                        "even steps" => i,
                        "clusters" => random.Next(3) * 1e6 + Normal(),
                        _ => Math.Exp(5 * Normal()),
                    }
                )
                .Order(),
        ];
    }
}
