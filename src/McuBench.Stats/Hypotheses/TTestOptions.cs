namespace McuBench.Stats.Hypotheses;

/// <summary>What a t test is asked: the null value, the direction, and the confidence of its interval.</summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record TTestOptions
{
    /// <summary>A null value of 0, two-sided, 95 %.</summary>
    public static TTestOptions Default { get; } = new();

    /// <summary>The mean, or difference of means, under the null hypothesis, in the unit of the data. 0 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to NaN or infinity.</exception>
    public double NullValue
    {
        get;
        init
        {
            Check.Finite(value, "Null value", nameof(NullValue));
            field = value;
        }
    }

    /// <summary>Which departures count. Two-sided by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not one of the named values.</exception>
    public Alternative Alternative
    {
        get;
        init
        {
            Check.Named(value, nameof(Alternative));
            field = value;
        }
    }

    /// <summary>The confidence of the interval, above 0 and below 1. 0.95 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a value outside (0, 1).</exception>
    public double Confidence
    {
        get;
        init
        {
            Check.Confidence(value, nameof(Confidence));
            field = value;
        }
    } = 0.95;
}
