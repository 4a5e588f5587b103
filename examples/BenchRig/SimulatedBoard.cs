using McuBench.Stats.Resampling;

namespace BenchRig;

/// <summary>An invented board at the far end of a serial line: runs when it is told to, says how long it took, and
/// misbehaves now and then as boards do.</summary>
/// <param name="link">Where its line is to be found.</param>
/// <param name="meanMicroseconds">Its mean run time, made up.</param>
/// <param name="spread">The scatter of its run times, as a share of the mean.</param>
/// <param name="resetEvery">After so many runs it is reset in the middle of its answer; never where 0.</param>
/// <param name="unplugEvery">After so many runs its line is unplugged for a moment; never where 0.</param>
/// <param name="seed">What its run times are drawn from.</param>
public sealed class SimulatedBoard(
    string link,
    double meanMicroseconds,
    double spread,
    int resetEvery,
    int unplugEvery,
    ulong seed
)
{
    private const int Items = 1000;
    private static readonly TimeSpan Unplugged = TimeSpan.FromMilliseconds(250);

    private readonly RandomStream random = RandomStream.Of(seed);

    /// <summary>Answers until the process ends.</summary>
    public void Run()
    {
        var line = new PseudoTerminal(link);
        Boot(line);
        var heard = string.Empty;
        var run = 1;
        while (true)
        {
            heard += line.Read();
            var end = heard.IndexOf('\n', StringComparison.Ordinal);
            if (end < 0)
            {
                continue;
            }

            var asked = heard[..end].Trim();
            heard = heard[(end + 1)..];
            if (asked != "run")
            {
                line.Write($"? {asked}\r\n");
                continue;
            }

            Answer(line, run);
            if (unplugEvery > 0 && run % unplugEvery == 0)
            {
                line.Dispose();
                Thread.Sleep(Unplugged);
                line = new PseudoTerminal(link);
                Boot(line);
            }

            run++;
        }
    }

    private static void Boot(PseudoTerminal line) =>
        line.Write("\0\0boot: self test passed\r\nclock ready, \u00B1 50 ppm\r\n");

    private void Answer(PseudoTerminal line, int run)
    {
        var microseconds = Math.Round(meanMicroseconds * (1 + (spread * random.Normal())));
        var answer = FormattableString.Invariant($"run {run}: {Items} items in {microseconds} us\r\n");
        if (resetEvery > 0 && run % resetEvery == 0)
        {
            line.Write(answer[..(answer.Length / 2)]);
            Boot(line);
            return;
        }

        line.Write(run % 5 == 0 ? $"supply 5.02 V\r\n{answer}" : answer);
    }
}
