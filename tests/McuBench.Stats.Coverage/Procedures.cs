namespace McuBench.Stats.Coverage;

/// <summary>Every procedure under trial. To add one, add a line to the list of its room.</summary>
public static class Procedures
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<Procedure> All { get; } =
    [
        .. IntervalProcedures.All,
        .. BootstrapProcedures.All,
        .. LineProcedures.All,
        .. TestProcedures.All,
        .. RankProcedures.All,
        .. SeveralGroupProcedures.All,
        .. SequenceProcedures.All,
        .. ComponentProcedures.All,
        .. ShapeProcedures.All,
    ];
}
