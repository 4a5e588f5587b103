namespace McuBench.Core.Conclusions;

/// <summary>One side of a comparison.</summary>
public enum Side
{
    /// <summary>The first setup.</summary>
    First,

    /// <summary>The second setup.</summary>
    Second,
}
