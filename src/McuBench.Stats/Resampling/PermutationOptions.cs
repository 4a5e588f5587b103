using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Resampling;

/// <summary>What a permutation test is asked: the direction, and whether every split is looked at or a number of random
/// ones.</summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record PermutationOptions
{
    /// <summary>Two-sided; every split where there are few enough, else 9,999 random ones of seed 0.</summary>
    public static PermutationOptions Default { get; } = new();

    /// <summary>Which departures count; two-sided by default, where a statistic counts that is at least as far from 0 as the
    /// one seen.</summary>
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

    /// <summary>Whether the p-value is exact or from random splits; by default exact where it can be.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not one of the named values.</exception>
    public PermutationMode Mode
    {
        get;
        init
        {
            Check.Named(value, nameof(Mode));
            field = value;
        }
    }

    /// <summary>The number of random splits, from 99 to 1e7. 9,999 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a value outside [99, 1e7].</exception>
    public int Resamples
    {
        get;
        init => field = ResampleCount.Checked(value, nameof(Resamples));
    } = ResampleCount.Default;

    /// <summary>The seed of the random splits; the same seed gives the same splits on any machine.</summary>
    public ulong Seed { get; init; }
}
