using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply.Traces;

/// <summary>How a binary trace is laid out: samples at equal steps, one behind the other, each a current, or a current and
/// a voltage.</summary>
/// <remarks>Immutable; quantities are held in SI units. Safe to use from many threads.</remarks>
public sealed record BinaryTraceLayout
{
    /// <summary>Makes a layout of currents alone.</summary>
    /// <param name="format">How each number stands in the file.</param>
    /// <param name="samplePeriod">The time from one sample to the next, above zero.</param>
    /// <param name="currentStep">The current that 1 stands for, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A quantity is not above zero, or the format is not defined.</exception>
    public BinaryTraceLayout(SampleFormat format, Duration samplePeriod, ElectricCurrent currentStep)
    {
        Format = Require.Defined(format, "Sample format", nameof(format));
        SamplePeriod = Require.Positive(samplePeriod, "Sample period", nameof(samplePeriod));
        CurrentStep = Require.Positive(currentStep, "Current that 1 stands for", nameof(currentStep));
    }

    /// <summary>How each number stands in the file.</summary>
    public SampleFormat Format { get; }

    /// <summary>The time from one sample to the next, in seconds.</summary>
    public Duration SamplePeriod { get; }

    /// <summary>The current that 1 stands for, in amperes.</summary>
    public ElectricCurrent CurrentStep { get; }

    /// <summary>The current that 0 stands for; zero unless given.</summary>
    public ElectricCurrent CurrentAtZero
    {
        get;
        init => field = Si.Normalized(value, nameof(CurrentAtZero));
    } = ElectricCurrent.FromAmperes(0);

    /// <summary>The voltage that 1 stands for, where each current is followed by a voltage; absent where none is.</summary>
    public ElectricPotential? VoltageStep
    {
        get;
        init =>
            field = value is { } step ? Require.Positive(step, "Voltage that 1 stands for", nameof(VoltageStep)) : null;
    }

    /// <summary>The voltage that 0 stands for; zero unless given.</summary>
    public ElectricPotential VoltageAtZero
    {
        get;
        init => field = Si.Normalized(value, nameof(VoltageAtZero));
    } = ElectricPotential.FromVolts(0);

    /// <summary>How many bytes the file has before the first sample.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is below 0.</exception>
    public int HeadLength
    {
        get;
        init => field = (int)Require.AtLeast(value, 0, "Length of the head", nameof(HeadLength));
    }

    internal int NumberLength =>
        Format is SampleFormat.Whole16 ? 2
        : Format is SampleFormat.Floating64 ? 8
        : 4;

    internal int Channels => VoltageStep is null ? 1 : 2;
}
