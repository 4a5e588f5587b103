namespace CompareBoards.Charts;

/// <summary>What one board and core did at several clocks, and the straight line through it.</summary>
/// <param name="Name">What the line is called.</param>
/// <param name="Look">Which colour and marker it has, counted from 0: the same for one board and core in all charts.</param>
/// <param name="Points">The clocks, in hertz, and what was found at each.</param>
/// <param name="AtZero">Where the line starts at zero: the part that does not follow the clock.</param>
/// <param name="Slope">What each unit of the horizontal axis, in SI, adds.</param>
public sealed record DrawnLine(
    string Name,
    int Look,
    IReadOnlyList<(double Hertz, ChartPoint Found)> Points,
    ChartPoint AtZero,
    double Slope
);
