namespace CompareBoards.Tests;

public sealed class ApplicationTests
{
    [Fact]
    public void Run_SoundStudy_PrintsAndWritesTheReport()
    {
        using var run = new ProgramRun();

        var code = run.Run(run.Write("study.json", SmallStudy.Json));

        Assert.Equal(ExitCode.Done, code);
        Assert.Empty(run.Error);
        Assert.Contains("Gneiss fast", run.Output, StringComparison.Ordinal);
        Assert.Contains(run.ReportFolder, run.Output, StringComparison.Ordinal);
        Assert.Equal(
            [
                "ratios-sorting.png",
                "ratios-sorting.svg",
                "report.html",
                "run-times-sorting.png",
                "run-times-sorting.svg",
            ],
            Directory.GetFiles(run.ReportFolder).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void Run_StudyWithTable_ReadsIt()
    {
        using var run = new ProgramRun();
        var (json, csv) = SmallStudy.WithTable();
        run.Write("trials.csv", csv);
        run.Write("study.json", json);

        Assert.Equal(ExitCode.Done, run.Run(run.PathOf(".")));
        Assert.Contains("Chert slow", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_Twice_GivesTheSameBytes()
    {
        using var first = new ProgramRun();
        using var second = new ProgramRun();
        Assert.Equal(ExitCode.Done, first.Run(first.Write("study.json", SmallStudy.Json)));
        Assert.Equal(ExitCode.Done, second.Run(second.Write("study.json", SmallStudy.Json)));

        foreach (var file in Directory.GetFiles(first.ReportFolder))
        {
            var other = Path.Combine(second.ReportFolder, Path.GetFileName(file));
            Assert.Equal(File.ReadAllBytes(file), File.ReadAllBytes(other));
        }
    }

    [Fact]
    public void Run_NamesThatAreMarkup_AreText()
    {
        using var run = new ProgramRun();
        var json = SmallStudy.Json.Replace("Gneiss fast", "<script>alert(1)</script>", StringComparison.Ordinal);

        Assert.Equal(ExitCode.Done, run.Run(run.Write("study.json", json)));
        foreach (
            var file in Directory
                .GetFiles(run.ReportFolder)
                .Where(file => !file.EndsWith(".png", StringComparison.Ordinal))
        )
        {
            Assert.DoesNotContain("<script>alert", File.ReadAllText(file), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Run_OnAReport_MakesTheSameReportOfTheStudyInIt()
    {
        using var first = new ProgramRun();
        using var second = new ProgramRun();
        first.Run(first.Write("study.json", SmallStudy.Json));
        var page = Path.Combine(first.ReportFolder, "report.html");

        Assert.Equal(ExitCode.Done, second.Run(page));
        Assert.Equal(File.ReadAllText(page), File.ReadAllText(Path.Combine(second.ReportFolder, "report.html")));
    }

    [Fact]
    public void Run_OnAPageWithoutStudy_SaysWhatToGive()
    {
        using var run = new ProgramRun();

        Assert.Equal(ExitCode.BadInput, run.Run(run.Write("page.html", "<p>nothing</p>")));
        Assert.Equal(
            "compare-boards: page.html: The page encloses no study. Give a report that this library wrote, or the study's own file.\n",
            run.Error
        );
    }

    [Fact]
    public void Run_Cancelled_SaysSoAndWritesNothing()
    {
        using var run = new ProgramRun();

        var code = run.Run(new CancellationToken(canceled: true), run.Write("study.json", SmallStudy.Json));

        Assert.Equal(ExitCode.Cancelled, code);
        Assert.Equal("compare-boards: Stopped; no report was written.\n", run.Error);
        Assert.False(Directory.Exists(run.ReportFolder));
    }

    [Theory]
    [InlineData("--margin 2", "2%")]
    [InlineData("--margin 0%", "0 %")]
    [InlineData("--margin 150%", "150 %")]
    [InlineData("--margin --confidence 90%", "--confidence")]
    [InlineData("--confidence 95", "such as 2%")]
    [InlineData("--confidence 100%", "0.9999")]
    [InlineData("--frobnicate", "--frobnicate")]
    [InlineData("another.json", "another.json")]
    public void Run_WrongCommandLine_RefusesInOneLine(string words, string named)
    {
        using var run = new ProgramRun();

        var code = run.Run([run.Write("study.json", SmallStudy.Json), .. words.Split(' ')]);

        Assert.Equal(ExitCode.BadInput, code);
        Assert.Empty(run.Output);
        Assert.Equal(1, run.Error.Count(c => c == '\n'));
        Assert.Contains(named, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(run.ReportFolder));
    }

    [Fact]
    public void Run_UnknownOptionAlone_IsNotTakenForAFile()
    {
        using var run = new ProgramRun();

        Assert.Equal(ExitCode.BadInput, run.Run("--frobnicate"));
        Assert.Equal("compare-boards: There is no option --frobnicate. See --help.\n", run.Error);
    }

    [Fact]
    public void Run_ReportFolderIsAFile_RefusesInOneLine()
    {
        using var run = new ProgramRun();
        run.Write("report", "in the way");

        Assert.Equal(ExitCode.BadInput, run.Run(run.Write("study.json", SmallStudy.Json)));
        Assert.Contains(run.ReportFolder, run.Error, StringComparison.Ordinal);
        Assert.Equal(1, run.Error.Count(c => c == '\n'));
        Assert.Empty(run.Output);
    }

    [Fact]
    public void Run_OtherConfidence_StandsInTheReport()
    {
        using var run = new ProgramRun();

        Assert.Equal(ExitCode.Done, run.Run(run.Write("study.json", SmallStudy.Json), "--confidence", "99%"));
        var page = File.ReadAllText(Path.Combine(run.ReportFolder, "report.html"));
        Assert.Contains("99\u00A0% interval", page, StringComparison.Ordinal);
        Assert.DoesNotContain("95\u00A0%", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Run_Help_PrintsOptionsAndWritesNothing()
    {
        using var run = new ProgramRun();

        Assert.Equal(ExitCode.Done, run.Run("--help"));
        Assert.Empty(run.Error);
        foreach (var option in (ReadOnlySpan<string>)["--out", "--margin", "--confidence", "--version"])
        {
            Assert.Contains(option, run.Output, StringComparison.Ordinal);
        }

        Assert.False(Directory.Exists(run.ReportFolder));
    }
}
