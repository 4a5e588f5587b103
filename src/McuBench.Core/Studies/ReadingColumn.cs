namespace McuBench.Core.Studies;

/// <summary>The properties of a supply reading that a table may have columns for.</summary>
public enum ReadingColumn
{
    /// <summary>The setup's name; required. Its head is "setup" unless said otherwise.</summary>
    Setup,

    /// <summary>The meter's name; required. Head "meter".</summary>
    Meter,

    /// <summary>What the board was doing: running, waiting, idle or attachmentAlone; required. Head "phase".</summary>
    Phase,

    /// <summary>The current read; required. Head "current", with its unit: "current [mA]".</summary>
    Current,

    /// <summary>The workload's name, in the phases that execute one. Head "workload".</summary>
    Workload,

    /// <summary>Where the meter sat: beforeRegulator or afterRegulator. Head "point".</summary>
    Point,

    /// <summary>The voltage at the measuring point. Head "board voltage", with its unit: "board voltage [V]".</summary>
    BoardVoltage,

    /// <summary>The full scale of the range in use. Head "range", with its unit: "range [mA]".</summary>
    Range,

    /// <summary>The attachment that was read alone. Head "attachment".</summary>
    Attachment,

    /// <summary>The sitting. Head "session".</summary>
    Session,

    /// <summary>The physical board. Head "specimen".</summary>
    Specimen,
}
