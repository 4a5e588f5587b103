using System.Buffers;
using System.Runtime.InteropServices;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Hypotheses;

/// <summary>
/// The share of pairs in which the first sample's value is the larger, ties counted half, with the standard error that the
/// placements of each sample among the other give, and its degrees of freedom (brunner-munzel-2000, section 3).
/// </summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct PlacementError(double Superiority, double StandardError, double DegreesOfFreedom)
{
    /// <summary>The share and its error for two samples of two values or more; an error of 0 where every value of a sample has
    /// the same place in the other. O(n log n).</summary>
    internal static PlacementError Of(Sample first, Sample second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        Check.AtLeast(first.Count, 2, nameof(first));
        Check.AtLeast(second.Count, 2, nameof(second));
        double[] scratch = ArrayPool<double>.Shared.Rent(checked(first.Count + second.Count));
        Span<double> ofFirst = scratch.AsSpan(0, first.Count);
        Span<double> ofSecond = scratch.AsSpan(first.Count, second.Count);
        double superior = 0;
        var walk = new TieWalk(first.Sorted, second.Sorted);
        while (walk.MoveNext())
        {
            double below = walk.SecondBelow + walk.SecondEqual / 2.0;
            superior += walk.FirstEqual * below;
            ofFirst.Slice(walk.FirstBelow, walk.FirstEqual).Fill(below);
            ofSecond.Slice(walk.SecondBelow, walk.SecondEqual).Fill(walk.FirstBelow + walk.FirstEqual / 2.0);
        }

        var error = WelchError.Of(
            ErrorOfMean(ofFirst) / second.Count,
            first.Count - 1,
            ErrorOfMean(ofSecond) / first.Count,
            second.Count - 1
        );
        ArrayPool<double>.Shared.Return(scratch);
        return new PlacementError(superior / ((double)first.Count * second.Count), error.Value, error.DegreesOfFreedom);
    }

    private static double ErrorOfMean(ReadOnlySpan<double> values) =>
        SquaredDeviations.Of(values).RootOver(values.Length - 1) / Math.Sqrt(values.Length);
}
