namespace CompareBoards.Charts;

/// <summary>One setup's line in a chart of charge per task.</summary>
/// <param name="Name">What the line is called.</param>
/// <param name="Look">Which colour and marker it has, counted from 0: the same for all of one board and core, in all charts.</param>
/// <param name="Gross">The charge that the whole board takes for one task, in coulombs.</param>
/// <param name="Net">The same without a baseline, in coulombs; null where no baseline was read.</param>
public sealed record ChargeRow(string Name, int Look, ChartPoint Gross, ChartPoint? Net);
