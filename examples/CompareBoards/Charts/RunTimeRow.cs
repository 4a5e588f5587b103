namespace CompareBoards.Charts;

/// <summary>One setup's line in a chart of run times.</summary>
/// <param name="Name">What the line is called.</param>
/// <param name="Look">Which colour and marker it has, counted from 0: the same for all of one board and core, in all charts.</param>
/// <param name="RunTime">The setup's run time and its interval, in seconds.</param>
/// <param name="Trials">Every trial in the order run, in seconds.</param>
public sealed record RunTimeRow(string Name, int Look, ChartPoint RunTime, IReadOnlyList<double> Trials);
