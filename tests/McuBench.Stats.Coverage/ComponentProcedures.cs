using McuBench.Stats.Hypotheses;
using static McuBench.Stats.Coverage.Procedure;

namespace McuBench.Stats.Coverage;

/// <summary>Variance components of four groups that differ by draws of variance 1.</summary>
internal static class ComponentProcedures
{
    private static readonly Promise OfNormal = new(Shapes.Normal, Elsewhere: "for normal sources only");

    private static readonly Promise OfWithin = new(
        Shapes.Normal,
        Exact: Shapes.Normal,
        Elsewhere: "for normal sources only"
    );

    private static readonly Promise OfFewGroups = new(Shapes.None, Elsewhere: "few groups: rough");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Procedure> All { get; } =
    [
        Interval(
            "NestedAnova.Of, between",
            "variance between groups",
            s => Nested(s).Components[0].Variance,
            _ => 1,
            OfNormal
        ),
        Interval(
            "NestedAnova.Of, within",
            "variance within groups",
            s => Nested(s).Components[1].Variance,
            s => s.Population.Variance,
            OfWithin
        ),
        Interval("NestedAnova.Of, mean", "mean", s => Nested(s).Mean, s => s.Population.Mean, OfNormal),
        Interval(
            "NestedReml.Of, between",
            "variance between groups",
            s => Reml(s).Components[0],
            _ => 1,
            OfFewGroups
        ) with
        {
            OneIn = 4,
        },
        Interval(
            "NestedReml.Of, within",
            "variance within groups",
            s => Reml(s).Components[1],
            s => s.Population.Variance,
            OfFewGroups
        ) with
        {
            OneIn = 4,
        },
        Interval("NestedReml.Of, mean", "mean", s => Reml(s).Mean, s => s.Population.Mean, OfFewGroups) with
        {
            OneIn = 4,
        },
        Interval(
            "CrossedAnova.Of, rows",
            "variance between rows",
            s => CrossedAnova.Of(s.Specimens).Components[0].Variance,
            _ => 1,
            OfNormal
        ),
        Interval(
            "CrossedAnova.Of, left",
            "variance that is left",
            s => CrossedAnova.Of(s.Specimens).Components[2].Variance,
            s => s.Population.Variance,
            OfWithin
        ),
        Test(
            "NestedAnova.Of",
            "no variance between groups",
            s => NestedAnova.Of(NestedData.Of(s.Groups)).Tests[0]!.PValue,
            OfWithin
        ),
        Test(
            "CrossedAnova.Of, rows",
            "no variance between rows",
            s => CrossedAnova.Of(s.Groups).Tests[0]!.PValue,
            OfWithin
        ),
    ];

    private static ComponentAnalysis Nested(Scene scene) => NestedAnova.Of(NestedData.Of(scene.Specimens));

    private static RemlResult Reml(Scene scene) => NestedReml.Of(NestedData.Of(scene.Specimens));
}
