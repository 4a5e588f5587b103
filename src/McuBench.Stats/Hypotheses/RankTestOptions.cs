using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>What a rank test is asked.</summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record RankTestOptions
{
    /// <summary>A null value of 0, two-sided, exact for small samples.</summary>
    public static RankTestOptions Default { get; } = new();

    /// <summary>The shift, or centre, under the null hypothesis, in the unit of the data. 0 by default.</summary>
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

    /// <summary>Whether the normal distribution is asked half a step nearer its centre, as the statistic moves in steps.
    /// True by default; without meaning for the exact distribution.</summary>
    public bool CorrectsForContinuity { get; init; } = true;
}
