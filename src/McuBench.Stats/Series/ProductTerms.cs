using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>Products of samples taken at the same times, each rounded once.</summary>
internal readonly ref struct ProductTerms(ReadOnlySpan<double> samples, ReadOnlySpan<double> others) : ITerms
{
    private readonly ref double _first = ref MemoryMarshal.GetReference(samples);
    private readonly ref double _other = ref MemoryMarshal.GetReference(others);

    public static bool IsNarrow => false;

    public int Count { get; } = samples.Length;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Four(int index) =>
        Vector256.LoadUnsafe(ref _first, (nuint)index) * Vector256.LoadUnsafe(ref _other, (nuint)index);

    public double One(int index) => Unsafe.Add(ref _first, index) * Unsafe.Add(ref _other, index);

    public Vector256<float> Eight(int index) => throw new NotSupportedException();
}
