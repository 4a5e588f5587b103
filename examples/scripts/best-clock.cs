#:project ../../src/McuBench.Core/McuBench.Core.csproj
#:property PublishAot=false

// Finds the clock at which a task takes the least charge, from run times and from currents read while the board waits and
// while it computes, at three clocks; then the same for a task that is repeated every two seconds.
// Run it with: dotnet run examples/scripts/best-clock.cs
// The data are invented.

using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Reporting;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

var timer = new TrialTimer("ticks", Duration.FromMicroseconds(1), TimerReading.TickDifferenceRandomStart);
var meter = new Meter(
    "bench meter",
    new MeterRange(ElectricCurrent.FromMilliamperes(100), ElectricCurrent.FromMicroamperes(1))
);
var echo = new Workload("echo spectrum", 1000) { ItemName = "spectrum" };
var marl = new Board("Marl");

SetupSummary At(string clock, string[] times, string[] waiting, string[] computing)
{
    var setup = new Setup($"Marl {clock}", marl, QuantityText.ParseFrequency(clock));
    return SetupSummary.Of(
        TrialSeries.Of(setup, echo, timer, times),
        Read(SupplyPhase.Waiting, waiting).Concat(Read(SupplyPhase.Computing, computing))
    );

    IEnumerable<SupplyReading> Read(SupplyPhase phase, string[] currents) =>
        currents.Select(text => new SupplyReading(setup, meter, phase, QuantityText.ParseCurrent(text), echo));
}

var split = ClockSplit.Of([
    At(
        "100 MHz",
        ["0.4998 s", "0.5003 s", "0.5001 s"],
        ["10.01 mA", "9.98 mA", "10.02 mA"],
        ["17.99 mA", "18.03 mA", "17.97 mA"]
    ),
    At(
        "200 MHz",
        ["0.3001 s", "0.2999 s", "0.3002 s"],
        ["12.02 mA", "12.01 mA", "11.98 mA"],
        ["30.02 mA", "29.96 mA", "30.01 mA"]
    ),
    At(
        "400 MHz",
        ["0.2000 s", "0.1998 s", "0.2001 s"],
        ["15.97 mA", "16.01 mA", "16.03 mA"],
        ["54.05 mA", "53.98 mA", "53.96 mA"]
    ),
]);
Console.WriteLine(ClockStatement.Of(BestClock.Of(split)));

var repeated = new RepeatedTask(Duration.FromSeconds(2)) { Idle = ElectricCurrent.FromMilliamperes(4) };
var everyTwoSeconds = BestClock.Of(split, new BestClockOptions { Repeated = repeated });
Console.WriteLine(ClockStatement.Of(everyTwoSeconds));

// prints:
// Marl takes the least charge per task of the echo spectrum at 346 MHz (95 % interval 341 MHz to 351 MHz): 6.9870 mC (95 % interval 6.9796 mC to 6.9944 mC). Of the clocks offered, 400 MHz takes least; the others take more.
// Marl takes the least charge per period of 2 s with the echo spectrum at 200 MHz (95 % interval 194 MHz to 206 MHz): 14.0014 mC (95 % interval 13.9942 mC to 14.0086 mC). Of the clocks offered, 200 MHz takes least; the others take more.
