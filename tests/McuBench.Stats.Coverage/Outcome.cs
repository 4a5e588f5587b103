using System.Runtime.InteropServices;

namespace McuBench.Stats.Coverage;

/// <summary>What a procedure came to in one run.</summary>
/// <param name="Happened">For an interval, whether it held the truth; for a test, whether it rejected what is true.</param>
/// <param name="Width">The interval's width; 0 for a test.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Outcome(bool Happened, double Width);
