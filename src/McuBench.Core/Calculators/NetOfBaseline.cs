using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Calculators;

/// <summary>
/// What is left when a baseline (the idle board, an attachment alone) is subtracted. A net figure stands beside the
/// gross one and never replaces it: what the supply has to deliver is the gross figure.
/// </summary>
/// <remarks>All methods are O(1), computed in SI doubles and wrapped last; results may be negative.
/// Safe to use from many threads.</remarks>
public static class NetOfBaseline
{
    /// <summary>Gross current less the baseline's.</summary>
    /// <param name="gross">The current of the whole.</param>
    /// <param name="baseline">The current of what is subtracted.</param>
    /// <returns>The difference, in amperes.</returns>
    public static ElectricCurrent Current(ElectricCurrent gross, ElectricCurrent baseline) =>
        Si.Current(Si.Amperes(gross, nameof(gross)) - Si.Amperes(baseline, nameof(baseline)));

    /// <summary>Charge per task less what the baseline draws over the same time.</summary>
    /// <param name="gross">The charge of one task of the whole.</param>
    /// <param name="baseline">The current of what is subtracted.</param>
    /// <param name="runTime">The time of one run, above zero.</param>
    /// <returns>The difference, in coulombs.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not above zero.</exception>
    public static ElectricCharge Charge(ElectricCharge gross, ElectricCurrent baseline, Duration runTime) =>
        Si.Charge(Si.Coulombs(gross, nameof(gross)) - Si.Coulombs(TaskCost.Charge(baseline, runTime)));

    /// <summary>Energy per task less what the baseline takes at a voltage over the same time.</summary>
    /// <param name="gross">The energy of one task of the whole.</param>
    /// <param name="voltage">The voltage, above zero.</param>
    /// <param name="baseline">The current of what is subtracted.</param>
    /// <param name="runTime">The time of one run, above zero.</param>
    /// <returns>The difference, in joules.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Voltage or time is not above zero.</exception>
    public static Energy Energy(Energy gross, ElectricPotential voltage, ElectricCurrent baseline, Duration runTime) =>
        Si.Energy(Si.Joules(gross, nameof(gross)) - Si.Joules(TaskCost.Energy(voltage, baseline, runTime)));
}
