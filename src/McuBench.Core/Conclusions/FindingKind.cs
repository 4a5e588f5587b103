namespace McuBench.Core.Conclusions;

/// <summary>What a review found.</summary>
public enum FindingKind
{
    /// <summary>A single trial, or a few: the scatter is unknown or poorly known.</summary>
    TooFewTrials,

    /// <summary>The timer's step is coarse against the scatter, and widens the interval.</summary>
    CoarseTimer,

    /// <summary>The run is shorter than the timer can resolve to 1 %.</summary>
    RunTooShortForTimer,

    /// <summary>Run times far from the others. They were kept.</summary>
    Outliers,

    /// <summary>Run times rise or fall over the order of trials.</summary>
    Drift,

    /// <summary>Trials of one setup came before those of the other, all of them or by more than a random order would
    /// bring about: no verdict.</summary>
    OrderConfounded,

    /// <summary>Two setups were run in sessions of their own: no verdict.</summary>
    SessionsConfounded,

    /// <summary>Fewer than two specimens are named: conclusions hold for what was on the bench.</summary>
    OneSpecimen,

    /// <summary>Trials put out something else than a right run does. They were left out.</summary>
    ChecksumMismatch,

    /// <summary>The timer takes its time from the clock that is changed.</summary>
    TimerFollowsClock,

    /// <summary>The timer's tolerance is unknown and was left out.</summary>
    TimerToleranceUnknown,

    /// <summary>The clock's tolerance is unknown and was left out of per-cycle figures.</summary>
    ClockToleranceUnknown,

    /// <summary>The board drew current through another path as well: the meter saw a part.</summary>
    FedElsewhere,

    /// <summary>Readings in the lowest tenth of the meter's range.</summary>
    MeterRangeLow,

    /// <summary>Two setups were read in different ranges, or with different meters: the gain doesn't cancel.</summary>
    MeterRangesDiffer,

    /// <summary>The meter's accuracy is not stated and was left out.</summary>
    MeterAccuracyUnknown,

    /// <summary>Readings were taken before the regulator and behind it.</summary>
    MeasuringPointsDiffer,

    /// <summary>No current was read while running: charge and energy can't be told.</summary>
    NoSupplyReadings,

    /// <summary>Run times at three or more clocks don't lie on a line in 1/f.</summary>
    ClockLineRefuted,

    /// <summary>The time that doesn't follow the clock comes out below zero.</summary>
    NegativeFixedTime,
}
