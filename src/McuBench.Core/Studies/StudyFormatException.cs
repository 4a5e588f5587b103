using System.Globalization;

namespace McuBench.Core.Studies;

/// <summary>A study file, or a table of trials or readings, that can't be taken as it is.</summary>
/// <remarks>The message is one line, the first fault's. The properties are the first fault's too; <see cref="Faults"/>
/// lists them all, up to <see cref="StudyLimits.FaultsListed"/>.</remarks>
public sealed class StudyFormatException : FormatException
{
    internal StudyFormatException(IReadOnlyList<StudyFault> faults, int count)
        : base(MessageOf(faults[0], count))
    {
        Faults = faults;
        FaultCount = count;
    }

    /// <summary>The faults in the order found, at least one, at most <see cref="StudyLimits.FaultsListed"/>.</summary>
    public IReadOnlyList<StudyFault> Faults { get; }

    /// <summary>How many faults were found, those not listed included.</summary>
    public int FaultCount { get; }

    /// <summary>The name of the file or stream.</summary>
    public string SourceName => Faults[0].SourceName;

    /// <summary>The line, from 1; absent where the fault is of the file as a whole.</summary>
    public int? Line => Faults[0].Line;

    /// <summary>In JSON the character in the line, in a table the column; from 1.</summary>
    public int? Column => Faults[0].Column;

    /// <summary>Where in the JSON document; absent for tables.</summary>
    public string? JsonPath => Faults[0].JsonPath;

    /// <summary>The head of the table's column; absent for JSON.</summary>
    public string? ColumnHead => Faults[0].ColumnHead;

    /// <summary>The offending text, shortened and escaped, where there is one.</summary>
    public string? Offending => Faults[0].Offending;

    /// <summary>How to put it right; absent where the message states the rule itself.</summary>
    public string? Mend => Faults[0].Mend;

    private static string MessageOf(StudyFault first, int count) =>
        count == 1
            ? first.Message
            : string.Create(CultureInfo.InvariantCulture, $"{first.Message} (The first of {count} faults.)");
}
