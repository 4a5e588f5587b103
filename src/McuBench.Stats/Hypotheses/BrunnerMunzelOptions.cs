namespace McuBench.Stats.Hypotheses;

/// <summary>What the Brunner–Munzel test is asked.</summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record BrunnerMunzelOptions
{
    /// <summary>A null value of one half, two-sided, 95 %.</summary>
    public static BrunnerMunzelOptions Default { get; } = new();

    /// <summary>The probability, under the null hypothesis, that a first value is above a second one, ties counted half; above
    /// 0 and below 1. One half by default: neither tends to be larger.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a value outside (0, 1).</exception>
    public double NullValue
    {
        get;
        init =>
            field =
                value > 0 && value < 1
                    ? value
                    : throw Check.OutOfRange(nameof(NullValue), "Null value", "above 0 and below 1", value);
    } = 0.5;

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
