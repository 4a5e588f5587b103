namespace McuBench.Core.Conclusions;

/// <summary>What a comparison says of two setups. Equality is never the default: it has to be shown.</summary>
public enum Verdict
{
    /// <summary>They differ: the interval of the ratio excludes 1.</summary>
    Different,

    /// <summary>They differ, yet by less than the stated margin: the difference is real and does not matter.</summary>
    DifferentWithinMargin,

    /// <summary>They are equal within the stated margin: two one-sided tests exclude any larger difference.</summary>
    EqualWithinMargin,

    /// <summary>This data can't tell: neither a difference nor equality is shown. The smallest difference that the data
    /// would probably have shown is given beside it.</summary>
    NotResolved,

    /// <summary>No verdict can be given, whatever the figures: the reason is given beside it.</summary>
    NoVerdict,
}
