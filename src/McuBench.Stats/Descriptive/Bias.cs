namespace McuBench.Stats.Descriptive;

/// <summary>Whether a moment ratio describes the values or estimates their population's.</summary>
public enum Bias
{
    /// <summary>That of the values as they are: moments with divisor n (g₁ and g₂).</summary>
    Kept,

    /// <summary>Adjusted so that it is unbiased for a normal population (G₁ and G₂).</summary>
    Adjusted,
}
