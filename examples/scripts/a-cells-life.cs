#:project ../../src/McuBench.Core/McuBench.Core.csproj
#:property PublishAot=false

// How long a cell feeds a board that wakes now and then, through either regulator, and how many tasks that is.
// Run it with: dotnet run examples/scripts/a-cells-life.cs
// The data are invented: a gauging board at a mountain lake that wakes for 50 ms, once in 10 s.

using System.Globalization;
using McuBench.Core.Quantities;
using McuBench.Core.Supply.Cells;
using UnitsNet;

var cell = new Cell(
    ElectricCharge.FromMilliampereHours(2400),
    QuantityText.ParseVoltage("3.6 V"),
    QuantityText.ParseVoltage("3.2 V"),
    Ratio.FromPercent(85)
)
{
    CapacityTolerance = Ratio.FromPercent(5),
    UsableShareTolerance = Ratio.FromPercent(4),
    TemperatureDerating = Ratio.FromPercent(80),
    TemperatureDeratingTolerance = Ratio.FromPercent(10),
    SelfDischargePerYear = Ratio.FromPercent(2),
    SelfDischargeTolerance = Ratio.FromPercent(50),
    GreatestCurrent = QuantityText.ParseCurrent("50 mA"),
};
var cycle = new DutyCycle(
    QuantityText.ParseDuration("10 s"),
    QuantityText.ParseDuration("50 ms"),
    ElectricCharge.FromMicrocoulombs(716),
    QuantityText.ParseCurrent("12 uA")
)
{
    TaskChargeUncertainty = ElectricCharge.FromMicrocoulombs(2.2),
    IdleCurrentTolerance = Ratio.FromPercent(5),
};
var linear = new LinearRegulator(
    QuantityText.ParseVoltage("3 V"),
    QuantityText.ParseCurrent("1.5 uA"),
    QuantityText.ParseVoltage("0.15 V")
)
{
    QuiescentTolerance = Ratio.FromPercent(30),
};
var switching = new SwitchingRegulator(
    QuantityText.ParseVoltage("3 V"),
    QuantityText.ParseCurrent("0.4 uA"),
    QuantityText.ParseVoltage("3.1 V"),
    new EfficiencyPoint(QuantityText.ParseCurrent("10 uA"), Ratio.FromPercent(78)),
    new EfficiencyPoint(QuantityText.ParseCurrent("1 mA"), Ratio.FromPercent(90)),
    new EfficiencyPoint(QuantityText.ParseCurrent("20 mA"), Ratio.FromPercent(94))
)
{
    QuiescentTolerance = Ratio.FromPercent(30),
    EfficiencyTolerance = Ratio.FromPercent(2),
};

Show("linear", CellLife.Of(cell, cycle, linear));
Show("switching", CellLife.Of(cell, cycle, switching));

static void Show(string name, CellLife life)
{
    const double hoursInADay = 24;
    var time = life.RunTime;
    Line($"{name}");
    Line($"  mean current   {life.MeanCurrent}");
    Line(
        $"  run time       {time.Value.Hours / hoursInADay:0} d ({time.Lower!.Value.Hours / hoursInADay:0} d to {time.Upper!.Value.Hours / hoursInADay:0} d)"
    );
    Line(
        $"  tasks          {life.Tasks.Value / 1e6:0.00} million ({life.Tasks.Lower / 1e6:0.00} to {life.Tasks.Upper / 1e6:0.00})"
    );
    Line($"  lost by itself {life.LostToSelfDischarge.Percent:0.0} %");
    foreach (var line in time.Budget.Take(3))
    {
        Line($"  {line.Share * 100, 6:F1} % of its variance: {line.Component}");
    }

    foreach (var caution in life.Cautions)
    {
        Line($"  caution: {caution}");
    }
}

static void Line(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));

// prints:
// linear
//   mean current   85.04 µA (95 % interval 84.09 µA to 85.99 µA), n = 1
//   run time       767 d (661 d to 873 d)
//   tasks          6.63 million (5.71 to 7.54)
//   lost by itself 4.1 %
//     69.9 % of its variance: temperature derating
//     15.4 % of its variance: capacity
//     11.2 % of its variance: usable share
// switching
//   mean current   76.9 µA (95 % interval 74.9 µA to 78.8 µA), n = 1
//   run time       845 d (726 d to 963 d)
//   tasks          7.30 million (6.27 to 8.32)
//   lost by itself 4.5 %
//     68.1 % of its variance: temperature derating
//     14.8 % of its variance: capacity
//     10.9 % of its variance: usable share
