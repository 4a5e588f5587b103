using System.Diagnostics;

namespace McuBench.Benchmarks.Ratios;

/// <summary>A process that times the same work in another language, asked task by task.</summary>
internal sealed class OtherSide : IDisposable
{
    private readonly Process _process;

    internal OtherSide(string name, string program, string script, string folder)
    {
        Name = name;
        _process =
            Process.Start(
                new ProcessStartInfo(program, [script, folder])
                {
                    UseShellExecute = false,
                    RedirectStandardInput = true,
                    RedirectStandardOutput = true,
                }
            ) ?? throw new InvalidOperationException($"{program} did not start.");
    }

    /// <summary>The language.</summary>
    internal string Name { get; }

    /// <summary>Has the task timed; null where this side has no such task.</summary>
    internal async Task<Timing?> Time(RatioTask task)
    {
        await _process.StandardInput.WriteLineAsync(task.Key);
        await _process.StandardInput.FlushAsync();
        string line =
            await _process.StandardOutput.ReadLineAsync()
            ?? throw new InvalidOperationException($"{Name} ended before it had timed {task.Key}.");
        return Timing.Parse(line, task);
    }

    /// <summary>Ends the process, which stops at the end of its input.</summary>
    public void Dispose()
    {
        _process.StandardInput.Close();
        _process.WaitForExit();
        _process.Dispose();
    }
}
