using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply.Cells;

/// <summary>A regulator that keeps the power, up to its efficiency at the load.</summary>
/// <remarks>
/// The input current is the power out, over the efficiency and the input voltage, and the quiescent current besides;
/// where the table's efficiencies already hold that, give a quiescent current of zero. Between the points the
/// efficiency is a straight line over the logarithm of the load; loads beyond the table are refused, since the
/// efficiency of a regulator that idles can't be guessed. The table must be for the cell's mean voltage. Immutable;
/// quantities are held in SI units; equal when all properties are equal, points in order. Safe to use from many threads.
/// </remarks>
public sealed record SwitchingRegulator : Regulator
{
    private readonly ValueList<EfficiencyPoint> table;

    /// <summary>Makes a switching regulator.</summary>
    /// <param name="output">The voltage that it gives, above zero.</param>
    /// <param name="quiescent">What it takes for itself at all times, besides what the efficiencies hold; not
    /// negative.</param>
    /// <param name="leastInput">The input below which the output is no longer held, above zero.</param>
    /// <param name="table">Efficiency by load, two points or more, loads ascending.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range.</exception>
    /// <exception cref="ArgumentException">There are fewer than two points, or loads don't ascend.</exception>
    public SwitchingRegulator(
        ElectricPotential output,
        ElectricCurrent quiescent,
        ElectricPotential leastInput,
        params IEnumerable<EfficiencyPoint> table
    )
        : base(output, quiescent)
    {
        LeastInput = Require.Positive(leastInput, "Least input", nameof(leastInput));
        this.table = ValueList<EfficiencyPoint>.Of(table, "Efficiency table", nameof(table));
        if (this.table.Count < 2)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"Points of the efficiency must be at least 2; was {this.table.Count}."),
                nameof(table)
            );
        }

        for (var i = 1; i < this.table.Count; i++)
        {
            if (Load(i) <= Load(i - 1))
            {
                throw new ArgumentException(
                    $"Loads of the efficiency must ascend; {QuantityText.Format(this.table[i].Load)} follows {QuantityText.Format(this.table[i - 1].Load)}.",
                    nameof(table)
                );
            }
        }
    }

    /// <inheritdoc/>
    public override ElectricPotential LeastInput { get; }

    /// <summary>Efficiency by load, loads ascending.</summary>
    public IReadOnlyList<EfficiencyPoint> Table => table;

    /// <summary>The limits of the efficiencies, all together, ± as a share of them.</summary>
    public Ratio EfficiencyTolerance
    {
        get;
        init => field = Require.Share(value, "Efficiency tolerance", nameof(EfficiencyTolerance));
    }

    internal override double EfficiencyLimit => Si.Fraction(EfficiencyTolerance);

    internal override double InputAmperes(double load, double volts, double quiescent, double efficiencyFactor) =>
        quiescent + (load == 0 ? 0 : OutputVolts * load / (Efficiency(load) * efficiencyFactor * volts));

    internal override void RefuseUnknown(double load, string what)
    {
        if (load != 0 && (load < Load(0) || load > Load(table.Count - 1)))
        {
            throw new ArgumentException(
                $"{what} must lie within the table of efficiencies, {QuantityText.Format(table[0].Load)} to {QuantityText.Format(table[^1].Load)}; was {QuantityText.Format(Si.Current(load))}.",
                "cycle"
            );
        }
    }

    // Held at the ends: derivatives at a load on the first or the last point look past it.
    private double Efficiency(double load)
    {
        if (load <= Load(0))
        {
            return Si.Fraction(table[0].Efficiency);
        }

        for (var i = 1; i < table.Count; i++)
        {
            if (load <= Load(i))
            {
                var way = Math.Log(load / Load(i - 1)) / Math.Log(Load(i) / Load(i - 1));
                var start = Si.Fraction(table[i - 1].Efficiency);
                return start + way * (Si.Fraction(table[i].Efficiency) - start);
            }
        }

        return Si.Fraction(table[^1].Efficiency);
    }

    private double Load(int i) => Si.Amperes(table[i].Load);
}
