namespace CompareBoards.Charts;

/// <summary>Supply current against clock frequency: a straight line whose start at zero is what the board draws whatever
/// its clock.</summary>
public static class CurrentChart
{
    /// <summary>Draws the chart.</summary>
    /// <param name="workload">The workload's name.</param>
    /// <param name="lines">Currents in amperes; slopes in amperes for each hertz. At least one.</param>
    /// <param name="interval">What the intervals are, in words ("95 % interval").</param>
    public static Chart Draw(string workload, IReadOnlyList<DrawnLine> lines, string interval)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return LineChart.Draw(
            $"current-{FileNames.Of(workload)}",
            $"Supply current while running {workload} against the clock frequency. Each line is drawn out (dashed) to no clock: what is left there does not follow the clock, shown below on its own scale with its {interval}.",
            $"Part of the supply current that does not follow the clock, running {workload}, for each of {lines.Count} boards and cores: {ChartStyle.Listed(lines.Select(line => (line.Name, line.AtZero.Value)), "A")}.",
            ("clock frequency", "Hz", hertz => hertz),
            ("supply current", "A"),
            "part that does not follow the clock",
            lines,
            interval
        );
    }
}
