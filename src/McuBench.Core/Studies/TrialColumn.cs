namespace McuBench.Core.Studies;

/// <summary>The properties of a trial that a table may have columns for.</summary>
public enum TrialColumn
{
    /// <summary>The setup's name; required. Its head is "setup" unless said otherwise.</summary>
    Setup,

    /// <summary>The workload's name; required. Head "workload".</summary>
    Workload,

    /// <summary>The timer's name; required. Head "timer".</summary>
    Timer,

    /// <summary>The run time; required. Head "run time", with its unit: "run time [ms]".</summary>
    RunTime,

    /// <summary>The trial's place in the order, from 1. Head "order".</summary>
    Order,

    /// <summary>The sitting. Head "session".</summary>
    Session,

    /// <summary>The physical board. Head "specimen".</summary>
    Specimen,

    /// <summary>The build or flash. Head "build".</summary>
    Build,

    /// <summary>The cable and port. Head "connection".</summary>
    Connection,

    /// <summary>The temperature. Head "temperature", with its unit: "temperature [°C]".</summary>
    Temperature,

    /// <summary>The checksum of the output. Head "output checksum".</summary>
    OutputChecksum,

    /// <summary>The clock cycles counted. Head "cycle count".</summary>
    CycleCount,
}
