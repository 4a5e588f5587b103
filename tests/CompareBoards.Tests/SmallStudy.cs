using System.Globalization;
using System.Text;

namespace CompareBoards.Tests;

/// <summary>A small sound study as text, to be spoilt in one place at a time.</summary>
internal static class SmallStudy
{
    public const string Json = """
        {
          "format": "McuBench study",
          "version": 1,
          "title": "Two invented boards",
          "boards": [{ "name": "Gneiss" }, { "name": "Chert" }],
          "setups": [
            { "name": "Gneiss fast", "board": "Gneiss", "clock": { "frequency": "160 MHz", "tolerance": "50 ppm" } },
            { "name": "Chert slow", "board": "Chert", "clock": { "frequency": "80 MHz", "tolerance": "50 ppm" } }
          ],
          "workloads": [{ "name": "sorting", "workItemsPerRun": 100 }],
          "timers": [{ "name": "counter", "resolution": "1 ms", "reading": "rounded", "tolerance": "50 ppm" }],
          "trials": [
            { "setup": "Gneiss fast", "workload": "sorting", "timer": "counter", "runTime": "1.201 s" },
            { "setup": "Gneiss fast", "workload": "sorting", "timer": "counter", "runTime": "1.199 s" },
            { "setup": "Gneiss fast", "workload": "sorting", "timer": "counter", "runTime": "1.202 s" },
            { "setup": "Chert slow", "workload": "sorting", "timer": "counter", "runTime": "2.398 s" },
            { "setup": "Chert slow", "workload": "sorting", "timer": "counter", "runTime": "2.402 s" },
            { "setup": "Chert slow", "workload": "sorting", "timer": "counter", "runTime": "2.401 s" }
          ]
        }
        """;

    /// <summary>The study with one text put in another's place.</summary>
    public static string With(string old, string fresh)
    {
        Assert.Contains(old, Json, StringComparison.Ordinal);
        return Json.Replace(old, fresh, StringComparison.Ordinal);
    }

    /// <summary>The study's trials in a table beside it: the JSON and the CSV.</summary>
    public static (string Json, string Csv) WithTable()
    {
        var json =
            Json[..Json.IndexOf("\"trials\"", StringComparison.Ordinal)]
            + "\"trialFiles\": [{ \"path\": \"trials.csv\" }]\n}";
        var csv = new StringBuilder("setup,workload,timer,run time [s]\n");
        foreach (var (setup, seconds) in (ReadOnlySpan<(string, double)>)[("Gneiss fast", 1.2), ("Chert slow", 2.4)])
        {
            for (var i = 0; i < 3; i++)
            {
                csv.Append(CultureInfo.InvariantCulture, $"{setup},sorting,counter,{seconds + i * 0.001:F3}\n");
            }
        }

        return (json, csv.ToString());
    }
}
