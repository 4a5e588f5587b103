using System.Globalization;
using System.Text;

namespace McuBench.Core.Studies;

/// <summary>One thing wrong in a study file: where it stands, what it is, and how to put it right.</summary>
/// <remarks>Immutable; equal when all properties are equal. Whatever it quotes from the file is cut after 40 characters
/// and has its control and invisible characters escaped, so that its message always stays on one line.</remarks>
public sealed record StudyFault
{
    internal StudyFault(string sourceName, string problem, string? mend = null)
    {
        SourceName = string.Concat(sourceName.Select(c => char.IsControl(c) ? '\uFFFD' : c));
        Problem = problem;
        Mend = mend;
    }

    /// <summary>The name of the file or stream, as the caller or the study gave it, control characters
    /// replaced.</summary>
    public string SourceName { get; }

    /// <summary>The line, from 1; absent where the fault is of the file as a whole.</summary>
    public int? Line { get; init; }

    /// <summary>In JSON the character in the line, from 1; in a table the column, from 1, as a spreadsheet counts.</summary>
    public int? Column { get; init; }

    /// <summary>Where in the JSON document: <c>$.setups[2].clock.frequency</c>; absent for tables.</summary>
    public string? JsonPath { get; init; }

    /// <summary>The head of the table's column; absent for JSON.</summary>
    public string? ColumnHead { get; init; }

    /// <summary>The offending text, shortened and escaped, where there is one.</summary>
    public string? Offending { get; init; }

    /// <summary>What is wrong, as a sentence.</summary>
    public string Problem { get; }

    /// <summary>How to put it right, as a sentence; absent where the problem states the rule itself.</summary>
    public string? Mend { get; }

    /// <summary>All of it in one line: <c>study.json, line 41, column 30, $.setups[2].clock.frequency: … .</c></summary>
    public string Message
    {
        get
        {
            var message = new StringBuilder(SourceName);
            if (Line is { } line)
            {
                message.Append(CultureInfo.InvariantCulture, $", line {line}");
            }

            if (Column is { } column)
            {
                message.Append(CultureInfo.InvariantCulture, $", column {column}");
            }

            if (ColumnHead is { } head)
            {
                message.Append(CultureInfo.InvariantCulture, $" \"{head}\"");
            }

            if (JsonPath is { } path)
            {
                message.Append(CultureInfo.InvariantCulture, $", {path}");
            }

            message.Append(CultureInfo.InvariantCulture, $": {Problem}");
            return Mend is null ? message.ToString() : message.Append(' ').Append(Mend).ToString();
        }
    }

    /// <summary>The message.</summary>
    public override string ToString() => Message;
}
