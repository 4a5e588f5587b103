using McuBench.Core.Boards;
using McuBench.Core.Quantities;

namespace McuBench.Core.Conclusions;

/// <summary>Gathers summaries whose setups differ in the clock only.</summary>
internal static class ClockGroup
{
    /// <summary>The groups with at least two different clocks, each with the lowest clock first, in order of first
    /// appearance. O(n log n).</summary>
    public static IEnumerable<IReadOnlyList<SetupSummary>> Of(IEnumerable<SetupSummary> summaries) =>
        summaries
            .GroupBy(KeyOf)
            .Select(group => group.OrderBy(s => Si.Hertz(s.Setup.Clock.Nominal)).ToList())
            .Where(group => Si.Hertz(group[0].Setup.Clock.Nominal) < Si.Hertz(group[^1].Setup.Clock.Nominal));

    /// <summary>Whether setups, workload and timer are the same but for name and clock.</summary>
    public static bool IsOne(IReadOnlyList<SetupSummary> summaries) =>
        summaries.Count > 0 && summaries.All(s => KeyOf(s).Equals(KeyOf(summaries[0])));

    /// <summary>What a group is called: the board, and its core where it offers several. Groups that differ in
    /// toolchain or attachments alone share it; what tells them apart is the names of their setups.</summary>
    public static string NameOf(IReadOnlyList<SetupSummary> group)
    {
        var setup = group[0].Setup;
        return setup.Board.Cores.Count > 1 ? $"{setup.Board.Name}, core {setup.Core.Name}" : setup.Board.Name;
    }

    private static (string, string, BoardSupply?, Toolchain?, IReadOnlyList<Attachment>, string, string) KeyOf(
        SetupSummary summary
    ) =>
        (
            summary.Setup.Board.Name,
            summary.Setup.Core.Name,
            summary.Setup.Supply,
            summary.Setup.Toolchain,
            summary.Setup.Attachments,
            summary.Workload.Name,
            summary.Series.Timer.Name
        );
}
