namespace McuBench.Core.Conclusions;

/// <summary>One thing in which two setups differ.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record SetupDifference
{
    internal SetupDifference(SetupAspect aspect, string what, string first, string second)
    {
        Aspect = aspect;
        What = what;
        First = first;
        Second = second;
    }

    /// <summary>What sort of thing differs.</summary>
    public SetupAspect Aspect { get; }

    /// <summary>What differs, in words: "clock", "radio \"uplink\"".</summary>
    public string What { get; }

    /// <summary>What it is in the first setup; "none" where it has none, "not known" where it wasn't noted.</summary>
    public string First { get; }

    /// <summary>What it is in the second setup; "none" where it has none, "not known" where it wasn't noted.</summary>
    public string Second { get; }
}
