namespace McuBench.Stats.Uncertainty;

/// <summary>The shape of the distribution that is assigned to an input (gum-s1-2008, table 1).</summary>
public enum InputShape
{
    /// <summary>Normal, for an uncertainty that is known well.</summary>
    Normal,

    /// <summary>Student's t, for an uncertainty of limited degrees of freedom.</summary>
    StudentT,

    /// <summary>Rectangular: anywhere between two limits, as with a resolution or a tolerance.</summary>
    Rectangular,

    /// <summary>Triangular: between two limits, the middle likeliest.</summary>
    Triangular,

    /// <summary>U-shaped (arc sine): a quantity that swings between two limits as a sine does.</summary>
    UShaped,
}
