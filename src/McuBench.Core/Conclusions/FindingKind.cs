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

    /// <summary>The first trial of a session is unlike those after it. It was kept.</summary>
    WarmUp,

    /// <summary>Run times lie in two clusters.</summary>
    TwoClusters,

    /// <summary>From some trial on runs take longer: the clock may have been throttled.</summary>
    Throttling,

    /// <summary>The temperature rises or falls over the trials.</summary>
    TemperatureDrift,

    /// <summary>Run times differ between sessions by more than they scatter inside them.</summary>
    SessionsDiffer,

    /// <summary>Run times differ between specimens by more than they scatter inside them.</summary>
    SpecimensDiffer,

    /// <summary>Run times differ between builds by more than they scatter inside them.</summary>
    BuildsDiffer,

    /// <summary>Setups were run unequally often.</summary>
    Unbalanced,

    /// <summary>The program was built or flashed once, or the build isn't noted.</summary>
    BuildNeverRepeated,

    /// <summary>No empty workload was timed.</summary>
    EmptyWorkloadNeverTimed,

    /// <summary>Cycles counted over time read don't give the clock that is stated.</summary>
    ClockMismatch,

    /// <summary>A figure is about a thousand times off the others of its kind.</summary>
    SlippedPrefix,

    /// <summary>The meter averages over more than a run.</summary>
    MeterSlowerThanRun,

    /// <summary>The meter averages over few periods of the load's swing.</summary>
    MeterAliases,

    /// <summary>The supply's voltage sags while running.</summary>
    VoltageSag,

    /// <summary>Over several workloads one of them decides the verdict.</summary>
    OneWorkloadDecides,
}
