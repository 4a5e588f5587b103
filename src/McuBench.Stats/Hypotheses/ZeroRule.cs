namespace McuBench.Stats.Hypotheses;

/// <summary>What the signed-rank test does with values equal to the null value, which have no sign.</summary>
public enum ZeroRule
{
    /// <summary>Leaves them out before ranking (wilcoxon-1945): what is left decides alone.</summary>
    LeaveOut,

    /// <summary>Ranks them with the others and leaves them out afterwards (pratt-1959), so that a value never gains weight
    /// by moving closer to the null value.</summary>
    RankFirst,
}
