using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>What is asked of conclusions: the confidence of every interval, and the margin within which two setups
/// count as equal.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record ConclusionOptions
{
    /// <summary>A confidence of 95 % and no margin.</summary>
    public static ConclusionOptions Default { get; } = new();

    /// <summary>The confidence of every interval, at least 0.5 and at most 0.9999; 0.95 unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a number outside that range, or NaN.</exception>
    public double Confidence
    {
        get;
        init =>
            field = value is >= 0.5 and <= 0.9999
                ? value
                : throw new ArgumentOutOfRangeException(
                    nameof(Confidence),
                    value,
                    FormattableString.Invariant($"Confidence must be at least 0.5 and at most 0.9999; was {value}.")
                );
    } = 0.95;

    /// <summary>
    /// The relative difference that does not matter to whoever asks: two setups are equal within a margin of 2 % when
    /// their ratio is shown to lie between 1/1.02 and 1.02. Absent unless set, since only the asker can know it;
    /// without a margin no two setups are called equal.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to 0 % or less, or to 100 % or more.</exception>
    public Ratio? Margin
    {
        get;
        init
        {
            if (value is not { } given)
            {
                field = null;
                return;
            }

            var share = Require.Share(given, "Margin", nameof(Margin));
            field =
                Si.Fraction(share) > 0
                    ? share
                    : throw new ArgumentOutOfRangeException(
                        nameof(Margin),
                        given,
                        "Margin must be above 0 %; was 0 %."
                    );
        }
    }

    /// <summary>Which comparisons share the chance of a false claim in rankings; all of the study unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a value that has no name.</exception>
    public ClaimFamily Family
    {
        get;
        init => field = Require.Defined(value, "Family of claims", nameof(Family));
    } = ClaimFamily.Study;

    /// <summary>The seed of all random numbers that conclusions draw; 2026 unless set. The same study and options give the
    /// same draws on any machine and any number of threads.</summary>
    public ulong Seed { get; init; } = 2026;
}
