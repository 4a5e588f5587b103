using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>The least and the greatest among the lanes of a vector without NaN. Without a call, so that what a loop
/// keeps in registers stays there.</summary>
internal static class Lanes
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Least(Vector256<double> lanes)
    {
        Vector128<double> two = Vector128.MinNative(lanes.GetLower(), lanes.GetUpper());
        return two[0] < two[1] ? two[0] : two[1];
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Greatest(Vector256<double> lanes) => -Least(-lanes);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Least(Vector256<float> lanes)
    {
        Vector128<float> four = Vector128.MinNative(lanes.GetLower(), lanes.GetUpper());
        float first = four[0] < four[1] ? four[0] : four[1];
        float second = four[2] < four[3] ? four[2] : four[3];
        return first < second ? first : second;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Greatest(Vector256<float> lanes) => -Least(-lanes);
}
