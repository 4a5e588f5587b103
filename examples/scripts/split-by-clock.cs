#:project ../../src/McuBench.Core/McuBench.Core.csproj
#:property PublishAot=false

// Splits a run into the part that follows the clock and the part that doesn't, from run times at three clocks.
// Run it with: dotnet run examples/scripts/split-by-clock.cs
// The data are invented.

using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Reporting;
using McuBench.Core.Trials;
using UnitsNet;

var timer = new TrialTimer("ticks", Duration.FromMicroseconds(1), TimerReading.TickDifferenceRandomStart);
var echo = new Workload("echo spectrum", 1000) { ItemName = "spectrum" };
var schist = new Board("Schist");

SetupSummary At(string clock, params string[] times) =>
    SetupSummary.Of(
        TrialSeries.Of(new Setup($"Schist {clock}", schist, QuantityText.ParseFrequency(clock)), echo, timer, times)
    );

var split = ClockSplit.Of([
    At("80 MHz", "1.1502 s", "1.1497 s", "1.1506 s"),
    At("120 MHz", "0.8163 s", "0.8171 s", "0.8168 s"),
    At("160 MHz", "0.6505 s", "0.6498 s", "0.6503 s"),
]);
Console.WriteLine(ClockStatement.Of(split));
Console.WriteLine($"at 100 MHz it would take {split.RunTimeAt(QuantityText.ParseFrequency("100 MHz"))}");

// prints:
// Schist spends 150.2 ms (95 % interval 148.8 ms to 151.6 ms) of each run of the echo spectrum on what does not follow the clock (fixed part, from Schist 80 MHz, Schist 120 MHz and Schist 160 MHz); the rest is 79990 (95 % interval 79840 to 80140) clock cycles per spectrum.
// at 100 MHz it would take 950.13 ms (95 % interval 949.70 ms to 950.57 ms), n = 9
