using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>What the test of a trend is asked.</summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record TrendOptions
{
    /// <summary>Either direction, exact for few values, 95 %.</summary>
    public static TrendOptions Default { get; } = new();

    /// <summary>Which trend counts: greater is a rise, less a fall. Two-sided by default.</summary>
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

    /// <summary>Where the p-value comes from. Automatic by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not one of the named values.</exception>
    public NullDistribution Distribution
    {
        get;
        init
        {
            Check.Named(value, nameof(Distribution));
            field = value;
        }
    }

    /// <summary>Whether the normal distribution is asked half a step, which is 1, nearer its centre. True by default; without
    /// meaning for the exact distribution.</summary>
    public bool CorrectsForContinuity { get; init; } = true;

    /// <summary>The confidence of the slope's interval, above 0 and below 1. 0.95 by default.</summary>
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
