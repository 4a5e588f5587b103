namespace CompareBoards.Charts;

/// <summary>One setup's line in a chart of trials in their order.</summary>
/// <param name="Name">What the line is called.</param>
/// <param name="Look">Which colour and marker it has, counted from 0: the same for all of one board and core, in all charts.</param>
/// <param name="RunTime">The setup's run time, in seconds.</param>
/// <param name="Trials">Every trial: its place in the order of the whole study, and its time in seconds.</param>
/// <param name="SlopePerTrial">The drift that was found, in seconds from each of its trials to the next; null where none was.</param>
public sealed record OrderRow(
    string Name,
    int Look,
    double RunTime,
    IReadOnlyList<(int Order, double Seconds)> Trials,
    double? SlopePerTrial
);
