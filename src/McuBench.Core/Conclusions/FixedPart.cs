namespace McuBench.Core.Conclusions;

/// <summary>What the data say of the part of a run that doesn't follow the clock.</summary>
public enum FixedPart
{
    /// <summary>It is there: its interval lies above zero.</summary>
    Present,

    /// <summary>It can't be told from none: its interval holds zero, or there is no interval.</summary>
    NotResolved,

    /// <summary>It comes out below zero, interval and all, which no part of a run can be: periodic interrupts, a
    /// timer's bias, or a timer that follows the clock.</summary>
    Negative,
}
