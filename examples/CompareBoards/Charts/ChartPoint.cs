namespace CompareBoards.Charts;

/// <summary>A value to be drawn, with the ends of its interval where it has one.</summary>
/// <param name="Value">The value, in the unit that the chart asks for.</param>
/// <param name="Lower">The lower end, or null where no interval can be had.</param>
/// <param name="Upper">The upper end, or null where no interval can be had.</param>
public sealed record ChartPoint(double Value, double? Lower, double? Upper);
