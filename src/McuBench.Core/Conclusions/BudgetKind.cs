namespace McuBench.Core.Conclusions;

/// <summary>What sort of thing a component of uncertainty is, and so by what it would be lessened.</summary>
public enum BudgetKind
{
    /// <summary>Scatter of trials or readings: more of them lessen it.</summary>
    Scatter,

    /// <summary>The timer's step: a finer timer or longer runs lessen it.</summary>
    TimerStep,

    /// <summary>The tolerance of the timer's oscillator: a better one, or one timer for all, lessens it.</summary>
    TimerTolerance,

    /// <summary>The tolerance of the clock that the core runs at: measuring the clock lessens it.</summary>
    ClockTolerance,

    /// <summary>A meter's gain: a check against a known load, or one range for all, lessens it.</summary>
    MeterGain,

    /// <summary>A meter's offset: a check of its zero, or a smaller range, lessens it.</summary>
    MeterOffset,

    /// <summary>A meter's last digit: a smaller range lessens it.</summary>
    MeterStep,

    /// <summary>The tolerance of the supply's voltage: reading the voltage lessens it.</summary>
    SupplyVoltage,

    /// <summary>Anything else.</summary>
    Other,
}
