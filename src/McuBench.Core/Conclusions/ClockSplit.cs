using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>
/// The run time of one board, core and build at two or more clocks, split into a part that follows the clock and one
/// that doesn't: t = fixed + cycles / f.
/// </summary>
/// <remarks>
/// <para>A weighted straight line through the mean run times against 1/f. The weights take the relative scatter to be
/// the same at every clock; the intervals do not rest on that: each clock's own scatter, its timer step and its clock's
/// tolerance are carried through the line (GUM 5.1). Errors of the clocks are taken as independent, which is the
/// cautious choice where the clocks share an oscillator.</para>
/// <para>A line through two clocks fits whatever the truth is. Wait states that are added at a higher clock step with f
/// and look like a fixed part, so with two clocks it is an apparent one (<see cref="IsApparent"/>).</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record ClockSplit
{
    internal ClockSplit(
        string name,
        IEnumerable<ClockSplitPoint> points,
        Measured<Duration> fixedTime,
        Measured<double> cycles,
        Measured<double> cyclesPerItem,
        Measured<Ratio> extraCyclesAlike,
        FixedPart fixedPart,
        ClockSplitBounds? bounds,
        IEnumerable<string> notes,
        UncertainLine line,
        Measure measuring
    )
    {
        Name = name;
        Points = ValueList<ClockSplitPoint>.Of(points, "Points", nameof(points));
        FixedTime = fixedTime;
        Cycles = cycles;
        CyclesPerItem = cyclesPerItem;
        ExtraCyclesAlike = extraCyclesAlike;
        FixedPart = fixedPart;
        Joint = ClockSplitRegion.Of(line, measuring.Confidence);
        Bounds = bounds;
        LackOfFit = line.LackOfFit;
        Notes = ValueList<string>.Of(notes, "Notes", nameof(notes));
        Line = line;
        Measuring = measuring;
    }

    /// <summary>What was run at several clocks, in words: board, core and whatever else tells it from others.</summary>
    public string Name { get; }

    /// <summary>The workload.</summary>
    public Workload Workload => Points[0].Summary.Workload;

    /// <summary>The timer.</summary>
    public TrialTimer Timer => Points[0].Summary.Series.Timer;

    /// <summary>The clocks, lowest first: at least two.</summary>
    public IReadOnlyList<ClockSplitPoint> Points { get; }

    /// <summary>The time of a run that doesn't follow the clock, in seconds; may come out below zero, see <see cref="FixedPart"/>.</summary>
    public Measured<Duration> FixedTime { get; }

    /// <summary>The clock cycles of a run that follow the clock.</summary>
    public Measured<double> Cycles { get; }

    /// <summary>The clock cycles per work item that follow the clock.</summary>
    public Measured<double> CyclesPerItem { get; }

    /// <summary>Fixed time and cycles together; absent where there is no interval.</summary>
    public ClockSplitRegion? Joint { get; }

    /// <summary>What a single trial at each clock allows; absent where a clock has several trials.</summary>
    public ClockSplitBounds? Bounds { get; }

    /// <summary>How many more cycles the highest clock would have to need than the lowest for the same run times without
    /// any fixed part, as wait states make it; below zero where it would have to need fewer.</summary>
    public Measured<Ratio> ExtraCyclesAlike { get; }

    /// <summary>What the data say of the fixed part.</summary>
    public FixedPart FixedPart { get; }

    /// <summary>Whether the split only looks like one: with two clocks the line can't be tested, and with a refuted line
    /// it doesn't describe the run.</summary>
    public bool IsApparent => LackOfFit is null or { IsRefuted: true };

    /// <summary>The test of the line; null with two clocks, where there is nothing to test.</summary>
    public LackOfFit? LackOfFit { get; }

    /// <summary>What a reader of the split has to know.</summary>
    public IReadOnlyList<string> Notes { get; }

    /// <summary>The line with its sources of uncertainty.</summary>
    internal UncertainLine Line { get; }

    /// <summary>How results are made of it.</summary>
    internal Measure Measuring { get; }

    /// <summary>The clocks that were run, from the lowest to the highest.</summary>
    public ClockRange RangeRun => new(Points[0].Clock, Points[^1].Clock);

    /// <summary>The run time that the line gives at a clock that was not run, with its interval.</summary>
    /// <param name="clock">A frequency within the range.</param>
    /// <param name="range">The range that someone vouches for; <see cref="RangeRun"/> when null. A wider one asks for
    /// extrapolation, which the result's notes then say.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the range: wait states and voltage change
    /// there in ways that a line doesn't know.</exception>
    public Measured<Duration> RunTimeAt(Frequency clock, ClockRange? range = null)
    {
        var hertz = (range ?? RangeRun).Hertz(clock, range is not null, nameof(clock));
        string[] notes = RangeRun.Contains(clock)
            ? []
            :
            [
                $"{QuantityText.Format(clock)} lies beyond the clocks that were run, {RangeRun}: the interval takes for granted that the line holds there.",
            ];
        return Measuring.Of(Line.At(1 / hertz), seconds => Si.Duration(seconds), Ends.Positive, notes);
    }

    /// <summary>Splits run time by clock. O(n log n) in the summaries.</summary>
    /// <param name="summaries">Summaries of setups that differ in name and clock only, on one workload with one timer, at
    /// two or more clocks.</param>
    /// <param name="options">The confidence; <see cref="ConclusionOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">There are fewer than two clocks, the setups differ in more than the clock, or
    /// the timer takes its time from the clock that is changed.</exception>
    public static ClockSplit Of(IEnumerable<SetupSummary> summaries, ConclusionOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(summaries);
        SetupSummary[] group = [.. summaries.OrderBy(s => Si.Hertz(s.Setup.Clock.Nominal))];
        if (!ClockGroup.IsOne(group))
        {
            throw new ArgumentException(
                "A split by clock must be of setups that differ in name and clock only, on one workload with one timer; these differ in more, or there were none.",
                nameof(summaries)
            );
        }

        if (Si.Hertz(group[0].Setup.Clock.Nominal) == Si.Hertz(group[^1].Setup.Clock.Nominal))
        {
            throw new ArgumentException(
                $"A split by clock must have two clocks or more; all {group.Length} were {QuantityText.Format(group[0].Setup.Clock.Nominal)}.",
                nameof(summaries)
            );
        }

        if (group[0].Series.Timer.DerivedFromChangedClock == true)
        {
            throw new ArgumentException(
                $"A split by clock must have a timer of its own pace; timer \"{group[0].Series.Timer.Name}\" takes its time from the clock that is changed.",
                nameof(summaries)
            );
        }

        return ClockSplitFigures.Of(group, options ?? ConclusionOptions.Default);
    }
}
