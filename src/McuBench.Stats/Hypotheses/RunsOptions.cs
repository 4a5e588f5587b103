using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>What the runs test is asked.</summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record RunsOptions
{
    /// <summary>Two-sided, values equal to the median left out, exact up to 1000 values.</summary>
    public static RunsOptions Default { get; } = new();

    /// <summary>Which departures count: less is fewer runs than by chance, as drift gives; greater is more, as values that
    /// alternate give. Two-sided by default.</summary>
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

    /// <summary>What is done with values equal to the median. Left out by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not one of the named values.</exception>
    public MedianTies MedianTies
    {
        get;
        init
        {
            Check.Named(value, nameof(MedianTies));
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
}
