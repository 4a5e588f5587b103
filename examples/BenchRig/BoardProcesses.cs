using System.Diagnostics;
using System.Globalization;

namespace BenchRig;

/// <summary>Simulated boards, each in a process of its own, as real boards are; they end with this program.</summary>
public sealed class BoardProcesses : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    private readonly List<Process> processes = [];

    /// <summary>Starts the three invented boards of the demonstration, their lines in a folder.</summary>
    /// <exception cref="RigException">One doesn't come up.</exception>
    public static BoardProcesses Start(string folder)
    {
        Directory.CreateDirectory(folder);
        var boards = new BoardProcesses();
        try
        {
            boards.Start(Path.Combine(folder, "marl"), 412_130, 0.004, resetEvery: 7, unplugEvery: 0, seed: 11);
            boards.Start(Path.Combine(folder, "schist-b"), 338_020, 0.002, resetEvery: 0, unplugEvery: 9, seed: 12);
            boards.Start(Path.Combine(folder, "schist-a"), 391_550, 0.009, resetEvery: 0, unplugEvery: 0, seed: 13);
            return boards;
        }
        catch
        {
            boards.Dispose();
            throw;
        }
    }

    /// <summary>Ends the boards.</summary>
    public void Dispose()
    {
        foreach (var process in processes)
        {
            process.Kill();
            process.Dispose();
        }
    }

    private void Start(string link, double mean, double spread, int resetEvery, int unplugEvery, ulong seed)
    {
        File.Delete(link);
        var program = Environment.ProcessPath!;
        var isHost = Path.GetFileNameWithoutExtension(program).Equals("dotnet", StringComparison.OrdinalIgnoreCase);
        string[] call =
        [
            .. isHost ? [typeof(BoardProcesses).Assembly.Location] : Array.Empty<string>(),
            "board",
            "--port",
            link,
            "--mean",
            mean.ToString(CultureInfo.InvariantCulture),
            "--spread",
            spread.ToString(CultureInfo.InvariantCulture),
            "--reset-every",
            resetEvery.ToString(CultureInfo.InvariantCulture),
            "--unplug-every",
            unplugEvery.ToString(CultureInfo.InvariantCulture),
            "--seed",
            seed.ToString(CultureInfo.InvariantCulture),
        ];
        var process = Process.Start(
            new ProcessStartInfo(program, call) { UseShellExecute = false, RedirectStandardInput = true }
        )!;
        processes.Add(process);
        var began = Stopwatch.GetTimestamp();
        while (new FileInfo(link).LinkTarget is null)
        {
            if (process.HasExited || Stopwatch.GetElapsedTime(began) > Patience)
            {
                throw new RigException(ExitCode.NoBoard, $"The simulated board at {link} didn't come up.");
            }

            Thread.Sleep(20);
        }
    }
}
