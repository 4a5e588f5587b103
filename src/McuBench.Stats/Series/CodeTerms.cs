using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>Whole numbers of 32 bits, as converters give them.</summary>
internal readonly ref struct CodeTerms(ReadOnlySpan<int> codes) : ITerms
{
    private readonly ref int _first = ref MemoryMarshal.GetReference(codes);

    public static bool IsNarrow => false;

    public int Count { get; } = codes.Length;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector256<double> Four(int index)
    {
        Vector128<int> four = Vector128.LoadUnsafe(ref _first, (nuint)index);
        return Vector256.ConvertToDouble(Vector256.Create(Vector128.WidenLower(four), Vector128.WidenUpper(four)));
    }

    public double One(int index) => Unsafe.Add(ref _first, index);

    public Vector256<float> Eight(int index) => throw new NotSupportedException();
}
