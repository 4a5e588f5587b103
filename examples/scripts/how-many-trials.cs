#:project ../../src/McuBench.Core/McuBench.Core.csproj
#:property PublishAot=false

// How many trials a question takes, when no number of them suffices, and in which order to run them.
// Run it with: dotnet run examples/scripts/how-many-trials.cs
// The data are invented.

using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Quantities;
using McuBench.Core.Reporting;
using McuBench.Core.Trials;
using UnitsNet;

var filter = new Workload("median filter", 1500) { ItemName = "iteration" };
var marl = new Setup("Marl", new Board("Marl"), QuantityText.ParseFrequency("200 MHz"));
var tuff = new Setup("Tuff", new Board("Tuff"), QuantityText.ParseFrequency("160 MHz"));

// A stop clock that shows tenths: ten equal readings of it are not exact.
var stopClock = new TrialTimer("stop clock", QuantityText.ParseDuration("0.1 s"), TimerReading.Rounded);
var shown = SetupSummary.Of(TrialSeries.Of(marl, filter, stopClock, "2.4 s", "2.4 s", "2.4 s", "2.4 s", "2.4 s"));
Console.WriteLine(BudgetStatement.Of(shown.RunTime));
Console.WriteLine(PlanStatement.Of(TrialPlan.ForRatioWithin(PlanBasis.FromPilot(shown), Ratio.FromPercent(1))));

// A tick counter, from a pilot of five.
var ticks = new TrialTimer("ticks", QuantityText.ParseDuration("1 us"), TimerReading.TickDifferenceRandomStart);
var pilot = SetupSummary.Of(TrialSeries.Of(marl, filter, ticks, "2.403 s", "2.391 s", "2.412 s", "2.398 s", "2.407 s"));
var plan = TrialPlan.ForDifference(PlanBasis.FromPilot(pilot), Ratio.FromPercent(0.5));
Console.WriteLine(PlanStatement.Of(plan));

var order = BenchOrder.RandomisedBlocks([marl, tuff], filter, ticks, trialsPerSession: 3, sessions: 1, seed: 3);
BenchChecklist.WriteText(Console.Out, order);
var times = new BenchTimes { Pause = QuantityText.ParseDuration("5 s"), Change = QuantityText.ParseDuration("30 s") };
Console.WriteLine($"takes about {order.ExpectedTime(_ => pilot.RunTime.Value, times).Seconds:0} s");

// prints:
// 100 % of the variance is timer step of 100 ms, Marl. A timer step of 10 ms in place of 100 ms, or runs ten times as long, would narrow this interval to 0.1 of its width; 4 times as many trials and readings would not narrow it.
// No number of trials brings the interval of the ratio of two setups to ± 1 % with this timer, whose step of 100 ms is 4.17 % of a run: lengthen the run to at least 12 s, 7500 iterations, or use a finer timer.
// 9 trials of each setup are expected to show a difference of 0.48 % in four studies of five, at 95 % confidence.
// session 1, median filter, ticks
// [ ] 1  block 1  Marl  ________
// [ ] 2  block 1  Tuff  ________
// [ ] 3  block 2  Marl  ________
// [ ] 4  block 2  Tuff  ________
// [ ] 5  block 3  Tuff  ________
// [ ] 6  block 3  Marl  ________
// Order drawn in randomised blocks, seed 3.
// takes about 164 s
