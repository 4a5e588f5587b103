using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Studies;

/// <summary>What the page on study files shows is so.</summary>
public sealed partial class StudyFormatPageTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(Root(), "docs", "study-format.md"));

    [Fact]
    public void Example_StudyAndTables_AreReadWhole()
    {
        var csv = Blocks("csv");
        var files = new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["trials.csv"] = csv[0],
            ["readings.csv"] = csv[1],
        };

        var study = StudyJson.Read(
            Assert.Single(Blocks("json")),
            "study.json",
            path => new MemoryStream(Encoding.UTF8.GetBytes(files[path]))
        );

        Assert.Equal([0.3982, 0.3981, 0.4121], study.Trials.Select(trial => trial.RunTime.Seconds));
        Assert.Equal([0.03102, 0.0124], study.Readings.Select(reading => reading.Current.Amperes));
    }

    [Fact]
    public void Example_Faults_AreWordForWord()
    {
        var shown = Assert.Single(Blocks("text")).TrimEnd().Split('\n');
        var json = StudySample.ReadWithFaults(StudySample.With("\"160 MHz\"", "\"160\""));
        var csv = TrialCsv.ReadWithFaults(
            new StringReader(
                "setup;workload;timer;run time [ms]\nSchist wide 160;echo spectrum;ticks;1\nSchist wide 160;echo spectrum;ticks;2,4\n"
            ),
            "trials.csv",
            StudySample.Study,
            options: new CsvOptions { Delimiter = ';' }
        );

        Assert.Equal<string>(shown, [json.Faults.Single().Message, csv.Faults.Single().Message]);
    }

    [Theory]
    [InlineData("nesting in JSON", StudyLimits.NestingDepth)]
    [InlineData("characters in a JSON text or property name", StudyLimits.TextLength)]
    [InlineData("characters in a JSON number", StudyLimits.NumberLength)]
    [InlineData("characters in a quantity", McuBench.Core.Quantities.QuantityText.MaxLength)]
    [InlineData("characters in a name or note", Require.LongestName)]
    [InlineData("characters in a description", Require.LongestDescription)]
    [InlineData("characters in a table's path", StudyLimits.PathLength)]
    [InlineData("rows in a table", StudyLimits.Rows)]
    [InlineData("columns in a table", StudyLimits.Columns)]
    [InlineData("characters in a row", StudyLimits.RowLength)]
    [InlineData("characters in a field", StudyLimits.FieldLength)]
    [InlineData("faults listed (the rest are counted)", StudyLimits.FaultsListed)]
    public void Limits_Numbers_AreTheLibrarys(string what, int limit)
    {
        var row = Page.Split('\n').Single(line => line.StartsWith($"| {what} |", StringComparison.Ordinal));

        var shown = row.Split('|')[2].Replace(",", "", StringComparison.Ordinal).Trim();
        Assert.Equal(limit, int.Parse(shown, CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Properties_Listed_AreTheFormats()
    {
        var named = CodeWord()
            .Matches(Page)
            .Select(match => match.Groups["word"].Value)
            .ToHashSet(StringComparer.Ordinal);

        Assert.All(Names(McuBench.Core.Studies.Json.TransferShape.Document), name => Assert.Contains(name, named));

        static IEnumerable<string> Names(McuBench.Core.Studies.Json.TransferShape shape) =>
            shape
                .Properties.SelectMany(property => Names(property.Shape).Append(property.Name))
                .Concat(shape.Item is { } item ? Names(item) : []);
    }

    private static List<string> Blocks(string language) =>
        [
            .. Block()
                .Matches(Page)
                .Where(m => m.Groups["language"].ValueSpan.SequenceEqual(language))
                .Select(m => m.Groups["text"].Value),
        ];

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "McuBench.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests run outside the repository: no McuBench.slnx above them.");
    }

    [GeneratedRegex(
        @"^```(?<language>\w+)\n(?<text>.*?)^```",
        RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Block();

    [GeneratedRegex("`(?<word>[A-Za-z]+)`", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CodeWord();
}
