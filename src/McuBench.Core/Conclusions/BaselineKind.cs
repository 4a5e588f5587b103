namespace McuBench.Core.Conclusions;

/// <summary>What was subtracted to get a net figure.</summary>
public enum BaselineKind
{
    /// <summary>The same setup doing nothing.</summary>
    Idle,

    /// <summary>An attachment read alone.</summary>
    Attachment,
}
