using System.Diagnostics;
using System.Globalization;

namespace McuBench.Benchmarks.Ratios;

/// <summary>How long a piece of work took one side, and what it found.</summary>
/// <param name="Engine">What computed it.</param>
/// <param name="Seconds">The shortest time of a call.</param>
/// <param name="Values">What it found.</param>
internal sealed record Timing(string Engine, double Seconds, double[] Values)
{
    private const double LeastSeconds = 0.3;
    private const double LeastSecondsOfATiming = 0.005;

    /// <summary>The shortest of several timings here, each of calls enough to fill a few milliseconds.</summary>
    internal static Timing Of(RatioTask task)
    {
        long start = Stopwatch.GetTimestamp();
        double[] values = task.Run();
        double once = Stopwatch.GetElapsedTime(start).TotalSeconds;
        double spent = once;
        double shortest = double.PositiveInfinity;
        // Calls are counted anew each time, since the compiler makes the first ones of them faster as they go.
        while (spent < LeastSeconds)
        {
            int calls = (int)Math.Max(1, LeastSecondsOfATiming / Math.Max(once, 1e-7));
            start = Stopwatch.GetTimestamp();
            for (int i = 0; i < calls; i++)
            {
                values = task.Run();
            }

            double taken = Stopwatch.GetElapsedTime(start).TotalSeconds;
            spent += taken;
            once = taken / calls;
            shortest = Math.Min(shortest, once);
        }

        return new Timing("here", Math.Min(shortest, once) / task.Calls, values);
    }

    /// <summary>What another side wrote of a task: engine, seconds and values; null where the line is empty.</summary>
    internal static Timing? Parse(string line, RatioTask task)
    {
        string[] parts = line.Split('\t');
        return parts.Length == 3
            ? new Timing(
                parts[0],
                double.Parse(parts[1], CultureInfo.InvariantCulture) / task.Calls,
                [.. parts[2].Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture))]
            )
            : null;
    }

    /// <summary>Of two timings of one side the shorter one.</summary>
    internal static Timing? Shorter(Timing? first, Timing? second) =>
        second is null || first?.Seconds <= second.Seconds ? first : second;
}
