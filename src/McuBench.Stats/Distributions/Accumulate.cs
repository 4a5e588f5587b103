using System.Numerics;
using System.Runtime.InteropServices;

namespace McuBench.Stats.Distributions;

/// <summary>The inner loop of the rank distributions.</summary>
internal static class Accumulate
{
    /// <summary>Adds a multiple of one span to the beginning of another, which doesn't overlap it.</summary>
    internal static void AddMultiple(ReadOnlySpan<double> source, double factor, Span<double> target)
    {
        target = target[..source.Length];
        var sources = MemoryMarshal.Cast<double, Vector<double>>(source);
        var targets = MemoryMarshal.Cast<double, Vector<double>>(target);
        for (var i = 0; i < sources.Length; i++)
        {
            targets[i] += sources[i] * factor;
        }

        for (var i = sources.Length * Vector<double>.Count; i < source.Length; i++)
        {
            target[i] += source[i] * factor;
        }
    }
}
