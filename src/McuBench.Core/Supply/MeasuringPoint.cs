namespace McuBench.Core.Supply;

/// <summary>Where in the supply path the meter sat.</summary>
public enum MeasuringPoint
{
    /// <summary>At the board's input, before its regulator: the regulator's own loss is in the reading.</summary>
    BeforeRegulator,

    /// <summary>Behind the regulator, at the rail that the core is fed from.</summary>
    AfterRegulator,
}
