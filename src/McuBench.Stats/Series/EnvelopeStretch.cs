using System.Runtime.InteropServices;

namespace McuBench.Stats.Series;

/// <summary>Some samples that follow one another, as the range that they span.</summary>
/// <param name="First">The place of the first, from 0.</param>
/// <param name="Count">How many there are, missing ones included.</param>
/// <param name="Least">The least of them; positive infinity where all are missing.</param>
/// <param name="Greatest">The greatest of them; negative infinity where all are missing.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct EnvelopeStretch(long First, long Count, double Least, double Greatest);
