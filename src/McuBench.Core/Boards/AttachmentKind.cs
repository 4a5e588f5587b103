namespace McuBench.Core.Boards;

/// <summary>What sort of thing draws from a board's supply besides the board's own parts.</summary>
public enum AttachmentKind
{
    /// <summary>A display; writing to it also takes time that does not follow the clock.</summary>
    Display,

    /// <summary>A radio.</summary>
    Radio,

    /// <summary>An indicator light.</summary>
    Indicator,

    /// <summary>Anything else, such as a sensor or a card slot.</summary>
    Other,
}
