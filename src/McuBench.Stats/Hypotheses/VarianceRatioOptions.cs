namespace McuBench.Stats.Hypotheses;

/// <summary>What the F test of two variances is asked.</summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record VarianceRatioOptions
{
    /// <summary>A null value of 1, two-sided, 95 %.</summary>
    public static VarianceRatioOptions Default { get; } = new();

    /// <summary>The ratio of variances under the null hypothesis, above 0. 1 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not a finite number above 0.</exception>
    public double NullValue
    {
        get;
        init
        {
            Check.Positive(value, "Null value", nameof(NullValue));
            field = value;
        }
    } = 1;

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
