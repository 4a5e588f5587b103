using System.Text;
using McuBench.Core.Quantities;
using McuBench.Core.Studies;

namespace McuBench.Core.Capture;

/// <summary>What a journal holds.</summary>
/// <remarks>Immutable.</remarks>
public sealed class JournalContents
{
    private JournalContents(Study study, IReadOnlyList<string> notes, JournalCut? cut)
    {
        Study = study;
        Notes = notes;
        Cut = cut;
    }

    /// <summary>The study: the frame, and every trial and reading in the order in which they were taken.</summary>
    public Study Study { get; }

    /// <summary>The notes, in order.</summary>
    public IReadOnlyList<string> Notes { get; }

    /// <summary>What a crash left of a line at the end; absent where all lines are whole.</summary>
    public JournalCut? Cut { get; }

    internal static JournalContents Of(JournalScan scan, string sourceName)
    {
        var entries = scan.Entries;
        var trials = new List<ReadOnlyMemory<byte>>();
        var readings = new List<ReadOnlyMemory<byte>>();
        var notes = new List<string>();
        for (var i = 1; i < entries.Count; i++)
        {
            if (JournalEntry.Trial(entries[i]) is { } trial)
            {
                trials.Add(trial);
            }
            else if (JournalEntry.Reading(entries[i]) is { } reading)
            {
                readings.Add(reading);
            }
            else if (JournalEntry.Note(entries[i]) is { } note)
            {
                notes.Add(note);
            }
            else
            {
                throw new JournalFormatException(
                    sourceName,
                    i + 1,
                    scan.Offsets[i],
                    $"The entry {Excerpt.Quoted(Encoding.UTF8.GetString(entries[i].Span))} is of a kind that isn't known here. A later version of the library may have written it."
                );
            }
        }

        using var json = new MemoryStream(JournalEntry.Joined(JournalEntry.Frame(entries[0])!.Value, trials, readings));
        return new JournalContents(StudyJson.Read(json, sourceName), notes.AsReadOnly(), scan.Cut);
    }
}
