using UnitsNet;

namespace McuBench.Core.Supply.Cells;

/// <summary>A cell, or cells in series taken as one: what it holds, how much of that can be had, and how it ages.</summary>
/// <remarks>
/// All figures are the user's, for the temperature and the current of the use: nothing is assumed of a chemistry. Limits
/// are those of a data sheet, ±: the truth may be anywhere within (gum-2008, 4.3.7); what is not given is taken as exact.
/// Immutable; quantities are held in SI units; equal when all properties are equal. Safe to use from many threads.
/// </remarks>
public sealed record Cell
{
    /// <summary>Makes a cell.</summary>
    /// <param name="capacity">The rated capacity, above zero.</param>
    /// <param name="meanVoltage">The voltage under load, averaged over the discharge; not below the cutoff.</param>
    /// <param name="cutoff">The voltage under load at which the discharge ends, above zero.</param>
    /// <param name="usableShare">The part of the rated capacity that comes out down to the cutoff, above 0 % and at most
    /// 100 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of its range.</exception>
    /// <exception cref="ArgumentException">The mean voltage lies below the cutoff.</exception>
    public Cell(ElectricCharge capacity, ElectricPotential meanVoltage, ElectricPotential cutoff, Ratio usableShare)
    {
        Capacity = Require.Positive(capacity, "Cell's capacity", nameof(capacity));
        MeanVoltage = Require.Positive(meanVoltage, "Cell's mean voltage", nameof(meanVoltage));
        Cutoff = Require.Positive(cutoff, "Cell's cutoff", nameof(cutoff));
        UsableShare = Require.Part(usableShare, "Usable share", nameof(usableShare));
        if (Quantities.Si.Volts(MeanVoltage) < Quantities.Si.Volts(Cutoff))
        {
            throw new ArgumentException(
                $"Cell's mean voltage must not lie below its cutoff of {Quantities.QuantityText.Format(Cutoff)}; was {Quantities.QuantityText.Format(MeanVoltage)}.",
                nameof(meanVoltage)
            );
        }
    }

    /// <summary>The rated capacity.</summary>
    public ElectricCharge Capacity { get; }

    /// <summary>The voltage under load, averaged over the discharge.</summary>
    public ElectricPotential MeanVoltage { get; }

    /// <summary>The voltage under load at which the discharge ends.</summary>
    public ElectricPotential Cutoff { get; }

    /// <summary>The part of the rated capacity that comes out down to the cutoff.</summary>
    public Ratio UsableShare { get; }

    /// <summary>The limits of the capacity from cell to cell, ± as a share of it.</summary>
    public Ratio CapacityTolerance
    {
        get;
        init => field = Require.Share(value, "Capacity tolerance", nameof(CapacityTolerance));
    }

    /// <summary>The limits of the usable share, ± as a share of it.</summary>
    public Ratio UsableShareTolerance
    {
        get;
        init => field = Require.Share(value, "Usable share tolerance", nameof(UsableShareTolerance));
    }

    /// <summary>The part of the usable capacity that is left at the temperature of the use; 100 % unless given.</summary>
    public Ratio TemperatureDerating
    {
        get;
        init => field = Require.Part(value, "Temperature derating", nameof(TemperatureDerating));
    } = Ratio.FromDecimalFractions(1);

    /// <summary>The limits of the derating, ± as a share of it.</summary>
    public Ratio TemperatureDeratingTolerance
    {
        get;
        init => field = Require.Share(value, "Temperature derating tolerance", nameof(TemperatureDeratingTolerance));
    }

    /// <summary>The part of what is in the cell that is lost by itself in a year of 365.25 days.</summary>
    public Ratio SelfDischargePerYear
    {
        get;
        init => field = Require.Share(value, "Self-discharge per year", nameof(SelfDischargePerYear));
    }

    /// <summary>The limits of the self-discharge, ± as a share of it.</summary>
    public Ratio SelfDischargeTolerance
    {
        get;
        init => field = Require.Share(value, "Self-discharge tolerance", nameof(SelfDischargeTolerance));
    }

    /// <summary>The limits of the mean voltage, ± as a share of it; matters behind a switching regulator.</summary>
    public Ratio MeanVoltageTolerance
    {
        get;
        init => field = Require.Share(value, "Mean voltage tolerance", nameof(MeanVoltageTolerance));
    }

    /// <summary>The current that the cell may give at most, when known: above it the figures here do not hold.</summary>
    public ElectricCurrent? GreatestCurrent
    {
        get;
        init =>
            field = value is { } limit ? Require.Positive(limit, "Greatest current", nameof(GreatestCurrent)) : null;
    }
}
