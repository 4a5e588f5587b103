#:project ../../src/McuBench.Core/McuBench.Core.csproj
#:property PublishAot=false

// Four setups on two workloads: who is first, who can't be told apart, and what holds over both workloads.
// Run it with: dotnet run examples/scripts/all-against-all.cs
// The data are invented.

using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Reporting;
using McuBench.Core.Studies;
using McuBench.Core.Trials;

var ticks = new TrialTimer("ticks", QuantityText.ParseDuration("1 us"), TimerReading.TickDifferenceRandomStart)
{
    Place = TimerPlace.Outside,
};
var echo = new Workload("echo spectrum", 1000) { ItemName = "spectrum" };
var filter = new Workload("median filter", 500) { ItemName = "block" };
var schist = new Board("Schist", [new ExecutionCore("A"), new ExecutionCore("B")]);
var clock = new Clock(QuantityText.ParseFrequency("160 MHz"));
Setup[] setups =
[
    new("Marl", new Board("Marl"), QuantityText.ParseFrequency("200 MHz")),
    new("Schist A", schist, schist.Cores[0], clock),
    new("Schist B", schist, schist.Cores[1], clock),
    new("Tuff", new Board("Tuff"), QuantityText.ParseFrequency("160 MHz")),
];

// Milliseconds; the rows are rounds, in each of which every setup ran once.
double[,] echoTimes =
{
    { 412.1, 409.9, 455.3, 503.1 },
    { 413.0, 411.2, 455.9, 504.4 },
    { 411.8, 412.6, 454.8, 502.9 },
    { 412.6, 410.7, 456.1, 503.6 },
    { 412.3, 411.9, 455.2, 504.0 },
};
double[,] filterTimes =
{
    { 240.2, 198.3, 239.9, 260.4 },
    { 240.9, 198.8, 240.6, 261.3 },
    { 239.8, 198.1, 240.1, 260.2 },
    { 240.4, 198.6, 240.8, 260.9 },
    { 240.6, 198.4, 239.7, 260.7 },
};

var study = Study.FromTrials("all against all", [.. Trials(echo, echoTimes, 0), .. Trials(filter, filterTimes, 20)]);
var conclusions = StudyConclusions.Of(study);
var byRunTime = conclusions.Rankings.Where(r => r.Quantity == ComparedQuantity.RunTime).ToArray();
foreach (var ranking in byRunTime)
{
    Console.WriteLine(RankingStatement.Of(ranking));
}

Console.WriteLine(RankingStatement.Basis(byRunTime[0]));
foreach (var suite in conclusions.Suites.Where(s => s.Mean.Quantity == ComparedQuantity.RunTime).Take(2))
{
    Console.WriteLine(SuiteStatement.Of(suite));
}

IEnumerable<Trial> Trials(Workload workload, double[,] milliseconds, int before)
{
    for (var round = 0; round < milliseconds.GetLength(0); round++)
    {
        for (var place = 0; place < setups.Length; place++)
        {
            // Each round begins with another setup.
            var s = (round + place) % setups.Length;
            yield return new Trial(
                setups[s],
                workload,
                ticks,
                UnitsNet.Duration.FromMilliseconds(milliseconds[round, s])
            )
            {
                Order = before + round * setups.Length + place + 1,
            };
        }
    }
}

// prints:
// By run time on the echo spectrum Schist A and Marl may each be first. Chance of being first: Schist A 95 % and Marl 5 %. Not told apart from one another: Schist A and Marl.
// By run time on the median filter Schist A comes first, told apart from all 3 others. Not told apart from one another: Schist B and Marl.
// Told apart means: with 95 % confidence none of the 36 comparisons of this study is called different that isn't.
// Over 2 workloads the ratio of run time, Marl to Schist A, is 1.1021 (95 % interval 1.1002 to 1.1040), as a geometric mean: Schist A takes less on average over these workloads. Single workloads go from 1.0027 (echo spectrum) to 1.2113 (median filter). Without median filter the verdict on the mean would be another.
// Over 2 workloads the ratio of run time, Marl to Schist B, is 0.9518 (95 % interval 0.9504 to 0.9532), as a geometric mean: Marl takes less on average over these workloads. Single workloads go from 0.9054 (echo spectrum) to 1.0007 (median filter). Without echo spectrum the verdict on the mean would be another.
