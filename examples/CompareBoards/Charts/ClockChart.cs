namespace CompareBoards.Charts;

/// <summary>
/// Run time of one workload against the length of a clock cycle, 1/f: a straight line whose start at zero is the part
/// of the run time that no clock shortens.
/// </summary>
public static class ClockChart
{
    /// <summary>Draws the chart.</summary>
    /// <param name="workload">The workload's name.</param>
    /// <param name="lines">Run times in seconds; slopes in seconds for each second of 1/f, that is, in cycles. At least one.</param>
    /// <param name="interval">What the intervals are, in words ("95 % interval").</param>
    public static Chart Draw(string workload, IReadOnlyList<DrawnLine> lines, string interval)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return LineChart.Draw(
            $"clock-{FileNames.Of(workload)}",
            $"Run time of {workload} against the length of a clock cycle. Each line is drawn out (dashed) to where the clock would cost no time: what is left there is the fixed part of the run, shown below on its own scale with its {interval}.",
            $"Fixed part of the run time of {workload} for each of {lines.Count} boards and cores: {ChartStyle.Listed(lines.Select(line => (line.Name, line.AtZero.Value)), "s")}.",
            ("length of a clock cycle, 1/f", "s", hertz => 1 / hertz),
            ("run time", "s"),
            "fixed part of the run time",
            lines,
            interval
        );
    }
}
