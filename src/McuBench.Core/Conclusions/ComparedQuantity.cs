namespace McuBench.Core.Conclusions;

/// <summary>By what two setups are compared. Less is better in each.</summary>
public enum ComparedQuantity
{
    /// <summary>Run time.</summary>
    RunTime,

    /// <summary>Clock cycles per work item.</summary>
    CyclesPerItem,

    /// <summary>Clock cycles per work item, with the time that doesn't follow the clock taken out.</summary>
    ScalingCyclesPerItem,

    /// <summary>Run time with the part that doesn't follow the clock taken out.</summary>
    ScalingRunTime,

    /// <summary>Charge per task.</summary>
    ChargePerTask,

    /// <summary>Energy per task.</summary>
    EnergyPerTask,
}
