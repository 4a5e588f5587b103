using System.Diagnostics;
using System.Text.RegularExpressions;

namespace BenchRig.Tests;

/// <summary>The program as its user starts it, in a folder of its own.</summary>
internal sealed partial class RigProcess : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("bench-rig-");

    public string PathOf(string name) => Path.Combine(folder.FullName, name);

    public void Write(string name, string text) => File.WriteAllText(PathOf(name), text);

    /// <summary>Runs it to its end.</summary>
    public async Task<(int Code, string Output, string Error)> RunAsync(params string[] args)
    {
        using var process = Start(args);
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, await output, await error);
    }

    /// <summary>Runs it for so many acknowledged trials and a moment more, then kills it outright.</summary>
    /// <returns>The last trial that it said was acknowledged.</returns>
    public async Task<int> RunAndKillAsync(int trials, TimeSpan more, params string[] args)
    {
        using var process = Start(args);
        var error = process.StandardError.ReadToEndAsync();
        var last = 0;
        var killing = Task.CompletedTask;
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (Acknowledged().Match(line) is { Success: true } match)
            {
                last = int.Parse(match.Groups["order"].Value, System.Globalization.CultureInfo.InvariantCulture);
                if (--trials == 0)
                {
                    killing = Task.Delay(more).ContinueWith(_ => process.Kill(), TaskScheduler.Default);
                }
            }
        }

        await killing;
        await process.WaitForExitAsync();
        Assert.Empty(await error);
        return last;
    }

    public void Dispose() => folder.Delete(recursive: true);

    private Process Start(string[] args)
    {
        var start = new ProcessStartInfo("dotnet")
        {
            WorkingDirectory = folder.FullName,
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add(typeof(Application).Assembly.Location);
        foreach (var arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        return Process.Start(start)!;
    }

    [GeneratedRegex("^acknowledged (?<order>[0-9]+):")]
    private static partial Regex Acknowledged();
}
