using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Two setups compared by one quantity: the ratio of the first to the second, and what it says.</summary>
/// <remarks>
/// <para>The interval is computed on logarithms, so exchanging the two setups gives the reciprocal, ends and all, and
/// the same verdict. What both sides share (the scale error of one outside timer, the gain of one meter in one range)
/// cancels; resolution, offsets and the tolerance of separate oscillators do not.</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record QuantityComparison
{
    internal QuantityComparison(
        ComparedQuantity quantity,
        Measured<double> ratio,
        Measured<Ratio> savedByFirst,
        Measured<Ratio> savedBySecond,
        Verdict verdict,
        Side? less,
        NoVerdictReason? reason,
        Ratio? smallestDetectableDifference,
        Ratio? margin
    )
    {
        Quantity = quantity;
        Ratio = ratio;
        SavedByFirst = savedByFirst;
        SavedBySecond = savedBySecond;
        Verdict = verdict;
        Less = less;
        Reason = reason;
        SmallestDetectableDifference = smallestDetectableDifference;
        Margin = margin;
    }

    /// <summary>What is compared.</summary>
    public ComparedQuantity Quantity { get; }

    /// <summary>The first setup's figure divided by the second's: 0.8 where the first takes 0.8 times as much.</summary>
    public Measured<double> Ratio { get; }

    /// <summary>How much less the first takes than the second, as a share of the second's figure: 1 less the ratio.
    /// Negative where the first takes more.</summary>
    public Measured<Ratio> SavedByFirst { get; }

    /// <summary>How much less the second takes than the first, as a share of the first's figure: 1 less the reciprocal
    /// of the ratio. Negative where the second takes more.</summary>
    public Measured<Ratio> SavedBySecond { get; }

    /// <summary>What the ratio says.</summary>
    public Verdict Verdict { get; }

    /// <summary>Which side takes less, where the verdict is a difference; null otherwise.</summary>
    public Side? Less { get; }

    /// <summary>Why there is no verdict; null where there is one.</summary>
    public NoVerdictReason? Reason { get; }

    /// <summary>
    /// The smallest true difference, as by how much the larger figure exceeds the smaller, that data like these would
    /// show in four of five studies: exp((t(1 − α/2) + t(0.80))·u) − 1, u being the standard uncertainty of the
    /// logarithm of the ratio. Absent where there is no interval.
    /// </summary>
    public Ratio? SmallestDetectableDifference { get; }

    /// <summary>The margin that equality was tested against, by two one-sided tests, each at one less the confidence
    /// (schuirmann-1987): at 95 % the 90 % interval of the ratio must lie between 1/(1 + margin) and 1 + margin. Null
    /// where none was stated.</summary>
    public Ratio? Margin { get; }
}
