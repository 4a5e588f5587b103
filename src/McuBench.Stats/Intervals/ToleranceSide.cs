namespace McuBench.Stats.Intervals;

/// <summary>On which side a tolerance interval ends.</summary>
public enum ToleranceSide
{
    /// <summary>On both.</summary>
    Both,

    /// <summary>Above only: "99 % of runs end within …".</summary>
    Upper,

    /// <summary>Below only: "99 % of cells give at least …".</summary>
    Lower,
}
