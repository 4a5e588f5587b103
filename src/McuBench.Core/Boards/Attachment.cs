namespace McuBench.Core.Boards;

/// <summary>Something that hangs on a board and draws from the same supply: a display, a radio, an indicator light.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record Attachment
{
    /// <summary>Makes an attachment.</summary>
    /// <param name="kind">What sort of thing it is.</param>
    /// <param name="name">Its name, distinct within a setup.</param>
    /// <param name="state">What it was doing while trials ran.</param>
    /// <exception cref="ArgumentException">The name is blank or too long, or an enumeration value is not defined.</exception>
    public Attachment(AttachmentKind kind, string name, AttachmentState state)
    {
        Kind = kind;
        Name = name;
        State = state;
    }

    /// <summary>What sort of thing it is.</summary>
    public AttachmentKind Kind
    {
        get;
        init => field = Require.Defined(value, "Attachment's kind", nameof(Kind));
    }

    /// <summary>Its name, distinct within a setup.</summary>
    public string Name
    {
        get;
        init => field = Require.Name(value, "Attachment's name", nameof(Name));
    }

    /// <summary>What it was doing while trials ran.</summary>
    public AttachmentState State
    {
        get;
        init => field = Require.Defined(value, "Attachment's state", nameof(State));
    }
}
