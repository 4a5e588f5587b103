#:project ../../src/McuBench.Core/McuBench.Core.csproj
#:property PublishAot=false

// Compares two boards on one workload from run times that were written down.
// Run it with: dotnet run examples/scripts/compare-two-boards.cs
// The data are invented.

using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;
using McuBench.Core.Trials;
using UnitsNet;

var step = Duration.FromMicroseconds(1);
var timer = new TrialTimer("ticks", step, TimerReading.TickDifferenceRandomStart)
{
    Tolerance = Ratio.FromPartsPerMillion(50),
};
var echo = new Workload("echo spectrum", 1000) { ItemName = "spectrum" };
var marl = new Setup("Marl", new Board("Marl"), Frequency.FromMegahertz(200));
var tuff = new Setup("Tuff", new Board("Tuff"), Frequency.FromMegahertz(160));

var first = TrialSeries.Of(marl, echo, timer, "412.1 ms", "413.0 ms", "411.8 ms", "412.6 ms", "412.3 ms");
var second = TrialSeries.Of(tuff, echo, timer, "0.5031 s", "0.5044 s", "0.5029 s", "0.5036 s", "0.5040 s");

var comparison = SetupComparison.Of(SetupSummary.Of(first), SetupSummary.Of(second));
Console.WriteLine(ComparisonStatement.Of(comparison));
Console.WriteLine(ComparisonStatement.OfQuantity(comparison, comparison.CyclesPerItem));

// prints:
// Marl takes 18.12 % less time than Tuff for the echo spectrum (95 % interval 17.98 % to 18.26 %; 5 trials each, this specimen of each, whole run); that is 1.2213 times as fast. The setups differ in board (Marl; Tuff) and clock (200 MHz; 160 MHz).
// Tuff needs 2.30 % fewer clock cycles per spectrum than Marl for the echo spectrum (95 % interval 2.13 % to 2.47 %; 5 trials each, this specimen of each, whole run).
