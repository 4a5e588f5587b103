using System.Buffers;
using System.Runtime.InteropServices;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Intervals;

/// <summary>A trimmed mean with the standard error that the winsorized squares give (yuen-1974).</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct TrimmedMean(double Value, double StandardError, double DegreesOfFreedom)
{
    /// <summary>The mean of what a fraction cut off at each end leaves, which must be two values or more. O(n log n) the
    /// first time, O(n) after that.</summary>
    internal static TrimmedMean Of(Sample sample, double fraction, string name)
    {
        int n = sample.Count;
        int cut = Trimming.CutOf(n, fraction);
        int left = n - 2 * cut;
        if (left < 2)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Count of values left by trimming must be at least 2; was {left}, of {n} values."
                ),
                name
            );
        }

        ReadOnlySpan<double> middle = sample.Sorted[cut..^cut];
        double mean = SquaredDeviations.MeanAlone(middle);
        double[] scratch = ArrayPool<double>.Shared.Rent(n);
        Span<double> winsorized = scratch.AsSpan(0, n);
        winsorized[..cut].Fill(middle[0]);
        middle.CopyTo(winsorized[cut..]);
        winsorized[^cut..].Fill(middle[^1]);
        double error = SquaredDeviations.Of(winsorized).RootOver((double)left * (left - 1));
        ArrayPool<double>.Shared.Return(scratch);
        return new TrimmedMean(mean, error, left - 1);
    }
}
