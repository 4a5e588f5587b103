#:project ../../src/McuBench.Core/McuBench.Core.csproj
#:property PublishAot=false

// "No difference" is not equality: it takes a margin that you state, and data that show it.
// Run it with: dotnet run examples/scripts/is-it-really-equal.cs
// The data are invented.

using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Reporting;
using McuBench.Core.Trials;
using UnitsNet;

var ticks = new TrialTimer("ticks", QuantityText.ParseDuration("1 us"), TimerReading.TickDifferenceRandomStart)
{
    Place = TimerPlace.Outside,
};
var checksum = new Workload("frame checksum", 2000) { ItemName = "frame" };
var marl = new Board("Marl");
var old = new Setup("Marl, compiler 4.0", marl, QuantityText.ParseFrequency("200 MHz"))
{
    Toolchain = new Toolchain("house compiler") { Version = "4.0" },
};
var next = old with { Name = "Marl, compiler 4.1", Toolchain = old.Toolchain with { Version = "4.1" } };
string[] oldTimes = ["301.9 ms", "303.2 ms", "302.4 ms", "301.6 ms", "302.8 ms"];
string[] nextTimes = ["302.3 ms", "302.9 ms", "301.8 ms", "302.6 ms", "303.4 ms"];

Say("Three trials of each, no margin", 3, margin: null);
Say("Three trials of each, within 0.4 %", 3, Ratio.FromPercent(0.4));
Say("Five trials of each, within 0.4 %", 5, Ratio.FromPercent(0.4));

void Say(string what, int trials, Ratio? margin)
{
    var options = new ConclusionOptions { Margin = margin };
    var comparison = SetupComparison.Of(
        SetupSummary.Of(TrialSeries.Of(old, checksum, ticks, oldTimes[..trials])),
        SetupSummary.Of(TrialSeries.Of(next, checksum, ticks, nextTimes[..trials])),
        options
    );
    Console.WriteLine($"{what}: {ComparisonStatement.OfQuantity(comparison, comparison.RunTime)}");
}

// prints:
// Three trials of each, no margin: Marl, compiler 4.0 and Marl, compiler 4.1 are not resolved in run time for the frame checksum: the first's is 1.0006 times the second's (95 % interval 0.9960 to 1.0052; 3 trials each, this specimen of each, whole run), so neither a difference nor equality is shown. Data like these show a difference of 0.62 % or more in four of five studies.
// Three trials of each, within 0.4 %: Marl, compiler 4.0 and Marl, compiler 4.1 are not resolved in run time for the frame checksum: the first's is 1.0006 times the second's (95 % interval 0.9960 to 1.0052; 3 trials each, this specimen of each, whole run), so neither a difference nor equality within 0.4 % is shown. Data like these show a difference of 0.62 % or more in four of five studies.
// Five trials of each, within 0.4 %: Marl, compiler 4.0 and Marl, compiler 4.1 are equal in run time within the stated margin of 0.4 % for the frame checksum (ratio 0.9993, 95 % interval 0.9963 to 1.0023; 5 trials each, this specimen of each, whole run).
