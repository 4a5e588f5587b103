using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>The samples themselves.</summary>
internal readonly ref struct SampleTerms(ReadOnlySpan<double> samples) : ITerms
{
    private readonly ref double _first = ref MemoryMarshal.GetReference(samples);

    public static bool IsNarrow => false;

    public int Count { get; } = samples.Length;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Four(int index) => Vector256.LoadUnsafe(ref _first, (nuint)index);

    public double One(int index) => Unsafe.Add(ref _first, index);

    public Vector256<float> Eight(int index) => throw new NotSupportedException();
}
