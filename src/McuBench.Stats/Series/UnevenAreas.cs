using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>The areas of many steps at once: the same bits as one by one.</summary>
internal static class UnevenAreas
{
    /// <summary>Makes the areas that end at the third sample and at each one behind it: from the sample before, by a
    /// straight line and holding, and from the next but one before.</summary>
    /// <returns>Whether all samples are finite and no step is too long; where not, what was made is of no use.</returns>
    internal static bool TryMake(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> samples,
        double longestStep,
        Span<double> areas,
        Span<double> held,
        Span<double> wide,
        out (double Least, double Greatest) extremes
    )
    {
        ref double time = ref MemoryMarshal.GetReference(times);
        ref double sample = ref MemoryMarshal.GetReference(samples);
        int count = samples.Length - 2;
        Vector256<double> least = Vector256.Create(samples[^1]);
        Vector256<double> greatest = least;
        Vector256<double> longest = Vector256<double>.Zero;
        Vector256<double> nothing = Vector256<double>.Zero;
        Vector256<double> half = Vector256.Create(0.5);
        int i = 0;
        while (i + Vector256<double>.Count <= count)
        {
            Vector256<double> t0 = Vector256.LoadUnsafe(ref time, (nuint)i);
            Vector256<double> t1 = Vector256.LoadUnsafe(ref time, (nuint)i + 1);
            Vector256<double> t2 = Vector256.LoadUnsafe(ref time, (nuint)i + 2);
            Vector256<double> x0 = Vector256.LoadUnsafe(ref sample, (nuint)i);
            Vector256<double> x1 = Vector256.LoadUnsafe(ref sample, (nuint)i + 1);
            Vector256<double> x2 = Vector256.LoadUnsafe(ref sample, (nuint)i + 2);
            Vector256<double> step = t2 - t1;
            longest = Vector256.MaxNative(longest, step);
            least = Vector256.MinNative(least, x2);
            greatest = Vector256.MaxNative(greatest, x2);
            // A sample less itself is 0, but NaN for what is not finite, and NaN stays.
            nothing += x2 - x2;
            (step * ((x1 + x2) * half)).CopyTo(areas[i..]);
            (step * x1).CopyTo(held[i..]);
            ((t2 - t0) * ((x0 + x2) * half)).CopyTo(wide[i..]);
            i += Vector256<double>.Count;
        }

        double longestOfAll = Lanes.Greatest(longest);
        double nothingOfAll = Vector256.Sum(nothing);
        extremes = (Lanes.Least(least), Lanes.Greatest(greatest));
        for (; i < count; i++)
        {
            var before = new TimedSample(times[i], samples[i]);
            var from = new TimedSample(times[i + 1], samples[i + 1]);
            var to = new TimedSample(times[i + 2], samples[i + 2]);
            longestOfAll = Math.Max(longestOfAll, to.Time - from.Time);
            nothingOfAll += to.Value - to.Value;
            extremes = (Math.Min(extremes.Least, to.Value), Math.Max(extremes.Greatest, to.Value));
            areas[i] = from.AreaTo(to);
            held[i] = from.HeldTo(to);
            wide[i] = before.AreaTo(to);
        }

        // The second sample is where the first of these areas begins.
        return nothingOfAll == 0 && longestOfAll <= longestStep && double.IsFinite(samples[0] + samples[1]);
    }
}
