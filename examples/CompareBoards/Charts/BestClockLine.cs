namespace CompareBoards.Charts;

/// <summary>What a task costs in charge over a board's range of clocks, and where it costs least.</summary>
/// <param name="Name">What the line is called.</param>
/// <param name="Look">Which colour and marker it has, counted from 0: the same for one board and core in all charts.</param>
/// <param name="Points">The clocks that the board offers, in hertz, and the charge at each, in coulombs.</param>
/// <param name="Curve">The charge over the range of clocks, in hertz and coulombs, lowest clock first.</param>
/// <param name="Best">The best clock in hertz, with the ends of its interval as far as they lie in the range.</param>
public sealed record BestClockLine(
    string Name,
    int Look,
    IReadOnlyList<(double Hertz, ChartPoint Found)> Points,
    IReadOnlyList<(double Hertz, double Coulombs)> Curve,
    ChartPoint Best
);
