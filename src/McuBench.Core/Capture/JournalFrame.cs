using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Capture;

/// <summary>The study without its trials and readings, which a journal's first line holds.</summary>
internal static class JournalFrame
{
    public static Study Of(Study study) => With(study, [], []);

    /// <summary>Refuses what refers to something that the frame doesn't list, in the study's own words.</summary>
    public static void Admit(Study frame, Trial[] trials, SupplyReading[] readings) => With(frame, trials, readings);

    /// <summary>The first lines of a journal: the frame, and what it already holds.</summary>
    public static byte[] LinesOf(Study study)
    {
        using var lines = new MemoryStream();
        var check = JournalLine.Beginning;
        Put(JournalEntry.OfFrame(Of(study)));
        foreach (var trial in study.Trials)
        {
            Put(JournalEntry.Of(trial));
        }

        foreach (var reading in study.Readings)
        {
            Put(JournalEntry.Of(reading));
        }

        return lines.ToArray();

        void Put(byte[] entry) => lines.Write(JournalLine.Of(entry, check, out check));
    }

    private static Study With(Study study, Trial[] trials, SupplyReading[] readings) =>
        new(study.Title, study.Boards, study.Setups, study.Workloads, study.Timers, study.Meters, trials, readings)
        {
            Description = study.Description,
            IsInvented = study.IsInvented,
        };
}
