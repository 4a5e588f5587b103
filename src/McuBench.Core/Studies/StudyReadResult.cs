namespace McuBench.Core.Studies;

/// <summary>What could be read of a study, and all that was wrong with the rest.</summary>
/// <remarks>Immutable. A thing with a fault is left out, and so is whatever refers to it: no value is guessed.</remarks>
public sealed class StudyReadResult
{
    internal StudyReadResult(Study? study, FaultList faults, int trialsLeftOut, int readingsLeftOut)
    {
        Study = study;
        Faults = faults.Listed;
        FaultCount = faults.Count;
        TrialsLeftOut = trialsLeftOut;
        ReadingsLeftOut = readingsLeftOut;
    }

    /// <summary>The study of everything without a fault; absent where the file says it is of another format or version, or
    /// is no JSON object, or where title or description can't be used.</summary>
    public Study? Study { get; }

    /// <summary>The faults in the order found, at most <see cref="StudyLimits.FaultsListed"/>; empty where all is well.</summary>
    public IReadOnlyList<StudyFault> Faults { get; }

    /// <summary>How many faults were found, those not listed included.</summary>
    public int FaultCount { get; }

    /// <summary>How many trials were met and left out, for a fault of their own or of what they refer to.</summary>
    public int TrialsLeftOut { get; }

    /// <summary>How many supply readings were met and left out, for a fault of their own or of what they refer to.</summary>
    public int ReadingsLeftOut { get; }

    /// <summary>The study, if nothing at all was wrong.</summary>
    /// <exception cref="StudyFormatException">There is a fault.</exception>
    public Study OrThrow() => FaultCount == 0 ? Study! : throw new StudyFormatException(Faults, FaultCount);
}
