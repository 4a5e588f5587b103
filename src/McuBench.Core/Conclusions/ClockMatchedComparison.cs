using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Two boards (or cores, or builds) compared on one workload at clocks that are matched: both at one clock, each at
/// its default, or each at its best, by the lines that their splits found.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record ClockMatchedComparison
{
    private ClockMatchedComparison(
        ClockMatch match,
        (ClockSplit Split, Frequency Clock) first,
        (ClockSplit Split, Frequency Clock) second,
        bool isFixedTimeForeign,
        QuantityComparison runTime,
        QuantityComparison? charge
    )
    {
        Match = match;
        First = first.Split;
        FirstClock = Si.Normalized(first.Clock);
        Second = second.Split;
        SecondClock = Si.Normalized(second.Clock);
        IsFixedTimeForeign = isFixedTimeForeign;
        RunTime = runTime;
        ChargePerTask = charge;
    }

    /// <summary>How the clocks are matched.</summary>
    public ClockMatch Match { get; }

    /// <summary>The first board's split.</summary>
    public ClockSplit First { get; }

    /// <summary>The first board's clock, in hertz.</summary>
    public Frequency FirstClock { get; }

    /// <summary>The second board's split.</summary>
    public ClockSplit Second { get; }

    /// <summary>The second board's clock, in hertz.</summary>
    public Frequency SecondClock { get; }

    /// <summary>Whether fixed time was taken out, since the asker said that it isn't the boards'.</summary>
    public bool IsFixedTimeForeign { get; }

    /// <summary>The run times there, first to second; without fixed time where that is not the boards'.</summary>
    public QuantityComparison RunTime { get; }

    /// <summary>The charges per task there, fixed time included; absent where no best clocks were compared.</summary>
    public QuantityComparison? ChargePerTask { get; }

    /// <summary>Compares at one clock. O(n log n) in trials for each pair of setups.</summary>
    /// <param name="first">The one whose figures are divided by the other's.</param>
    /// <param name="second">The one that is divided by.</param>
    /// <param name="clock">The clock of both, in the range of each.</param>
    /// <param name="options">Whose the fixed time is, and the range; <see cref="ClockMatchOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">The workloads differ, or a split has no part that follows the clock.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The clock lies outside a range.</exception>
    public static ClockMatchedComparison AtEqualClock(
        ClockSplit first,
        ClockSplit second,
        Frequency clock,
        ClockMatchOptions? options = null
    ) => Of(ClockMatch.EqualClock, (first, clock), (second, clock), charges: null, options);

    /// <summary>Compares each at the clock that it comes with. O(n log n) in trials for each pair of setups.</summary>
    /// <param name="first">The one whose figures are divided by the other's.</param>
    /// <param name="firstDefault">Its default clock, in its range.</param>
    /// <param name="second">The one that is divided by.</param>
    /// <param name="secondDefault">Its default clock, in its range.</param>
    /// <param name="options">Whose the fixed time is, and the range; <see cref="ClockMatchOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">The workloads differ, or a split has no part that follows the clock.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A clock lies outside its range.</exception>
    public static ClockMatchedComparison AtDefaults(
        ClockSplit first,
        Frequency firstDefault,
        ClockSplit second,
        Frequency secondDefault,
        ClockMatchOptions? options = null
    ) => Of(ClockMatch.Defaults, (first, firstDefault), (second, secondDefault), charges: null, options);

    /// <summary>Compares each at the clock at which it takes the least charge: charge per task, and the run times
    /// there.</summary>
    /// <param name="first">The one whose figures are divided by the other's.</param>
    /// <param name="second">The one that is divided by.</param>
    /// <param name="options">Whose the fixed time is; <see cref="ClockMatchOptions.Default"/> when null. The ranges are those
    /// of the best clocks.</param>
    /// <exception cref="ArgumentException">The workloads differ, one is repeated and the other not, or a split has no part
    /// that follows the clock.</exception>
    public static ClockMatchedComparison AtBest(BestClock first, BestClock second, ClockMatchOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (!PeriodOf(first).Equals(PeriodOf(second)))
        {
            throw new ArgumentException(
                "Two best clocks must be of one period, or both of a task alone; these differ.",
                nameof(second)
            );
        }

        return Of(ClockMatch.Best, (first.Split, first.Clock), (second.Split, second.Clock), (first, second), options);

        static double PeriodOf(BestClock best) =>
            best.Repeated is { } repeated ? Si.Seconds(repeated.Period) : double.PositiveInfinity;
    }

    private static ClockMatchedComparison Of(
        ClockMatch match,
        (ClockSplit Split, Frequency Clock) first,
        (ClockSplit Split, Frequency Clock) second,
        (BestClock First, BestClock Second)? charges,
        ClockMatchOptions? options
    )
    {
        var asked = options ?? ClockMatchOptions.Default;
        var scaled = ClockScaledComparison.Of(first.Split, second.Split, asked.Conclusion);
        var reason = scaled.CyclesPerItem.Reason;
        NoVerdictReason? withheld = reason == NoVerdictReason.NoInterval ? null : reason;
        var trials = first.Split.FixedTime.Trials + second.Split.FixedTime.Trials;
        var runTime = CompareFigures.Of(
            asked.IsFixedTimeForeign ? ComparedQuantity.ScalingRunTime : ComparedQuantity.RunTime,
            TimeAt(first, charges?.First.Range),
            TimeAt(second, charges?.Second.Range),
            trials,
            asked.Conclusion,
            withheld
        );
        var charge = charges is { } both
            ? CompareFigures.Of(
                ComparedQuantity.ChargePerTask,
                both.First.Lines.ChargeAt(Si.Hertz(both.First.Clock)),
                both.Second.Lines.ChargeAt(Si.Hertz(both.Second.Clock)),
                trials,
                asked.Conclusion,
                withheld
            )
            : null;
        return new ClockMatchedComparison(match, first, second, asked.IsFixedTimeForeign, runTime, charge);

        UncertainValue TimeAt((ClockSplit Split, Frequency Clock) side, ClockRange? ofBest)
        {
            var range = ofBest ?? asked.Range;
            var hertz = (range ?? side.Split.RangeRun).Hertz(side.Clock, range is not null, "clock");
            var scaling = side.Split.Line.Slope.Times(1 / hertz);
            return asked.IsFixedTimeForeign ? scaling : side.Split.Line.Intercept.Plus(scaling);
        }
    }
}
