using McuBench.Stats.Hypotheses;
using static McuBench.Stats.Coverage.Procedure;

namespace McuBench.Stats.Coverage;

/// <summary>The tests of several groups, and the intervals of all their pairs at once.</summary>
internal static class SeveralGroupProcedures
{
    private const string EqualMeans = "four equal means";

    private static readonly Promise OfEqualSpreads = new(
        Shapes.Alike,
        Exact: Shapes.Normal,
        Elsewhere: "where spreads differ"
    );

    private static readonly Promise OfOneShape = new(Shapes.Alike, From: 5, Elsewhere: "fewer than 5 values a group");

    private static readonly Promise OfUnequalNormal = new(
        Shapes.Normal | Shapes.Tied | Shapes.Unequal,
        From: 10,
        Elsewhere: "fewer than 10 values a group, and skew: rejects more often than said"
    );

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Procedure> All { get; } =
    [
        Over(Test("OneWay.Anova", EqualMeans, s => OneWay.Anova(s.Groups).Test.PValue, OfEqualSpreads), 1),
        Over(Test("OneWay.Welch", EqualMeans, s => OneWay.Welch(s.Groups).PValue, OfUnequalNormal), 1),
        Over(
            AllPairs("Pairwise.Tukey", "all differences of four means", s => Pairwise.Tukey(s.Groups), OfEqualSpreads),
            10
        ),
        Over(
            AnyPair(
                "Pairwise.Tukey",
                "four equal means: any pair rejected",
                s => Pairwise.Tukey(s.Groups),
                OfEqualSpreads
            ),
            10
        ),
        Over(
            AllPairs(
                "Pairwise.GamesHowell",
                "all differences of four means",
                s => Pairwise.GamesHowell(s.Groups),
                OfUnequalNormal
            ),
            20
        ),
        Over(
            AnyPair(
                "Pairwise.GamesHowell",
                "four equal means: any pair rejected",
                s => Pairwise.GamesHowell(s.Groups),
                OfUnequalNormal
            ),
            20
        ),
        Over(
            AllPairs("Pairwise.Dunn", "all differences of four mean ranks", s => Pairwise.Dunn(s.Groups), OfOneShape),
            1
        ),
        Over(
            AnyPair(
                "Pairwise.Dunn, Holm",
                "one population: any pair rejected",
                s => Pairwise.Dunn(s.Groups),
                OfOneShape
            ),
            1
        ),
    ];

    private static Procedure Over(Procedure procedure, int oneIn) =>
        procedure with
        {
            Tried = Shapes.All,
            OneIn = oneIn,
        };

    private static Procedure AnyPair(
        string name,
        string hypothesis,
        Func<Scene, PairwiseResult> compare,
        Promise promise
    ) => Test(name, hypothesis, s => compare(s).Pairs.Min(pair => pair.PValue), promise);

    /// <summary>Intervals that are to hold 0 all at once.</summary>
    private static Procedure AllPairs(
        string name,
        string target,
        Func<Scene, PairwiseResult> compare,
        Promise promise
    ) =>
        new()
        {
            Name = name,
            Target = target,
            IsTest = false,
            Promise = promise,
            Run = s =>
            {
                var ends = compare(s).Pairs.Select(pair => pair.Difference.Interval!).ToList();
                return new Outcome(ends.TrueForAll(i => i.Contains(0)), ends.Average(i => i.Width));
            },
        };
}
