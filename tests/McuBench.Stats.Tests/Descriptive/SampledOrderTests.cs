using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class SampledOrderTests
{
    public static TheoryData<string, int> Shapes
    {
        get
        {
            var shapes = new TheoryData<string, int>();
            foreach (string shape in (string[])["random", "ascending", "equal", "two values", "heavy", "periodic"])
            {
                foreach (int count in (int[])[1, 2, 5, 8191, 8192, 30_001, 100_003])
                {
                    shapes.Add(shape, count);
                }
            }

            return shapes;
        }
    }

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Of_AnyRank_IsThatOfTheSortedValuesAndTheNext(string shape, int count)
    {
        var random = new Random(11);
        double[] values =
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                    shape switch
                    {
                        "random" => random.NextDouble(),
                        "ascending" => i,
                        "equal" => 1,
                        "two values" => i % 2,
                        "heavy" => Math.Tan(3.14 * (random.NextDouble() - 0.5)),
                        _ => i % 24,
                    }
                ),
        ];
        double[] before = [.. values];
        double[] sorted = [.. values.Order()];
        var order = new SampledOrder(values);
        foreach (int rank in (int[])[0, count / 100, count / 4, count / 2, count - 1 - count / 50, count - 1])
        {
            Assert.Equal((sorted[rank], sorted[Math.Min(rank + 1, count - 1)]), order.Of(rank));
        }

        order.Return();
        Assert.Equal(before, values);
    }
}
