namespace McuBench.Stats.Hypotheses;

/// <summary>The centre of each group from which a test of spread takes its deviations.</summary>
public enum SpreadCentre
{
    /// <summary>The median (brown-forsythe-1974): keeps the test's size for skewed and long-tailed data too.</summary>
    Median,

    /// <summary>The mean (levene-1960): for symmetric data with moderate tails, and 30 values a group or more; under
    /// skew or with outliers it rejects in a fifth to two thirds of cases where it should in a twentieth.</summary>
    Mean,
}
