namespace McuBench.Core.Supply.Traces;

/// <summary>How a sample stands in a binary trace; always little-endian.</summary>
public enum SampleFormat
{
    /// <summary>Whole numbers of 16 bits, signed.</summary>
    Whole16,

    /// <summary>Whole numbers of 32 bits, signed.</summary>
    Whole32,

    /// <summary>Floating point of 32 bits.</summary>
    Floating32,

    /// <summary>Floating point of 64 bits.</summary>
    Floating64,
}
