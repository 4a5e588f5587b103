using McuBench.Core.Calculators;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Tests.Calculators;

/// <summary>Expected values worked by hand; conversions are definitions of the SI (si-brochure-2019): 1 A·h = 3600 C,
/// 1 W·h = 3600 J.</summary>
public class TaskCostTests
{
    private const double Relative = 1e-14;

    [Fact]
    public void Charge_OneMilliampereForOneHour_IsOneMilliampereHour()
    {
        var charge = TaskCost.Charge(ElectricCurrent.FromMilliamperes(1), Duration.FromHours(1));

        Near(3.6, Si.Coulombs(charge));
        Near(1000, TaskCost.TasksPerAmpereHour(charge));
    }

    [Fact]
    public void Charge_LosesNoDigits()
    {
        // The quantity library's own product of these is off by some 1e-12.
        Near(
            0.031 * 2.412,
            Si.Coulombs(TaskCost.Charge(ElectricCurrent.FromMilliamperes(31), Duration.FromSeconds(2.412)))
        );
        Near(
            12e-6 * 412.1e-3,
            Si.Coulombs(TaskCost.Charge(ElectricCurrent.FromMicroamperes(12), Duration.FromMilliseconds(412.1)))
        );
    }

    [Fact]
    public void Energy_FiveVoltsTwentyMilliamperesForThreeSeconds_Is300Millijoules()
    {
        var volts = ElectricPotential.FromVolts(5);
        var current = ElectricCurrent.FromMilliamperes(20);
        var time = Duration.FromSeconds(3);

        Near(0.3, Si.Joules(TaskCost.Energy(volts, current, time)));
        Near(0.3, Si.Joules(TaskCost.Energy(volts, TaskCost.Charge(current, time))));
        Near(12_000, TaskCost.TasksPerWattHour(TaskCost.Energy(volts, current, time)));
        Near(0.9, TaskCost.EnergyDelayProduct(TaskCost.Energy(volts, current, time), time));
    }

    [Fact]
    public void Energy_OneWattForOneHour_IsOneWattHour() =>
        Near(
            3600,
            Si.Joules(
                TaskCost.Energy(ElectricPotential.FromVolts(2), ElectricCurrent.FromAmperes(0.5), Duration.FromHours(1))
            )
        );

    [Fact]
    public void MeanPower_FromVoltageAndCurrent_AndFromEnergyAndTime_Agree()
    {
        var power = TaskCost.MeanPower(ElectricPotential.FromVolts(3.3), ElectricCurrent.FromMilliamperes(20));

        Near(0.066, Si.Watts(power));
        Near(0.066, Si.Watts(TaskCost.MeanPower(Energy.FromJoules(0.198), Duration.FromSeconds(3))));
    }

    [Fact]
    public void Charge_NegativeNetCurrent_IsNegative() =>
        Near(-0.002, Si.Coulombs(TaskCost.Charge(ElectricCurrent.FromMilliamperes(-1), Duration.FromSeconds(2))));

    [Fact]
    public void TasksPerAmpereHour_NoCharge_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => TaskCost.TasksPerAmpereHour(ElectricCharge.Zero),
            "charge",
            "Charge must be above zero; was 0 C."
        );

    [Fact]
    public void TasksPerWattHour_NegativeEnergy_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => TaskCost.TasksPerWattHour(Energy.FromJoules(-2)),
            "energy",
            "Energy must be above zero; was -2 J."
        );

    [Fact]
    public void Energy_NoVoltage_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => TaskCost.Energy(ElectricPotential.Zero, ElectricCharge.FromCoulombs(1)),
            "voltage",
            "Voltage must be above zero; was 0 V."
        );

    [Fact]
    public void Charge_NoTime_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => TaskCost.Charge(ElectricCurrent.FromAmperes(1), Duration.Zero),
            "runTime",
            "Run time must be above zero; was 0 s."
        );

    private static void Near(double expected, double actual) =>
        Assert.Equal(expected, actual, Math.Abs(expected) * Relative);
}
