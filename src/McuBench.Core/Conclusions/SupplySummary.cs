using McuBench.Core.Supply;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>
/// What the supply readings of one setup and workload say: current, charge and energy per task, gross (the whole board
/// as measured), and net figures beside them where a baseline was read.
/// </summary>
/// <remarks>
/// <para>A task is one run of the workload. Energy needs a voltage: the one read with the current, or else the nominal
/// one of the supply where the meter sat at the board's input; without either, power and energy are absent and
/// <see cref="Notes"/> say so.</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record SupplySummary
{
    internal SupplySummary(
        IEnumerable<SupplyReading> readings,
        bool isWholeRunMean,
        Measured<ElectricCurrent> current,
        Measured<ElectricCharge> chargePerTask,
        Measured<double> tasksPerAmpereHour,
        SupplyEnergy? energy,
        IEnumerable<NetSupply> net,
        IEnumerable<string> notes
    )
    {
        Readings = ValueList<SupplyReading>.Of(readings, "Readings", nameof(readings));
        IsWholeRunMean = isWholeRunMean;
        Current = current;
        ChargePerTask = chargePerTask;
        TasksPerAmpereHour = tasksPerAmpereHour;
        Voltage = energy?.Voltage;
        MeanPower = energy?.MeanPower;
        EnergyPerTask = energy?.PerTask;
        TasksPerWattHour = energy?.TasksPerWattHour;
        EnergyDelayProduct = energy?.EnergyDelayProduct;
        Net = ValueList<NetSupply>.Of(net, "Net figures", nameof(net));
        Notes = ValueList<string>.Of(notes, "Notes", nameof(notes));
    }

    /// <summary>The readings that the figures rest on, in the order of the study.</summary>
    public IReadOnlyList<SupplyReading> Readings { get; }

    /// <summary>True where the readings taken while running count for the whole run; false where waiting was read apart
    /// and the two were put together by the clock split's shares of time.</summary>
    public bool IsWholeRunMean { get; }

    /// <summary>The mean current over a run, in amperes.</summary>
    public Measured<ElectricCurrent> Current { get; }

    /// <summary>Charge per task, in coulombs: current times run time.</summary>
    public Measured<ElectricCharge> ChargePerTask { get; }

    /// <summary>Tasks per ampere-hour of charge (3600 C).</summary>
    public Measured<double> TasksPerAmpereHour { get; }

    /// <summary>The voltage that power and energy rest on, in volts; absent where none is known.</summary>
    public Measured<ElectricPotential>? Voltage { get; }

    /// <summary>Mean power over a run, in watts; absent where no voltage is known.</summary>
    public Measured<Power>? MeanPower { get; }

    /// <summary>Energy per task, in joules; absent where no voltage is known.</summary>
    public Measured<Energy>? EnergyPerTask { get; }

    /// <summary>Tasks per watt-hour of energy (3600 J); absent where no voltage is known.</summary>
    public Measured<double>? TasksPerWattHour { get; }

    /// <summary>Energy per task times run time, in joule-seconds; absent where no voltage is known.</summary>
    public Measured<double>? EnergyDelayProduct { get; }

    /// <summary>Net figures, one for each baseline that was read; they stand beside the gross ones and never replace them.</summary>
    public IReadOnlyList<NetSupply> Net { get; }

    /// <summary>What a reader has to know of these figures; empty where there is nothing.</summary>
    public IReadOnlyList<string> Notes { get; }
}

/// <summary>What a voltage adds to a summary of the supply: there as a whole or not at all.</summary>
internal sealed record SupplyEnergy(
    Measured<ElectricPotential> Voltage,
    Measured<Power> MeanPower,
    Measured<Energy> PerTask,
    Measured<double> TasksPerWattHour,
    Measured<double> EnergyDelayProduct
);
