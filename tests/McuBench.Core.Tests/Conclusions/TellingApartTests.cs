using FsCheck.Xunit;
using McuBench.Core.Conclusions;

namespace McuBench.Core.Tests.Conclusions;

public class TellingApartTests
{
    [Fact]
    public void Groups_OverlappingNeighbours_StandInSeveral()
    {
        // 0 and 1, 1 and 2 can't be told apart, 0 and 2 can.
        var groups = TellingApart.Groups(4, (i, j) => (i, j) is (0, 2) or (2, 0) || i == 3 || j == 3, 10);

        Assert.Equal(
            [
                [0, 1],
                [1, 2],
                [3],
            ],
            groups!
        );
    }

    [Property(MaxTest = 200)]
    public bool Groups_AnyPairs_AreThoseOfBruteForce(ulong pairs)
    {
        const int n = 7;
        bool Apart(int i, int j) => (pairs >> (Math.Min(i, j) * n + Math.Max(i, j)) & 1) == 1;
        bool IsTogether(int set) => Members(set).All(i => Members(set).All(j => i == j || !Apart(i, j)));
        var largest = Enumerable
            .Range(1, (1 << n) - 1)
            .Where(s => IsTogether(s) && Enumerable.Range(0, n).All(i => (s >> i & 1) == 1 || !IsTogether(s | 1 << i)))
            .Select(s => string.Join(',', Members(s)))
            .ToHashSet(StringComparer.Ordinal);

        return largest.SetEquals(TellingApart.Groups(n, Apart, 1000)!.Select(g => string.Join(',', g)));

        static int[] Members(int set) => [.. Enumerable.Range(0, n).Where(i => (set >> i & 1) == 1)];
    }

    [Fact]
    public void Groups_MoreThanAllowed_AreNone()
    {
        // Pairs 0–1, 2–3, … are apart, all else together: 2^5 groups of five.
        static bool Apart(int i, int j) => i / 2 == j / 2 && i != j;

        Assert.Null(TellingApart.Groups(10, Apart, 31));
        Assert.Equal(32, TellingApart.Groups(10, Apart, 32)!.Count);
    }

    [Fact]
    public void Groups_Nothing_IsEmpty() => Assert.Empty(TellingApart.Groups(0, (_, _) => false, 10)!);
}
