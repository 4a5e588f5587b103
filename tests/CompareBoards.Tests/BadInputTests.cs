using System.Text;

namespace CompareBoards.Tests;

/// <summary>Whatever is wrong with a study: one clear line, exit code 2, nothing printed, nothing written.</summary>
public sealed class BadInputTests
{
    public static TheoryData<string, string, string> Spoilt =>
        new()
        {
            { "missing unit", SmallStudy.With("\"160 MHz\"", "\"160\""), "unit" },
            { "bare number", SmallStudy.With("\"160 MHz\"", "160"), "$.setups[0].clock.frequency" },
            { "negative time", SmallStudy.With("1.201 s", "-1.201 s"), "$.trials[0].runTime" },
            { "time of zero", SmallStudy.With("1.201 s", "0 s"), "$.trials[0].runTime" },
            { "NaN", SmallStudy.With("1.201 s", "NaN s"), "$.trials[0].runTime" },
            { "NaN as number", SmallStudy.With("\"1.201 s\"", "NaN"), "study.json" },
            {
                "duplicate setup name",
                SmallStudy.With("\"Chert slow\", \"board\"", "\"Gneiss fast\", \"board\""),
                "Gneiss fast"
            },
            { "unknown setup", SmallStudy.With("\"setup\": \"Chert slow\"", "\"setup\": \"Flint\""), "Flint" },
            { "clock of 0 Hz", SmallStudy.With("80 MHz", "0 Hz"), "$.setups[1].clock.frequency" },
            { "cut in half", SmallStudy.Json[..(SmallStudy.Json.Length / 2)], "study.json" },
            {
                "100 levels of nesting",
                SmallStudy.With("\"Two invented boards\"", new string('[', 100) + new string(']', 100)),
                "study.json"
            },
            { "100 levels of nesting at the root", new string('[', 100), "study.json" },
            {
                "10 MB of digits in a number",
                SmallStudy.With("100 }", $"{new string('7', 10_000_000)} }}"),
                "study.json"
            },
            {
                "10 MB of digits in a text",
                SmallStudy.With("1.201 s", $"1.{new string('7', 10_000_000)} s"),
                "study.json"
            },
            { "empty file", "", "study.json" },
            { "blanks only", " \n\n ", "study.json" },
            { "not JSON", "run;time\n1;2\n", "study.json" },
            { "a list", "[]", "study.json" },
            { "no table where one is named", SmallStudy.WithTable().Json, "trials.csv" },
        };

    public static TheoryData<string, string, string> SpoiltTables
    {
        get
        {
            var sound = SmallStudy.WithTable().Csv;
            return new()
            {
                { "empty", "", "trials.csv" },
                {
                    "head without unit",
                    sound.Replace("run time [s]", "run time", StringComparison.Ordinal),
                    "run time"
                },
                { "negative time", sound.Replace("1.201", "-1.201", StringComparison.Ordinal), "trials.csv" },
                { "NaN", sound.Replace("1.201", "NaN", StringComparison.Ordinal), "trials.csv" },
                { "decimal comma", sound.Replace("1.201", "\"1,201\"", StringComparison.Ordinal), "trials.csv" },
                { "unknown setup", sound.Replace("Chert slow", "Flint", StringComparison.Ordinal), "Flint" },
                { "cut in the middle of a row", sound[..^20], "trials.csv" },
                {
                    "10 MB of digits",
                    sound.Replace("1.201", "1." + new string('7', 10_000_000), StringComparison.Ordinal),
                    "trials.csv"
                },
            };
        }
    }

    [Theory]
    [MemberData(nameof(Spoilt), DisableDiscoveryEnumeration = true)]
    public void Run_SpoiltStudy_RefusesInOneLine(string fault, string json, string named)
    {
        using var run = new ProgramRun();

        AssertRefused(run, run.Run(run.Write("study.json", json)), fault, named);
    }

    [Theory]
    [MemberData(nameof(SpoiltTables), DisableDiscoveryEnumeration = true)]
    public void Run_SpoiltTable_RefusesInOneLine(string fault, string csv, string named)
    {
        using var run = new ProgramRun();
        run.Write("trials.csv", csv);

        AssertRefused(run, run.Run(run.Write("study.json", SmallStudy.WithTable().Json)), fault, named);
    }

    [Fact]
    public void Run_Utf16_RefusesInOneLine()
    {
        using var run = new ProgramRun();
        var path = run.PathOf("study.json");
        File.WriteAllText(path, SmallStudy.Json, Encoding.Unicode);

        AssertRefused(run, run.Run(path), "UTF-16", "UTF-");
    }

    [Fact]
    public void Run_Utf16WithoutMark_RefusesInOneLine()
    {
        using var run = new ProgramRun();
        var path = run.PathOf("study.json");
        File.WriteAllBytes(path, Encoding.BigEndianUnicode.GetBytes(SmallStudy.Json));

        AssertRefused(run, run.Run(path), "UTF-16", "study.json");
    }

    [Fact]
    public void Run_NoSuchFile_RefusesInOneLine()
    {
        using var run = new ProgramRun();

        AssertRefused(run, run.Run(run.PathOf("nowhere.json")), "no file", "nowhere.json");
    }

    [Fact]
    public void Run_FolderWithoutStudy_RefusesInOneLine()
    {
        using var run = new ProgramRun();
        var folder = Directory.CreateDirectory(run.PathOf("empty")).FullName;

        AssertRefused(run, run.Run(folder), "no study in the folder", "study.json");
    }

    [Fact]
    public void Run_NameWithControlCharacters_CannotForgeALine()
    {
        using var run = new ProgramRun();
        var json = SmallStudy.With("\"Gneiss fast\", \"board\"", "\"Gneiss\\nfast\\u001b[2J\", \"board\"");

        AssertRefused(run, run.Run(run.Write("study.json", json)), "control characters", "study.json");
        Assert.DoesNotContain('\u001b', run.Error);
    }

    private static void AssertRefused(ProgramRun run, int code, string fault, string named)
    {
        Assert.True(code == ExitCode.BadInput, $"{fault}: exit code {code}, {run.Error}");
        Assert.Empty(run.Output);
        Assert.StartsWith("compare-boards: ", run.Error, StringComparison.Ordinal);
        Assert.EndsWith("\n", run.Error, StringComparison.Ordinal);
        Assert.Equal(1, run.Error.Count(c => c is '\n' or '\r'));
        Assert.Contains(named, run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", run.Error, StringComparison.Ordinal);
        Assert.True(run.Error.Length < 1000, $"{fault}: {run.Error.Length} characters");
        Assert.False(Directory.Exists(run.ReportFolder), fault);
    }
}
