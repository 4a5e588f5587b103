using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace McuBench.Stats.Series;

/// <summary>Samples in single precision, which a double holds exactly.</summary>
internal readonly ref struct SingleTerms(ReadOnlySpan<float> samples) : ITerms
{
    private readonly ref float _first = ref MemoryMarshal.GetReference(samples);

    public static bool IsNarrow => true;

    public int Count { get; } = samples.Length;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Four(int index) => Wide(ref _first, index);

    public double One(int index) => Unsafe.Add(ref _first, index);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<float> Eight(int index) => Vector256.LoadUnsafe(ref _first, (nuint)index);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector256<double> Wide(ref float first, int index)
    {
        Vector128<float> four = Vector128.LoadUnsafe(ref first, (nuint)index);
        return Avx.IsSupported
            ? Avx.ConvertToVector256Double(four)
            : Vector256.Create(Vector128.WidenLower(four), Vector128.WidenUpper(four));
    }
}
