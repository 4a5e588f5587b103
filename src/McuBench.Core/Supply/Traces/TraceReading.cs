using McuBench.Core.Studies;

namespace McuBench.Core.Supply.Traces;

/// <summary>How the reading of a trace went: how much of it was given to the consumer, and what was wrong.</summary>
/// <remarks>Immutable.</remarks>
public sealed class TraceReading
{
    internal TraceReading(long samples, long rowsLeftOut, FaultList faults)
    {
        Samples = samples;
        RowsLeftOut = rowsLeftOut;
        Faults = faults.Listed;
        FaultCount = faults.Count;
    }

    /// <summary>How many samples the consumer was given, missing ones included.</summary>
    public long Samples { get; }

    /// <summary>How many rows were left out, each of them a gap.</summary>
    public long RowsLeftOut { get; }

    /// <summary>The faults in the order found, at most <see cref="StudyLimits.FaultsListed"/>; empty where all is well.</summary>
    public IReadOnlyList<StudyFault> Faults { get; }

    /// <summary>How many faults were found, those not listed included.</summary>
    public int FaultCount { get; }

    /// <summary>This, if nothing at all was wrong.</summary>
    /// <exception cref="StudyFormatException">There is a fault.</exception>
    public TraceReading OrThrow() => FaultCount == 0 ? this : throw new StudyFormatException(Faults, FaultCount);
}
