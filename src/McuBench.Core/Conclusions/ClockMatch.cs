namespace McuBench.Core.Conclusions;

/// <summary>By what two boards' clocks are matched when they are compared.</summary>
public enum ClockMatch
{
    /// <summary>Both at one frequency.</summary>
    EqualClock,

    /// <summary>Each at the clock that it comes with.</summary>
    Defaults,

    /// <summary>Each at the clock that is best for it.</summary>
    Best,
}
