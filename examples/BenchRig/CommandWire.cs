using System.Diagnostics;
using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Trials;
using UnitsNet;

namespace BenchRig;

/// <summary>Times a program of this computer from outside, start and end of the process included.</summary>
public sealed class CommandWire(BenchSlot slot, IReadOnlyList<string> command, string folder) : IWire
{
    /// <inheritdoc/>
    public async Task<Trial> RunAsync(CancellationToken cancellationToken)
    {
        var start = new ProcessStartInfo(command[0], command.Skip(1))
        {
            UseShellExecute = false,
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        try
        {
            var began = Stopwatch.GetTimestamp();
            using var process = Process.Start(start)!;
            var output = process.StandardOutput.ReadToEndAsync(cancellationToken);
            var error = process.StandardError.ReadToEndAsync(cancellationToken);
            await process.WaitForExitAsync(cancellationToken).ConfigureAwait(false);
            var took = Stopwatch.GetElapsedTime(began);
            var said = (await output.ConfigureAwait(false)).Trim();
            if (process.ExitCode != 0)
            {
                throw new RigException(
                    ExitCode.NoBoard,
                    $"{slot}: {command[0]} ended with code {process.ExitCode}: {(await error.ConfigureAwait(false)).Trim()}"
                );
            }

            return new Trial(slot.Setup, slot.Workload, slot.Timer, Duration.FromSeconds(took.TotalSeconds))
            {
                Specimen = slot.Specimen,
                OutputChecksum =
                    said.Length is > 0 and <= 100 && !said.Contains('\n', StringComparison.Ordinal) ? said : null,
            };
        }
        catch (System.ComponentModel.Win32Exception missing)
        {
            throw new RigException(ExitCode.NoBoard, $"{slot}: {command[0]} can't be run: {missing.Message}", missing);
        }
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => ValueTask.CompletedTask;
}
