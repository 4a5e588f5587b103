#:project ../../src/McuBench.Core/McuBench.Core.csproj
#:property PublishAot=false

// What one task costs, from run times and a meter's reading with its stated accuracy.
// Run it with: dotnet run examples/scripts/charge-per-task.cs
// The data are invented.

using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

var timer = new TrialTimer("display", QuantityText.ParseDuration("0.1 s"), TimerReading.Rounded);
var filter = new Workload("median filter", 500) { ItemName = "block" };
var tuff = new Setup("Tuff", new Board("Tuff"), QuantityText.ParseFrequency("160 MHz"))
{
    Supply = new BoardSupply(ElectricPotential.FromVolts(5)) { Tolerance = Ratio.FromPercent(2) },
};
var range = new MeterRange(QuantityText.ParseCurrent("500 mA"), QuantityText.ParseCurrent("0.1 mA"))
{
    OfReading = Ratio.FromPercent(0.5),
    Digits = 3,
};
var running = new SupplyReading(
    tuff,
    new Meter("bench meter", range),
    SupplyPhase.Running,
    QuantityText.ParseCurrent("61.4 mA"),
    filter
);

var summary = SetupSummary.Of(TrialSeries.Of(tuff, filter, timer, "12.4 s", "12.4 s", "12.5 s", "12.4 s"), [running]);
Console.WriteLine($"run time         {summary.RunTime}");
Console.WriteLine($"current          {summary.Supply!.Current}");
Console.WriteLine($"charge per task  {summary.Supply.ChargePerTask}");
Console.WriteLine($"energy per task  {summary.Supply.EnergyPerTask}");
foreach (var line in summary.Supply.ChargePerTask.Budget)
{
    Console.WriteLine($"{line.Share * 100, 6:F1} % of the charge's variance: {line.Component}");
}

// prints:
// run time         12.425 s (95 % interval 12.358 s to 12.492 s), n = 4
// current          61.40 mA (95 % interval 60.92 mA to 61.88 mA), n = 1
// charge per task  762.9 mC (95 % interval 756.4 mC to 769.4 mC), n = 4
// energy per task  3.815 J (95 % interval 3.731 J to 3.898 J), n = 4
//   43.6 % of the charge's variance: gain of meter "bench meter" in its 500 mA range
//   41.6 % of the charge's variance: offset of meter "bench meter" in its 500 mA range, running, Tuff
//   13.6 % of the charge's variance: scatter of 4 trials, Tuff
//    1.2 % of the charge's variance: last digit of 100 uA, running, Tuff
