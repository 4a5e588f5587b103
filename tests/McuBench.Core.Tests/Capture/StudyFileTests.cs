using McuBench.Core.Capture;
using McuBench.Core.Studies;
using McuBench.Core.Tests.Studies;

namespace McuBench.Core.Tests.Capture;

public sealed class StudyFileTests
{
    [Fact]
    public void Write_Study_ReadsBackEqual()
    {
        using var folder = new TemporaryFolder();
        var path = folder.PathOf("study.json");

        StudyFile.Write(path, StudySample.Study);

        Assert.Equal(StudySample.Json, File.ReadAllText(path));
        Assert.Equal(StudySample.Study, StudyFile.Read(path));
        Assert.Equal(["study.json"], folder.Names);
    }

    [Fact]
    public void Write_WithTables_ReadsBackEqual()
    {
        using var folder = new TemporaryFolder();
        var path = folder.PathOf("study.json");
        Directory.CreateDirectory(folder.PathOf("runs"));

        StudyFile.Write(
            path,
            StudySample.Study,
            new StudyTables { Trials = "runs/trials.csv", Readings = "readings.csv" }
        );

        Assert.Equal(["readings.csv", "runs", "study.json"], folder.Names);
        Assert.StartsWith(
            "setup,workload,timer,run time [s]",
            File.ReadAllText(folder.PathOf(Path.Combine("runs", "trials.csv"))),
            StringComparison.Ordinal
        );
        Assert.Equal(StudySample.Study, StudyFile.Read(path));
    }

    [Theory]
    [InlineData("study.json", null, "study.json")]
    [InlineData("t.csv", "T.CSV", "T.CSV")]
    public void Write_TwoFilesOfOneName_IsRefusedAndNothingIsWritten(string trials, string? readings, string twice)
    {
        using var folder = new TemporaryFolder();
        var tables = new StudyTables { Trials = trials, Readings = readings };

        Refusal.Is<ArgumentException>(
            () => StudyFile.Write(folder.PathOf("study.json"), StudySample.Study, tables),
            "tables",
            $"Study and tables must be files of different names; \"{twice}\" stands twice."
        );
        Assert.Empty(folder.Names);
    }

    [Fact]
    public void Write_FolderOfATableMissing_LeavesTheStudyUntouched()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("study.json", "old");

        Assert.Throws<DirectoryNotFoundException>(() =>
            StudyFile.Write(path, StudySample.Study, new StudyTables { Trials = "nowhere/trials.csv" })
        );

        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal(["study.json"], folder.Names);
    }

    [Fact]
    public void Write_MoreThanCanBeRead_IsRefusedAndTheOldFileKept()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("study.json", "old");
        var note = new string('n', Require.LongestName);
        var trial = StudySample.Study.Trials[0] with
        {
            Session = note,
            Specimen = note,
            Build = note,
            Connection = note,
        };
        var study = Study.FromTrials("too large", Enumerable.Repeat(trial, 70_000));

        var thrown = Assert.Throws<IOException>(() => StudyFile.Write(path, study));

        Assert.StartsWith($"{path} would have ", thrown.Message, StringComparison.Ordinal);
        Assert.EndsWith(
            " bytes, and at most 67108864 can be read: keep trials and readings in tables, or split the study.",
            thrown.Message,
            StringComparison.Ordinal
        );
        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal(["study.json"], folder.Names);
    }

    [Fact]
    public void Read_RelativePath_FindsTablesBesideTheStudy()
    {
        using var folder = new TemporaryFolder();
        StudyFile.Write(folder.PathOf("study.json"), StudySample.Study, new StudyTables { Trials = "t.csv" });
        var relative = Path.GetRelativePath(Directory.GetCurrentDirectory(), folder.PathOf("study.json"));

        Assert.Equal(StudySample.Study, StudyFile.Read(relative));
    }

    [Fact]
    public void Read_NoSuchFile_IsSaid()
    {
        using var folder = new TemporaryFolder();
        var path = folder.PathOf("study.json");

        var thrown = Assert.Throws<FileNotFoundException>(() => StudyFile.Read(path));

        Assert.Equal($"There is no file {path}.", thrown.Message);
    }

    [Fact]
    public void Read_NoSuchFolder_IsSaid()
    {
        using var folder = new TemporaryFolder();
        var path = folder.PathOf(Path.Combine("nowhere", "study.json"));

        var thrown = Assert.Throws<FileNotFoundException>(() => StudyFile.Read(path));

        Assert.Equal($"There is no file {path}.", thrown.Message);
    }

    [Fact]
    public void Read_Folder_IsSaid()
    {
        using var folder = new TemporaryFolder();

        var thrown = Assert.Throws<IOException>(() => StudyFile.Read(folder.Root));

        Assert.Equal($"{folder.Root} is a folder; a file was expected.", thrown.Message);
    }

    [Fact]
    public void Read_FileThatMayNotBeRead_IsSaid()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Windows has no Unix permissions.");
        Assert.SkipWhen(Environment.IsPrivilegedProcess, "The superuser may read anything.");
        using var folder = new TemporaryFolder();
        var path = folder.Write("study.json", "{}");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.None);
        }

        var thrown = Assert.Throws<UnauthorizedAccessException>(() => StudyFile.Read(path));

        Assert.Equal($"{path} may not be read: permission is denied.", thrown.Message);
    }

    [Fact]
    public void Read_FaultInATable_NamesTheTable()
    {
        using var folder = new TemporaryFolder();
        StudyFile.Write(folder.PathOf("study.json"), StudySample.Study, new StudyTables { Trials = "t.csv" });
        File.AppendAllText(folder.PathOf("t.csv"), "Schist wide 160,echo spectrum,ticks,fast,,,,,,,\n");

        var thrown = Assert.Throws<StudyFormatException>(() => StudyFile.Read(folder.PathOf("study.json")));

        Assert.Equal(
            ("t.csv", 3, 4, "run time [s]"),
            (thrown.SourceName, thrown.Line, thrown.Column, thrown.ColumnHead)
        );
        Assert.Equal(StudySample.Study, StudyFile.ReadWithFaults(folder.PathOf("study.json")).Study);
    }

    [Fact]
    public void Read_TableMissing_IsSaidAtItsPath()
    {
        var fault = FaultOf("t.csv", _ => { });

        Assert.Equal("The table \"t.csv\" can't be read: There is no file t.csv.", fault.Problem);
        Assert.Equal(("study.json", "$.trialFiles[0].path"), (fault.SourceName, fault.JsonPath));
    }

    [Fact]
    public void Read_TableIsAFolder_IsSaid()
    {
        var fault = FaultOf("t.csv", folder => Directory.CreateDirectory(folder.PathOf("t.csv")));

        Assert.Equal("The table \"t.csv\" can't be read: t.csv is a folder; a file was expected.", fault.Problem);
    }

    [Theory]
    [InlineData(
        "../t.csv",
        "A table's path must lead into the study's folder or below, without \".\", \"..\" or empty parts."
    )]
    [InlineData(
        "a/../../t.csv",
        "A table's path must lead into the study's folder or below, without \".\", \"..\" or empty parts."
    )]
    [InlineData(
        "a//t.csv",
        "A table's path must lead into the study's folder or below, without \".\", \"..\" or empty parts."
    )]
    [InlineData("/t.csv", "A table's path must be relative to the study's folder, without drive or scheme.")]
    [InlineData("c:/t.csv", "A table's path must be relative to the study's folder, without drive or scheme.")]
    [InlineData("t.csv:hidden", "A table's path must be relative to the study's folder, without drive or scheme.")]
    [InlineData(
        "..\\\\t.csv",
        "A table's path must separate folders by / and hold none of \\ < > \" | ? * or control characters."
    )]
    [InlineData(
        "t\\u0000.csv",
        "A table's path must separate folders by / and hold none of \\ < > \" | ? * or control characters."
    )]
    [InlineData(
        "a/NUL.csv",
        "A table's path must have parts that are names of files on any system: no device names, no spaces at their ends, no point at their end."
    )]
    [InlineData(
        "a./t.csv",
        "A table's path must have parts that are names of files on any system: no device names, no spaces at their ends, no point at their end."
    )]
    public void Read_TableOutside_IsRefusedUnopened(string path, string words)
    {
        var fault = FaultOf(path, _ => { });

        Assert.Equal(words, fault.Problem);
        Assert.Equal("Keep the table beside the study.", fault.Mend);
        Assert.Equal("$.trialFiles[0].path", fault.JsonPath);
    }

    [Theory]
    [InlineData("t.csv", "t.csv")]
    [InlineData("sub/t.csv", "sub")]
    public void Read_LinkOnTheWay_IsNotFollowed(string path, string link)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Making links needs a privilege on Windows.");
        using var elsewhere = new TemporaryFolder();
        elsewhere.Write("t.csv", "setup,workload,timer,run time [s]\n");

        var fault = FaultOf(
            path,
            folder =>
                File.CreateSymbolicLink(folder.PathOf(link), link == "sub" ? elsewhere.Root : elsewhere.PathOf("t.csv"))
        );

        Assert.Equal(
            $"The table \"{path}\" can't be read: {path} leads over a link; links are not followed.",
            fault.Problem
        );
    }

    [Fact]
    public void Read_TableNamedTwice_IsRefused()
    {
        using var folder = new TemporaryFolder();
        folder.Write("t.csv", "setup,workload,timer,run time [s]\n");
        var path = folder.Write(
            "study.json",
            StudySample.With(
                "\"readings\": [",
                "\"trialFiles\": [{ \"path\": \"t.csv\" }, { \"path\": \"T.csv\" }], \"readings\": ["
            )
        );

        var fault = Assert.Single(StudyFile.ReadWithFaults(path).Faults);

        Assert.Equal("The table \"T.csv\" is referred to twice.", fault.Problem);
        Assert.Equal("$.trialFiles[1].path", fault.JsonPath);
    }

    /// <summary>The one fault of a study that keeps trials in a table of this path.</summary>
    private static StudyFault FaultOf(string table, Action<TemporaryFolder> prepare)
    {
        using var folder = new TemporaryFolder();
        prepare(folder);
        var path = folder.Write(
            "study.json",
            StudySample.With("\"readings\": [", $"\"trialFiles\": [{{ \"path\": \"{table}\" }}], \"readings\": [")
        );
        return Assert.Single(StudyFile.ReadWithFaults(path).Faults);
    }
}
