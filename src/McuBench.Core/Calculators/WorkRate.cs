using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Calculators;

/// <summary>How fast work is done: throughput, cycles per work item, throughput per megahertz, and the run time at
/// another clock. Plain arithmetic on exact figures; for measured ones with intervals see
/// <see cref="Conclusions.SetupSummary"/>.</summary>
/// <remarks>All methods are O(1), computed in SI doubles and wrapped last; safe to use from many threads.</remarks>
public static class WorkRate
{
    private const double HertzPerMegahertz = 1e6;

    /// <summary>Work items per second: items divided by run time.</summary>
    /// <param name="workItems">How many items one run completes, at least 1.</param>
    /// <param name="runTime">The time of one run, above zero.</param>
    /// <returns>The throughput, in hertz.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The items are fewer than 1, the time is not above zero, or the
    /// result is beyond a double.</exception>
    public static Frequency Throughput(long workItems, Duration runTime) =>
        Si.Frequency(Items(workItems) / Seconds(runTime), nameof(runTime));

    /// <summary>Clock cycles per work item: run time times clock divided by items. Whatever doesn't follow the clock is
    /// counted in.</summary>
    /// <param name="runTime">The time of one run, above zero.</param>
    /// <param name="clock">The clock's frequency, above zero.</param>
    /// <param name="workItems">How many items one run completes, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The items are fewer than 1, or the time or clock is not above zero.</exception>
    public static double CyclesPerItem(Duration runTime, Frequency clock, long workItems) =>
        Finite(Seconds(runTime) * Hertz(clock, nameof(clock)) / Items(workItems), "Cycles per item", nameof(runTime));

    /// <summary>Work items per million clock cycles, which is throughput per megahertz of clock.</summary>
    /// <param name="workItems">How many items one run completes, at least 1.</param>
    /// <param name="runTime">The time of one run, above zero.</param>
    /// <param name="clock">The clock's frequency, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The items are fewer than 1, or the time or clock is not above zero.</exception>
    public static double ItemsPerMegacycle(long workItems, Duration runTime, Frequency clock) =>
        Finite(
            Items(workItems) * HertzPerMegahertz / (Seconds(runTime) * Hertz(clock, nameof(clock))),
            "Items per megacycle",
            nameof(runTime)
        );

    /// <summary>The run time at another clock: the fixed time stays, the rest follows 1/f. Wait states and caches that
    /// change with the clock are not in this sum.</summary>
    /// <param name="runTime">The time of one run at <paramref name="clock"/>, above zero.</param>
    /// <param name="clock">The clock that it was run at, above zero.</param>
    /// <param name="otherClock">The clock that is asked for, above zero.</param>
    /// <param name="fixedTime">The part of the run time that doesn't follow the clock (display, bus), from zero up to the
    /// run time; none unless given.</param>
    /// <returns>The run time, in seconds.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A time or clock is out of range.</exception>
    public static Duration RunTimeAtClock(
        Duration runTime,
        Frequency clock,
        Frequency otherClock,
        Duration fixedTime = default
    )
    {
        var whole = Seconds(runTime);
        var fixedPart = Si.Seconds(fixedTime, nameof(fixedTime));
        if (fixedPart < 0 || fixedPart > whole)
        {
            throw new ArgumentOutOfRangeException(
                nameof(fixedTime),
                fixedTime,
                $"Fixed time must be at least 0 s and at most the run time of {QuantityText.Format(runTime)}; was {QuantityText.Format(fixedTime)}."
            );
        }

        var scaled = (whole - fixedPart) * Hertz(clock, nameof(clock)) / Hertz(otherClock, nameof(otherClock));
        return Si.Duration(fixedPart + scaled, nameof(otherClock));
    }

    private static long Items(long workItems) => Require.AtLeast(workItems, 1, "Work items", nameof(workItems));

    private static double Seconds(Duration runTime) =>
        Si.Seconds(Require.Positive(runTime, "Run time", nameof(runTime)));

    private static double Hertz(Frequency clock, string parameter) =>
        Si.Hertz(Require.Positive(clock, "Clock", parameter));

    private static double Finite(double value, string what, string parameter) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(
                parameter,
                FormattableString.Invariant($"{what} must be within the range of a double; was {value}.")
            );
}
