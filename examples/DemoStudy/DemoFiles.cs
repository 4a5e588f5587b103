using McuBench.Core.Capture;
using McuBench.Core.Studies;

namespace DemoStudy;

/// <summary>The demo study as files.</summary>
public static class DemoFiles
{
    /// <summary>The names of the files.</summary>
    public static IReadOnlyList<string> Names { get; } = ["study.json", "trials.csv", "readings.csv"];

    /// <summary>Writes the committed study into a folder.</summary>
    public static void WriteTo(string folder) =>
        StudyFile.Write(
            Path.Combine(folder, Names[0]),
            DemoData.Make(),
            new StudyTables { Trials = Names[1], Readings = Names[2] }
        );
}
