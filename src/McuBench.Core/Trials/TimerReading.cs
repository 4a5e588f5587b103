namespace McuBench.Core.Trials;

/// <summary>How a timer turns a run time into the figure that is read: it decides where in a step the truth may lie.</summary>
public enum TimerReading
{
    /// <summary>Rounded to the nearest step: the truth lies within half a step on either side.</summary>
    Rounded,

    /// <summary>Cut to the step below: the truth lies up to one step above, so readings are low by half a step on average.</summary>
    Truncated,

    /// <summary>The difference of two tick counts whose start falls anywhere within a tick: each reading is off by up to
    /// a tick either way, without bias, and averaging helps.</summary>
    TickDifferenceRandomStart,

    /// <summary>The difference of two tick counts, started on a tick: reads like a truncated timer.</summary>
    TickDifferenceSynchronousStart,
}
