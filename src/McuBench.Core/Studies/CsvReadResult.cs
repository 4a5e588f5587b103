namespace McuBench.Core.Studies;

/// <summary>The rows of a table that could be read, and all that was wrong with the rest.</summary>
/// <typeparam name="T">What a row stands for: a trial or a supply reading.</typeparam>
/// <remarks>Immutable. A row with a fault is left out whole: no value is guessed.</remarks>
public sealed class CsvReadResult<T>
    where T : class
{
    internal CsvReadResult(IReadOnlyList<T> rows, int rowsMet, FaultList faults)
    {
        Rows = rows;
        RowsLeftOut = rowsMet - rows.Count;
        Faults = faults.Listed;
        FaultCount = faults.Count;
    }

    /// <summary>The sound rows, in the table's order.</summary>
    public IReadOnlyList<T> Rows { get; }

    /// <summary>How many rows were met and left out.</summary>
    public int RowsLeftOut { get; }

    /// <summary>The faults in the order found, at most <see cref="StudyLimits.FaultsListed"/>; empty where all is well.</summary>
    public IReadOnlyList<StudyFault> Faults { get; }

    /// <summary>How many faults were found, those not listed included.</summary>
    public int FaultCount { get; }

    /// <summary>The rows, if nothing at all was wrong.</summary>
    /// <exception cref="StudyFormatException">There is a fault.</exception>
    public IReadOnlyList<T> OrThrow() => FaultCount == 0 ? Rows : throw new StudyFormatException(Faults, FaultCount);
}
