namespace McuBench.Core.Conclusions;

/// <summary>What is asked of a comparison of two boards at clocks that are matched.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record ClockMatchOptions
{
    /// <summary>Fixed time counted in, within the clocks that were run, with the defaults of conclusions.</summary>
    public static ClockMatchOptions Default { get; } = new();

    /// <summary>Whether the time that doesn't follow the clock is not the boards' (a display, a bus, a server that answers),
    /// so that it is taken out. Only the asker can know it; false unless set.</summary>
    public bool IsFixedTimeForeign { get; init; }

    /// <summary>The range in which the lines are taken to hold; what was run when absent.</summary>
    public ClockRange? Range { get; init; }

    /// <summary>Confidence and margin.</summary>
    public ConclusionOptions Conclusion
    {
        get;
        init => field = Require.Given(value, nameof(Conclusion));
    } = ConclusionOptions.Default;
}
