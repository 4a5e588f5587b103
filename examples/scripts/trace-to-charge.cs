#:project ../../src/McuBench.Core/McuBench.Core.csproj
#:property PublishAot=false

// From a meter's trace to the charge of one task: the whole, the phases, gross and net.
// Run it with: dotnet run examples/scripts/trace-to-charge.cs
// The data are invented: a gauging board that wakes for 50 ms, four times a second.

using System.Globalization;
using System.Text;
using McuBench.Core.Quantities;
using McuBench.Core.Supply.Traces;
using UnitsNet;

// A file as a meter writes it; a FileStream would do as well.
var text = new StringBuilder("time [ms],current [mA],voltage [V]\n");
for (var i = 0; i < 20_000; i++)
{
    var isAwake = i % 2500 is >= 1000 and < 1500;
    var ripple = i * 7919 % 101 / 1000.0 + (isAwake ? i / 2500 * 0.02 : 0);
    var row = FormattableString.Invariant(
        $"{i * 0.1:0.0},{(isAwake ? 14.2 : 0.8) + ripple:0.0000},{(isAwake ? 3.27 : 3.3)}"
    );
    text.Append(row).Append('\n');
}

var accuracy = new TraceAccuracy
{
    Gain = Ratio.FromPercent(0.5),
    Offset = QuantityText.ParseCurrent("10 uA"),
    TimeBase = Ratio.FromPartsPerMillion(50),
};
var whole = new TraceIntegrator(accuracy);
var phases = PhaseFinder.ByThreshold(
    QuantityText.ParseCurrent("4 mA"),
    QuantityText.ParseCurrent("8 mA"),
    leastSamples: 10
);
TraceText.Read(Stream(), "lake.csv", whole);
TraceText.Read(Stream(), "lake.csv", phases);

var totals = whole.Totals()!;
Console.WriteLine($"samples       {totals.Samples} in {QuantityText.Format(totals.Time)}, {totals.Gaps} gaps");
Console.WriteLine($"charge        {totals.Charge}");
Console.WriteLine($"energy        {totals.Energy}");
Console.WriteLine($"mean current  {totals.MeanCurrent}");

var tasks = TaskCharges.Of(phases.Phases());
Console.WriteLine(
    string.Create(
        CultureInfo.InvariantCulture,
        $"tasks         {tasks.Count}, each {tasks[0].Phase.Length.Milliseconds:0.0} ms"
    )
);
Console.WriteLine($"a task gross  {TaskCharges.MeanGross(tasks, accuracy)}");
Console.WriteLine($"a task net    {TaskCharges.MeanNet(tasks, accuracy)}");
foreach (var line in TaskCharges.MeanNet(tasks, accuracy).Budget)
{
    Console.WriteLine(
        string.Create(CultureInfo.InvariantCulture, $"{line.Share * 100, 6:F1} % of its variance: {line.Component}")
    );
}

MemoryStream Stream() => new(Encoding.UTF8.GetBytes(text.ToString()));

// prints:
// samples       20000 in 1.9999 s, 0 gaps
// charge        7.088 mC (95 % interval 7.042 mC to 7.134 mC), n = 20000
// energy        23.22 mJ (95 % interval 23.07 mJ to 23.37 mJ), n = 20000
// mean current  3.544 mA (95 % interval 3.521 mA to 3.567 mA), n = 20000
// tasks         8, each 50.0 ms
// a task gross  716.0 µC (95 % interval 711.6 µC to 720.4 µC), n = 8
// a task net    673.5 µC (95 % interval 669.3 µC to 677.7 µC), n = 8
//   83.4 % of its variance: gain of the meter
//   16.6 % of its variance: scatter of 8 tasks
//    0.0 % of its variance: time base of the meter
