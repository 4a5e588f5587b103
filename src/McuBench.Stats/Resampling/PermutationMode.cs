namespace McuBench.Stats.Resampling;

/// <summary>Whether a permutation test looks at every split of the values or at random ones.</summary>
public enum PermutationMode
{
    /// <summary>Exact where it can be had, else random; the result says which.</summary>
    Auto,

    /// <summary>Every split; refused where there are too many.</summary>
    Exact,

    /// <summary>Random splits of a seed.</summary>
    Random,
}
