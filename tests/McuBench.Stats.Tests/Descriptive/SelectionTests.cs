using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class SelectionTests
{
    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Nth_AnyRank_IsThatOfTheSortedValues(Dyadic data)
    {
        double[] sorted = [.. data.Values.Order()];
        for (int rank = 0; rank < sorted.Length; rank++)
        {
            Assert.Equal(sorted[rank], Selection.Nth([.. data.Values], rank));
        }
    }

    public static TheoryData<string> Shapes =>
        ["random", "ascending", "descending", "equal", "two values", "organ pipe"];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Nth_ManyValues_SplitsAroundTheRank(string shape)
    {
        var random = new Random(7);
        const int n = 20_000;
        double[] values =
        [
            .. Enumerable
                .Range(0, n)
                .Select(i =>
                    shape switch
                    {
                        "random" => random.NextDouble(),
                        "ascending" => i,
                        "descending" => -i,
                        "equal" => 1,
                        "two values" => i % 2,
                        _ => Math.Min(i, n - i),
                    }
                ),
        ];
        double[] sorted = [.. values.Order()];
        foreach (int rank in (int[])[0, 1, n / 4, n / 2, n - 2, n - 1])
        {
            double[] copy = [.. values];

            Assert.Equal(sorted[rank], Selection.Nth(copy, rank));
            Assert.All(copy[..rank], value => Assert.True(value <= sorted[rank]));
            Assert.All(copy[rank..], value => Assert.True(value >= sorted[rank]));
        }
    }
}
