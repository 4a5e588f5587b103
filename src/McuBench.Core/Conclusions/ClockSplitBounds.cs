using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Regression;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>What single readings at two or more clocks allow: the least and the greatest fixed time and cycles for which
/// every reading can be right, if each is off by the timer's step alone.</summary>
/// <remarks>
/// <para>Bounds, not a 95 % interval: they hold for certain where run times don't scatter and the line holds, and less
/// often where they do (with scatter of a quarter of the step in 93 %, of half the step in 75 % of two-clock studies).
/// With two clocks the fixed time is bounded by ± (r/2)(x₁ + x₂)/|x₁ − x₂| about its estimate, with r the step of a
/// rounding timer and x = 1/f; with three or more by the corners of a polygon. An empty polygon means that the line
/// doesn't hold or that run times scatter (<see cref="IsEmpty"/>).</para>
/// <para>The timer's and the clocks' tolerances are not in the bounds.</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record ClockSplitBounds
{
    private readonly ValueList<(Duration FixedTime, double Cycles)> corners;

    private ClockSplitBounds(string name, int readings, FeasibleLines lines)
    {
        Name = name;
        Readings = readings;
        corners = ValueList<(Duration, double)>.Of(
            lines.Vertices.Select(v => (Si.Duration(v.Intercept), v.Slope)),
            "Corners",
            nameof(lines)
        );
        if (!lines.IsEmpty)
        {
            FixedTime = (Si.Duration(lines.Intercept.Lower), Si.Duration(lines.Intercept.Upper));
            Cycles = lines.Slope;
        }
    }

    /// <summary>What was run, in words.</summary>
    public string Name { get; }

    /// <summary>How many readings bound it.</summary>
    public int Readings { get; }

    /// <summary>Whether no fixed time and cycles agree with every reading: lack of fit, or scatter beyond the step.</summary>
    public bool IsEmpty => corners.Count == 0;

    /// <summary>The least and the greatest fixed time of a run, in seconds; absent where nothing agrees with every reading.</summary>
    public (Duration Lower, Duration Upper)? FixedTime { get; }

    /// <summary>The least and the greatest number of cycles of a run; absent where nothing agrees with every reading.</summary>
    public (double Lower, double Upper)? Cycles { get; }

    /// <summary>The corners of the polygon of all pairs that agree with every reading, in order around it.</summary>
    public IReadOnlyList<(Duration FixedTime, double Cycles)> Corners => corners;

    /// <summary>Bounds the split by what every reading stands for. O(n²) in the readings.</summary>
    /// <param name="series">Series of setups that differ in name and clock only, on one workload with one timer, at two or
    /// more clocks; usually of one trial each. Where a clock has several, each of them must be right.</param>
    /// <param name="name">What was run, in words.</param>
    /// <exception cref="ArgumentException">There is no trial that counts, the workloads or timers differ, or there is one
    /// clock only.</exception>
    public static ClockSplitBounds Of(IEnumerable<TrialSeries> series, string name)
    {
        ArgumentNullException.ThrowIfNull(series);
        Require.Name(name, "Name of what was run", nameof(name));
        TrialSeries[] all = [.. series];
        (TrialSeries Series, double Seconds)[] readings =
        [
            .. all.SelectMany(s => s.Trials.Select(t => (s, Si.Seconds(t.RunTime)))),
        ];
        if (readings.Length == 0)
        {
            throw new ArgumentException("Bounds must rest on a trial that counts; there was none.", nameof(series));
        }

        if (Array.Find(all, s => s.Workload != all[0].Workload || s.Timer != all[0].Timer) is { } other)
        {
            throw new ArgumentException(
                $"Bounds must be of one workload and one timer ({all[0].Workload.Name}, {all[0].Timer.Name}); one series was of {other.Workload.Name}, {other.Timer.Name}.",
                nameof(series)
            );
        }

        if (all.Select(s => Si.Hertz(s.Setup.Clock.Nominal)).Distinct().Count() < 2)
        {
            throw new ArgumentException(
                $"Bounds must have two clocks or more; all were {QuantityText.Format(all[0].Setup.Clock.Nominal)}.",
                nameof(series)
            );
        }

        var (below, above) = all[0].Timer.Reach;
        return new ClockSplitBounds(
            name,
            readings.Length,
            FeasibleLines.Of(
                [.. readings.Select(r => 1 / Si.Hertz(r.Series.Setup.Clock.Nominal))],
                [.. readings.Select(r => r.Seconds - Si.Seconds(below))],
                [.. readings.Select(r => r.Seconds + Si.Seconds(above))]
            )
        );
    }

    /// <summary>"fixed time between 87 ms and 113 ms, cycles between 39.2 million and 40.8 million (bounds from 2 readings,
    /// not a confidence interval)".</summary>
    public override string ToString() =>
        FixedTime is { } time && Cycles is { } cycles
            ? $"fixed time between {Said.Seconds(Si.Seconds(time.Lower))} and {Said.Seconds(Si.Seconds(time.Upper))}, cycles between {Said.Count(cycles.Lower)} and {Said.Count(cycles.Upper)} (bounds from {Said.Count(Readings, "reading")}, not a confidence interval)"
            : $"no fixed time and cycles agree with all {Readings} readings within the timer's step: the line doesn't hold, or run times scatter";
}
