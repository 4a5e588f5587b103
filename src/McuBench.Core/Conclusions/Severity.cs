namespace McuBench.Core.Conclusions;

/// <summary>How much a finding weighs.</summary>
public enum Severity
{
    /// <summary>Worth knowing; conclusions stand.</summary>
    Note,

    /// <summary>Conclusions are weaker than they could be, or rest on something unknown.</summary>
    Caution,

    /// <summary>Something is wrong: a conclusion was withheld, or holds only if the fault did no harm.</summary>
    Fault,
}
