using McuBench.Stats.Hypotheses;
using static McuBench.Stats.Coverage.Procedure;

namespace McuBench.Stats.Coverage;

/// <summary>Tests whose null hypothesis is that the order of the values means nothing.</summary>
internal static class SequenceProcedures
{
    private const string NoOrder = "any order as likely";

    private static readonly Promise OfAny = new(Shapes.Alike);

    private static readonly Promise OfNormal = new(
        Shapes.Normal,
        From: 5,
        Elsewhere: "populations that are not normal, and fewer than 5 values"
    );

    private static readonly Promise OfMany = new(Shapes.Normal, From: 100, Elsewhere: "fewer than 100 values: rough");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Procedure> All { get; } =
    [
        Test("Trend.MannKendall", NoOrder, s => Trend.MannKendall(s.First).PValue, OfAny),
        Test("Randomness.Runs", NoOrder, s => Randomness.Runs(s.First).PValue, OfAny),
        Test("Randomness.VonNeumann", NoOrder, s => Randomness.VonNeumann(s.First).PValue, OfNormal),
        Test("Randomness.LjungBox, 2 lags", NoOrder, s => Randomness.LjungBox(s.First, 2).PValue, OfMany),
    ];
}
