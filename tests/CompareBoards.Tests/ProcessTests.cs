using System.Diagnostics;

namespace CompareBoards.Tests;

/// <summary>The program as its user starts it.</summary>
public sealed class ProcessTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("compare-boards-");

    [Fact]
    public void Start_NoArguments_ReportsOnTheDemoStudyFromAnyFolder()
    {
        var (code, output, error) = Start();

        Assert.True(code == ExitCode.Done, error);
        Assert.Empty(error);
        Assert.Contains("invented", output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', output);
        var report = Path.Combine(folder.FullName, CommandLine.DefaultFolder);
        Assert.Contains(report, output, StringComparison.Ordinal);
        Assert.Equal([report], Directory.GetFileSystemEntries(folder.FullName));

        // Eight charts for each of three workloads, each twice, and the page.
        Assert.Equal(49, Directory.GetFiles(report).Length);
        var page = File.ReadAllText(Path.Combine(report, "report.html"));
        Assert.Equal(24, page.Split("data:image/svg+xml;base64,").Length - 1);
    }

    [Fact]
    public void Start_Version_PrintsIt()
    {
        var (code, output, error) = Start("--version");

        Assert.Equal(ExitCode.Done, code);
        Assert.Empty(error);
        Assert.Equal(typeof(Application).Assembly.GetName().Version!.ToString(3), output.Trim());
    }

    [Fact]
    public void Start_MissingStudy_EndsWithTwo()
    {
        var (code, output, error) = Start("nowhere.json");

        Assert.Equal(ExitCode.BadInput, code);
        Assert.Empty(output);
        Assert.Equal("compare-boards: There is no file nowhere.json.\n", error);
        Assert.Empty(Directory.GetFileSystemEntries(folder.FullName));
    }

    public void Dispose() => folder.Delete(recursive: true);

    private (int Code, string Output, string Error) Start(params string[] args)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath is { } path && IsHost(path) ? path : "dotnet")
        {
            WorkingDirectory = folder.FullName,
            UseShellExecute = false,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (var arg in (string[])[typeof(Application).Assembly.Location, .. args])
        {
            start.ArgumentList.Add(arg);
        }

        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }

    private static bool IsHost(string path) =>
        string.Equals(Path.GetFileNameWithoutExtension(path), "dotnet", StringComparison.Ordinal);
}
