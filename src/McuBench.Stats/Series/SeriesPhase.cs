using System.Runtime.InteropServices;

namespace McuBench.Stats.Series;

/// <summary>A stretch of a series in which a signal is high, or low, throughout.</summary>
/// <param name="IsHigh">Whether the signal is high.</param>
/// <param name="First">The place of its first sample, from 0.</param>
/// <param name="Count">The number of its samples, those of shorter changes that don't count included.</param>
/// <param name="FirstSum">The sum over its samples of the first amount given with each; of the signal itself where no
/// amounts were given.</param>
/// <param name="SecondSum">Likewise of the second amount; 0 where none was given.</param>
/// <param name="ThirdSum">Likewise of the third amount; 0 where none was given.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct SeriesPhase(
    bool IsHigh,
    long First,
    long Count,
    double FirstSum,
    double SecondSum,
    double ThirdSum
);
