namespace McuBench.Core.Conclusions;

/// <summary>In what two setups, or the trials taken with them, differ.</summary>
public enum SetupAspect
{
    /// <summary>The board.</summary>
    Board,

    /// <summary>The execution core.</summary>
    ExecutionCore,

    /// <summary>The clock's nominal frequency.</summary>
    ClockFrequency,

    /// <summary>The supply's nominal voltage.</summary>
    SupplyVoltage,

    /// <summary>The input that the board is fed through.</summary>
    SupplyInput,

    /// <summary>Whether the board draws current through another path as well.</summary>
    FedElsewhere,

    /// <summary>The toolchain or its version.</summary>
    Toolchain,

    /// <summary>The build settings.</summary>
    BuildSettings,

    /// <summary>An attachment that only one has, or that is of another kind in the other.</summary>
    Attachment,

    /// <summary>What an attachment was doing: a radio off in one and on in the other.</summary>
    AttachmentState,

    /// <summary>The timer.</summary>
    Timer,

    /// <summary>The sessions that trials were taken in.</summary>
    Session,

    /// <summary>The cable and port.</summary>
    Connection,

    /// <summary>The mean temperature, where it differs by 2 K or more.</summary>
    Temperature,

    /// <summary>The meter or the range it was used in.</summary>
    Meter,

    /// <summary>Where in the supply path the meter sat.</summary>
    MeasuringPoint,
}
