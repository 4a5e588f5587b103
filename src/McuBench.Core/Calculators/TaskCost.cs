using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Calculators;

/// <summary>What a task costs: charge, energy and power of one run of a workload, and how many runs a store of charge or
/// energy pays for. Plain arithmetic on exact figures; for measured ones with intervals see
/// <see cref="Conclusions.SupplySummary"/>.</summary>
/// <remarks>All methods are O(1), computed in SI doubles and wrapped last (the quantity library's own product of current
/// and time loses four digits); safe to use from many threads.</remarks>
public static class TaskCost
{
    /// <summary>One ampere-hour in coulombs, and one watt-hour in joules.</summary>
    private const double SecondsPerHour = 3600;

    /// <summary>The charge of one task: mean current times run time.</summary>
    /// <param name="current">The mean current over the run; may be negative where it is a net one.</param>
    /// <param name="runTime">The time of one run, above zero.</param>
    /// <returns>The charge, in coulombs.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not above zero, or the result is beyond a double.</exception>
    public static ElectricCharge Charge(ElectricCurrent current, Duration runTime) =>
        Si.Charge(Si.Amperes(current, nameof(current)) * Seconds(runTime), nameof(current));

    /// <summary>The energy of one task: voltage times charge.</summary>
    /// <param name="voltage">The voltage at the point where the current was read, above zero.</param>
    /// <param name="charge">The charge of one task; may be negative where it is a net one.</param>
    /// <returns>The energy, in joules.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is not above zero, or the result is beyond a double.</exception>
    public static Energy Energy(ElectricPotential voltage, ElectricCharge charge) =>
        Si.Energy(Volts(voltage) * Si.Coulombs(charge, nameof(charge)), nameof(charge));

    /// <summary>The energy of one task: voltage times mean current times run time.</summary>
    /// <param name="voltage">The voltage at the point where the current was read, above zero.</param>
    /// <param name="current">The mean current over the run; may be negative where it is a net one.</param>
    /// <param name="runTime">The time of one run, above zero.</param>
    /// <returns>The energy, in joules.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Voltage or time is not above zero, or the result is beyond a double.</exception>
    public static Energy Energy(ElectricPotential voltage, ElectricCurrent current, Duration runTime) =>
        Energy(voltage, Charge(current, runTime));

    /// <summary>Mean power at a steady voltage: voltage times mean current.</summary>
    /// <param name="voltage">The voltage at the point where the current was read, above zero.</param>
    /// <param name="current">The mean current; may be negative where it is a net one.</param>
    /// <returns>The power, in watts.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The voltage is not above zero, or the result can't be held.</exception>
    public static Power MeanPower(ElectricPotential voltage, ElectricCurrent current) =>
        Si.Power(Volts(voltage) * Si.Amperes(current, nameof(current)), nameof(current));

    /// <summary>Mean power of a task: energy divided by run time.</summary>
    /// <param name="energy">The energy of one task; may be negative where it is a net one.</param>
    /// <param name="runTime">The time of one run, above zero.</param>
    /// <returns>The power, in watts.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not above zero, or the result can't be held.</exception>
    public static Power MeanPower(Energy energy, Duration runTime) =>
        Si.Power(Si.Joules(energy, nameof(energy)) / Seconds(runTime), nameof(energy));

    /// <summary>Energy per task times run time, in joule-seconds: a figure that neither a slow frugal setup nor a fast
    /// wasteful one does well in.</summary>
    /// <param name="energy">The energy of one task; may be negative where it is a net one.</param>
    /// <param name="runTime">The time of one run, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The time is not above zero, or the result is beyond a double.</exception>
    public static double EnergyDelayProduct(Energy energy, Duration runTime) =>
        Finite(Si.Joules(energy, nameof(energy)) * Seconds(runTime), "Energy–delay product", nameof(energy));

    /// <summary>How many tasks one ampere-hour (3600 C) pays for.</summary>
    /// <param name="charge">The charge of one task, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The charge is not above zero, or the result is beyond a double.</exception>
    public static double TasksPerAmpereHour(ElectricCharge charge)
    {
        var coulombs = Si.Coulombs(charge, nameof(charge));
        return Finite(
            SecondsPerHour / Positive(coulombs, "Charge", "C", nameof(charge)),
            "Tasks per ampere-hour",
            nameof(charge)
        );
    }

    /// <summary>How many tasks one watt-hour (3600 J) pays for.</summary>
    /// <param name="energy">The energy of one task, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The energy is not above zero, or the result is beyond a double.</exception>
    public static double TasksPerWattHour(Energy energy)
    {
        var joules = Si.Joules(energy, nameof(energy));
        return Finite(
            SecondsPerHour / Positive(joules, "Energy", "J", nameof(energy)),
            "Tasks per watt-hour",
            nameof(energy)
        );
    }

    private static double Seconds(Duration runTime) =>
        Si.Seconds(Require.Positive(runTime, "Run time", nameof(runTime)));

    private static double Volts(ElectricPotential voltage) =>
        Si.Volts(Require.Positive(voltage, "Voltage", nameof(voltage)));

    private static double Positive(double value, string what, string unit, string parameter) =>
        value > 0
            ? value
            : throw new ArgumentOutOfRangeException(
                parameter,
                FormattableString.Invariant($"{what} must be above zero; was {value} {unit}.")
            );

    private static double Finite(double value, string what, string parameter) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(
                parameter,
                FormattableString.Invariant($"{what} must be within the range of a double; was {value}.")
            );
}
