namespace McuBench.Stats.Hypotheses;

/// <summary>Which departures from the null value a test looks for.</summary>
public enum Alternative
{
    /// <summary>The true value differs from the null value, in either direction.</summary>
    TwoSided,

    /// <summary>The true value is below the null value.</summary>
    Less,

    /// <summary>The true value is above the null value.</summary>
    Greater,
}
