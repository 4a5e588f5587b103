namespace CompareBoards.Charts;

/// <summary>One setup in a chart of charge against run time.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Look">Which colour and marker it has, counted from 0: the same for all of one board and core, in all charts.</param>
/// <param name="RunTime">Its run time, in seconds.</param>
/// <param name="Charge">Its charge per task, in coulombs.</param>
public sealed record TradePoint(string Name, int Look, ChartPoint RunTime, ChartPoint Charge);
