namespace McuBench.Core.Reporting;

/// <summary>A column of a report's table.</summary>
/// <param name="Head">Its head.</param>
/// <param name="IsFigure">Whether it holds figures, which are set flush right.</param>
public sealed record ReportColumn(string Head, bool IsFigure);
