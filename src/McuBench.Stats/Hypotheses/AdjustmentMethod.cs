namespace McuBench.Stats.Hypotheses;

/// <summary>How the p-values of several tests are adjusted for there being several.</summary>
public enum AdjustmentMethod
{
    /// <summary>Holm's step-down method (holm-1979): holds the chance of any wrong rejection, whatever the dependence, and
    /// never rejects less than <see cref="Bonferroni"/>.</summary>
    Holm,

    /// <summary>Each p-value times their number: holds the chance of any wrong rejection, whatever the dependence.</summary>
    Bonferroni,

    /// <summary>Hochberg's step-up method (hochberg-1988): holds the chance of any wrong rejection for independent or
    /// positively dependent tests, and rejects at least what <see cref="Holm"/> does.</summary>
    Hochberg,

    /// <summary>Benjamini and Hochberg's step-up method (benjamini-hochberg-1995): holds the expected share of wrong ones
    /// among the rejections, for independent or positively dependent tests.</summary>
    BenjaminiHochberg,
}
