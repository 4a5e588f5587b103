using McuBench.Stats.Hypotheses;
using static McuBench.Stats.Coverage.Procedure;

namespace McuBench.Stats.Coverage;

/// <summary>Tests whose null hypothesis is a normal population.</summary>
internal static class ShapeProcedures
{
    private const string Normal = "a normal population";

    private static readonly Promise OfExact = new(Shapes.Normal, Exact: Shapes.Normal);
    private static readonly Promise OfFitted = new(Shapes.Normal);
    private static readonly Promise OfMany = new(Shapes.Normal, From: 30, Elsewhere: "fewer than 15 values");

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Procedure> All { get; } =
    [
        OnNormal(Test("Normality.ShapiroWilk", Normal, s => Normality.ShapiroWilk(s.First).PValue, OfFitted)),
        OnNormal(Test("Normality.AndersonDarling", Normal, s => Normality.AndersonDarling(s.First).PValue, OfFitted)),
        OnNormal(Test("Outliers.Grubbs", Normal, s => Outliers.Grubbs(s.First).IsOutlier ? 0 : 1, OfExact)),
        OnNormal(
            Test(
                "Outliers.GeneralizedEsd, up to 3",
                Normal,
                s => Outliers.GeneralizedEsd(s.First, 3).OutlierCount > 0 ? 0 : 1,
                OfMany
            )
        ),
    ];

    private static Procedure OnNormal(Procedure procedure) => procedure with { Tried = Shapes.Normal };
}
