using McuBench.Core.Quantities;
using McuBench.Stats;
using McuBench.Stats.Intervals;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>The period at which two setups that repeat a task and idle in between change places: below it one takes less
/// charge, above it the other.</summary>
/// <remarks>
/// <para>Per period T a setup takes Q + W + I·(T − t), with charge Q and time t of the task, wake charge W and idle current I:
/// two straight lines in T, which meet at T = (B₂ − B₁)/(I₁ − I₂) with B = Q + W − I·t. What both sides share, such as a
/// meter's gain, is taken along. The interval is Fieller's (fieller-1954) and absent where the idle currents can't be told
/// apart.</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record PeriodCrossover
{
    private PeriodCrossover(
        SetupSummary first,
        SetupSummary second,
        Measured<Duration>? period,
        Duration shortest,
        Side forLongPeriods,
        Side forShortPeriods
    )
    {
        First = first;
        Second = second;
        Period = period;
        Shortest = shortest;
        LessForLongPeriods = forLongPeriods;
        LessForShortPeriods = forShortPeriods;
    }

    /// <summary>The first setup.</summary>
    public SetupSummary First { get; }

    /// <summary>The second setup.</summary>
    public SetupSummary Second { get; }

    /// <summary>The period at which they change places, in seconds; absent where they don't at any period that holds a run
    /// of both.</summary>
    public Measured<Duration>? Period { get; }

    /// <summary>The shortest period that holds a run of both, in seconds.</summary>
    public Duration Shortest { get; }

    /// <summary>Which takes less charge in long periods: the one that idles at less.</summary>
    public Side LessForLongPeriods { get; }

    /// <summary>Which takes less charge in the shortest period that holds a run of both.</summary>
    public Side LessForShortPeriods { get; }

    /// <summary>Finds the period. O(1).</summary>
    /// <param name="first">One setup, with running and idle current read.</param>
    /// <param name="second">Another, on the same workload.</param>
    /// <param name="firstWake">What falling asleep and waking take in each period of the first, not negative; none when null.</param>
    /// <param name="secondWake">The same of the second.</param>
    /// <param name="options">The confidence; <see cref="ConclusionOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">The workloads differ, a current wasn't read, or both idle at the same current.</exception>
    public static PeriodCrossover Of(
        SetupSummary first,
        SetupSummary second,
        ElectricCharge? firstWake = null,
        ElectricCharge? secondWake = null,
        ConclusionOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (first.Workload != second.Workload)
        {
            throw new ArgumentException(
                $"Two setups must be compared on one workload; were \"{first.Workload.Name}\" and \"{second.Workload.Name}\".",
                nameof(second)
            );
        }

        var (one, other) = (Task(first, firstWake, nameof(first)), Task(second, secondWake, nameof(second)));
        var above = other.Beside.Minus(one.Beside);
        var below = one.Idle.Minus(other.Idle);
        if (below.Value == 0)
        {
            throw new ArgumentException(
                $"Two setups must idle at different currents to change places; both idled at {Said.Amperes(one.Idle.Value)}.",
                nameof(second)
            );
        }

        var shortest = Math.Max(first.Workings.RunTime.Value, second.Workings.RunTime.Value);
        var forLong = below.Value < 0 ? Side.First : Side.Second;
        var forShort =
            one.Beside.Value + one.Idle.Value * shortest <= other.Beside.Value + other.Idle.Value * shortest
                ? Side.First
                : Side.Second;
        var asked = options ?? ConclusionOptions.Default;
        return new PeriodCrossover(
            first,
            second,
            forLong == forShort ? null : Meeting(above, below, first, second, asked),
            Si.Duration(shortest),
            forLong,
            forShort
        );
    }

    /// <summary>"Marl 80 takes less in periods beyond 4.20 s, Marl 160 in shorter ones".</summary>
    public override string ToString()
    {
        var (less, more) = LessForLongPeriods == Side.First ? (First, Second) : (Second, First);
        return Period is { } period
            ? $"{less.Setup.Name} takes less charge in periods longer than {period}; {more.Setup.Name} in shorter ones"
            : $"{less.Setup.Name} takes less charge than {more.Setup.Name} in every period that holds a run of both";
    }

    private static (UncertainValue Beside, UncertainValue Idle) Task(
        SetupSummary summary,
        ElectricCharge? wake,
        string parameter
    )
    {
        if (summary.Workings is not { Charge: { } charge, Phases.Idle: { } idle })
        {
            throw new ArgumentException(
                $"A repeated task must have running and idle current read; {summary.Setup.Name} has not both.",
                parameter
            );
        }

        var coulombs = wake is { } given ? Si.Coulombs(given, parameter) : 0;
        return coulombs >= 0
            ? (charge.Plus(UncertainValue.Exact(coulombs)).Minus(idle.Mean.Times(summary.Workings.RunTime)), idle.Mean)
            : throw new ArgumentOutOfRangeException(
                $"{parameter}Wake",
                wake,
                $"Charge of waking must not be negative; was {QuantityText.Format(wake!.Value)}."
            );
    }

    private static Measured<Duration> Meeting(
        UncertainValue above,
        UncertainValue below,
        SetupSummary first,
        SetupSummary second,
        ConclusionOptions options
    )
    {
        var ratio = above.Over(below);
        var measure = new Measure(
            options.Confidence,
            first.Series.Trials.Count + second.Series.Trials.Count,
            "meeting of two lines in the period, Fieller"
        );
        var reach = ratio.Missing is null ? measure.CoverageFactor(ratio.DegreesOfFreedom) : 0;
        var ends = FiellerEnds.Of(
            (above.Value, below.Value),
            (above.StandardUncertainty, below.StandardUncertainty),
            above.CovarianceWith(below),
            reach
        );
        return ends is { } found
            ? measure.Between(ratio, found.Lower, found.Upper, seconds => Si.Duration(seconds))
            : measure.Of(
                ratio.WithMissing("The idle currents can't be told apart: nothing bounds the period."),
                seconds => Si.Duration(seconds),
                Ends.Symmetric
            );
    }
}
