using System.Diagnostics;
using System.IO.Ports;
using System.Text;
using System.Threading.Channels;
using McuBench.Core.Capture;
using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Trials;

namespace BenchRig;

/// <summary>A board on a serial port: asks it to run, and waits for the line that says how long it took.</summary>
/// <remarks>A port that vanishes is opened again when it is back; a board that doesn't answer, since it was reset or its
/// line was torn, is asked again. Both end when the patience does.</remarks>
public sealed class SerialWire(BenchSlot slot, string port, WireFile settings, LinePattern pattern) : IWire
{
    private static readonly TimeSpan Retry = TimeSpan.FromMilliseconds(100);

    private readonly TimeSpan patience = TimeSpan.FromSeconds(settings.PatienceSeconds ?? 10);
    private SerialPort? open;
    private Channel<BoardLine>? lines;

    /// <summary>What came over the line so far.</summary>
    public LineTally Tally { get; } = new();

    /// <inheritdoc/>
    public async Task<Trial> RunAsync(CancellationToken cancellationToken)
    {
        var began = Stopwatch.GetTimestamp();
        var trouble = "it didn't answer";
        while (Stopwatch.GetElapsedTime(began) < patience)
        {
            cancellationToken.ThrowIfCancellationRequested();
            try
            {
                Connect();
                if (await AskAsync(cancellationToken).ConfigureAwait(false) is { } reading)
                {
                    return reading.ToTrial(slot.Setup, slot.Workload, slot.Timer) with { Specimen = slot.Specimen };
                }

                trouble = $"it didn't answer ({Tally})";
            }
            catch (Exception gone)
                when (gone
                        is IOException
                            or UnauthorizedAccessException
                            or InvalidOperationException
                            or ChannelClosedException
                )
            {
                trouble = gone is InvalidOperationException and not ChannelClosedException
                    ? gone.Message
                    : $"its port {port} is gone: {(gone.InnerException ?? gone).Message}";
                Disconnect();
                await Task.Delay(Retry, cancellationToken).ConfigureAwait(false);
            }
        }

        throw new RigException(
            ExitCode.NoBoard,
            $"{slot}: no result within {patience.TotalSeconds:0.#} s: {trouble}. What was acknowledged is in the journal; mend it and start again."
        );
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        Disconnect();
        return ValueTask.CompletedTask;
    }

    // An answer in a quarter of the patience, so that a board that was reset is asked again within it.
    private async Task<LineReading?> AskAsync(CancellationToken cancellationToken)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        limit.CancelAfter(patience / 4);
        while (lines!.Reader.TryRead(out var early))
        {
            Tally.Add(early);
        }

        try
        {
            // A line that has hung up may keep a write for ever, whatever its own limits say.
            await open!
                .BaseStream.WriteAsync(Encoding.ASCII.GetBytes(settings.Send ?? "run\n"), limit.Token)
                .AsTask()
                .WaitAsync(limit.Token)
                .ConfigureAwait(false);
            while (true)
            {
                var line = await lines.Reader.ReadAsync(limit.Token).ConfigureAwait(false);
                Tally.Add(line);
                if (line.Reading is { RunTime: not null } reading)
                {
                    return reading;
                }
            }
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            // Not an answer in time: the board was reset, or the line has hung up without a word. A new line tells.
            Disconnect();
            return null;
        }
    }

    private void Connect()
    {
        if (open is not null)
        {
            return;
        }

        open = new SerialPort(port, settings.Baud ?? 115_200) { WriteTimeout = (int)patience.TotalMilliseconds };
        open.Open();
        lines = Channel.CreateBounded<BoardLine>(1024);
        _ = PumpAsync(open.BaseStream, lines.Writer);
    }

    // Closing waits for what was to be written, which a line that has hung up never takes; so nobody waits for it.
    private void Disconnect()
    {
        if (open is not { } gone)
        {
            return;
        }

        open = null;
        _ = Task.Run(() =>
        {
            try
            {
                gone.Dispose();
            }
            catch (IOException)
            {
                // The port went before it could be closed.
            }
        });
    }

    private async Task PumpAsync(Stream stream, ChannelWriter<BoardLine> writer)
    {
        Exception fault = new IOException("the other end was closed");
        try
        {
            await foreach (var line in BoardLines.ReadAsync(stream, pattern).ConfigureAwait(false))
            {
                await writer.WriteAsync(line).ConfigureAwait(false);
            }
        }
#pragma warning disable CA1031 // Whatever ends the reading is told to whoever waits for a line.
        catch (Exception gone)
#pragma warning restore CA1031
        {
            fault = gone;
        }

        writer.TryComplete(fault);
    }
}
