namespace CompareBoards.Charts;

/// <summary>One pair's line in a chart of ratios.</summary>
/// <param name="First">The one whose run time is divided.</param>
/// <param name="Second">The one that it is divided by.</param>
/// <param name="Look">Which colour and marker it has, counted from 0: the first setup's.</param>
/// <param name="Ratio">The ratio of run times with its interval.</param>
/// <param name="IsResolved">Whether a difference was shown.</param>
public sealed record RatioRow(string First, string Second, int Look, ChartPoint Ratio, bool IsResolved);
