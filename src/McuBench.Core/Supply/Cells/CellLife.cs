using McuBench.Core.Conclusions;
using UnitsNet;

namespace McuBench.Core.Supply.Cells;

/// <summary>How long a cell lasts and how many tasks it pays for.</summary>
/// <remarks>Immutable; quantities are in SI units; equal when all properties are equal, lists in order. Safe to use from
/// many threads.</remarks>
public sealed record CellLife
{
    private readonly ValueList<string> cautions;

    internal CellLife(IEnumerable<string> cautions) =>
        this.cautions = ValueList<string>.Of(cautions, "Cautions", nameof(cautions));

    /// <summary>The time until the usable part is out.</summary>
    public required Measured<Duration> RunTime { get; init; }

    /// <summary>The run time over the period: how many tasks that is, the last one in part.</summary>
    public required Measured<double> Tasks { get; init; }

    /// <summary>What flows out of the cell on average, self-discharge not counted.</summary>
    public required Measured<ElectricCurrent> MeanCurrent { get; init; }

    /// <summary>The part of the usable charge that the board never sees, since the cell loses it by itself.</summary>
    public required Ratio LostToSelfDischarge { get; init; }

    /// <summary>Where the figures stand on weak ground; empty where nothing was noticed.</summary>
    public IReadOnlyList<string> Cautions => cautions;

    /// <summary>Computes the life of a cell under a duty cycle, to first order (gum-2008, 5.1), sensitivities found
    /// numerically. O(points of the efficiency table).</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="cycle">What the board does.</param>
    /// <param name="regulator">What stands between them; null where the cell feeds the board directly, which then
    /// takes the same current at all of the cell's voltages.</param>
    /// <param name="confidence">The confidence of the intervals, above 0 and below 1.</param>
    /// <remarks>
    /// The cell loses charge to the load at a constant mean current I, and to itself in proportion to what is in it:
    /// dQ/dt = −I − kQ with k = −ln(1 − s) over a year. From the capacity C down to C(1 − ud), with the usable share u
    /// and the derating d, that takes ln(1 + kCud / (kC(1 − ud) + I)) / k, or Cud/I without self-discharge. The
    /// regulator sees the task's current and the idle current one after the other, not their mean: at idle its
    /// efficiency is another.
    /// </remarks>
    /// <exception cref="ArgumentException">The regulator needs more than the cell's cutoff, a load lies beyond the table of
    /// efficiencies, the self-discharge may reach 100 %, or the confidence lies outside (0, 1).</exception>
    public static CellLife Of(Cell cell, DutyCycle cycle, Regulator? regulator = null, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(cell);
        ArgumentNullException.ThrowIfNull(cycle);
        if (!(confidence > 0 && confidence < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(confidence),
                confidence,
                FormattableString.Invariant($"Confidence must be above 0 and below 1; was {confidence}.")
            );
        }

        return new CellFigures(cell, cycle, regulator).Life(confidence);
    }
}
