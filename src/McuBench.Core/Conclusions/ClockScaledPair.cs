namespace McuBench.Core.Conclusions;

/// <summary>Two setups of two boards compared as measured and with each one's fixed time taken out.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record ClockScaledPair
{
    internal ClockScaledPair(SetupComparison gross, QuantityComparison scaling, bool isOrderReversed)
    {
        Gross = gross;
        Scaling = scaling;
        IsOrderReversed = isOrderReversed;
    }

    /// <summary>The comparison as measured.</summary>
    public SetupComparison Gross { get; }

    /// <summary>The comparison of the time that follows the clock, each at its own clock: what would be left if the
    /// fixed time were the same for both or none.</summary>
    public QuantityComparison Scaling { get; }

    /// <summary>Whether both comparisons are resolved and point in opposite directions.</summary>
    public bool IsOrderReversed { get; }
}
