using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>Products of samples in single precision: 48 bits, which a double holds exactly.</summary>
internal readonly ref struct SingleProductTerms(ReadOnlySpan<float> samples, ReadOnlySpan<float> others) : ITerms
{
    private readonly ref float _first = ref MemoryMarshal.GetReference(samples);
    private readonly ref float _other = ref MemoryMarshal.GetReference(others);

    public static bool IsNarrow => false;

    public int Count { get; } = samples.Length;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Four(int index) =>
        SingleTerms.Wide(ref _first, index) * SingleTerms.Wide(ref _other, index);

    public double One(int index) => (double)Unsafe.Add(ref _first, index) * Unsafe.Add(ref _other, index);

    public Vector256<float> Eight(int index) => throw new NotSupportedException();
}
