using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>
/// What the trials of one setup on one workload, with one timer, say: run time, throughput, cycles, and charge and
/// energy where the supply was read.
/// </summary>
/// <remarks>
/// <para>Each reading stands for an interval that the timer's resolution gives, and each figure's interval holds
/// resolution, timer and clock tolerance and meter accuracy besides scatter. Throughput is the reciprocal of run time
/// per item, ends and all, and work per megacycle that of cycles per item, so the pairs never contradict each other.</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record SetupSummary
{
    internal SetupSummary(
        TrialSeries series,
        Measured<Duration> runTime,
        Measured<Frequency> throughput,
        Measured<double> cyclesPerItem,
        Measured<double> itemsPerMegacycle,
        IEnumerable<string> specimens,
        SupplySummary? supply,
        SummaryWorkings workings
    )
    {
        Series = series;
        RunTime = runTime;
        Throughput = throughput;
        CyclesPerItem = cyclesPerItem;
        ItemsPerMegacycle = itemsPerMegacycle;
        Specimens = ValueList<string>.Of(specimens, "Specimens", nameof(specimens));
        Supply = supply;
        Workings = workings;
    }

    /// <summary>The trials it was computed from.</summary>
    public TrialSeries Series { get; }

    /// <summary>What the trials were run on.</summary>
    public Setup Setup => Series.Setup;

    /// <summary>What was executed.</summary>
    public Workload Workload => Series.Workload;

    /// <summary>The mean run time of one run of the workload, in seconds. Readings of timers that cut off or start on a
    /// tick are lifted by half a step first.</summary>
    public Measured<Duration> RunTime { get; }

    /// <summary>Work items per second, in hertz.</summary>
    public Measured<Frequency> Throughput { get; }

    /// <summary>Clock cycles per work item, at the nominal clock; its tolerance is in the interval where it is known.
    /// Time that doesn't follow the clock is counted in.</summary>
    public Measured<double> CyclesPerItem { get; }

    /// <summary>Work items per million clock cycles: throughput per megahertz.</summary>
    public Measured<double> ItemsPerMegacycle { get; }

    /// <summary>The names of the specimens that ran, in ordinal order; empty where none was noted.</summary>
    public IReadOnlyList<string> Specimens { get; }

    /// <summary>Current, charge and energy; absent where no current was read while this ran.</summary>
    public SupplySummary? Supply { get; }

    /// <summary>The figures behind the results with their sources of uncertainty, from which comparisons are made.</summary>
    internal SummaryWorkings Workings { get; }

    /// <summary>Summarises a series. O(n) in trials and readings.</summary>
    /// <param name="series">The trials, at least one of which counts as a result.</param>
    /// <param name="readings">Supply readings; those of other setups are passed over. None unless given.</param>
    /// <param name="options">What is asked; <see cref="ConclusionOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">No trial of the series counts as a result: every output had the wrong checksum.</exception>
    public static SetupSummary Of(
        TrialSeries series,
        IEnumerable<SupplyReading>? readings = null,
        ConclusionOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(series);
        return Of(
            series,
            [.. (readings ?? []).Where(r => r.Setup == series.Setup)],
            fixedTime: null,
            options ?? ConclusionOptions.Default
        );
    }

    /// <summary>Summarises a series with the readings of its setup and, where a split found it, the time that doesn't
    /// follow the clock.</summary>
    internal static SetupSummary Of(
        TrialSeries series,
        IReadOnlyList<SupplyReading> readings,
        UncertainValue? fixedTime,
        ConclusionOptions options
    )
    {
        if (series.Trials.Count == 0)
        {
            throw new ArgumentException(
                $"A series must hold a trial that counts as a result; all {series.NotResults.Count} of {series.Setup.Name}, {series.Workload.Name}, had the wrong checksum.",
                nameof(series)
            );
        }

        var runTime = RunTimeFigures.RunTime(series, series.Trials);
        var clock = RunTimeFigures.Clock(series);
        var items = series.Workload.WorkItemsPerRun;
        var supply = SupplyFigures.Of(series, runTime, readings, fixedTime, options.Confidence);
        var workings = new SummaryWorkings
        {
            RunTime = runTime,
            Clock = clock,
            Facts = TrialFacts.Of(series),
            Phases = PhaseFigures.Of(series, readings),
            Running = supply?.Running,
            Charge = supply?.Charge,
            Energy = supply?.Energy,
        };
        var cycles = workings.CyclesPerItem(items);
        var measure = new Measure(options.Confidence, series.Trials.Count, RunTimeFigures.MethodOf(series));
        var notes = NotesOf(series, runTime);
        var perCycle = series.Setup.Clock.Tolerance is null
            ? notes.Append("The clock's tolerance is unknown and not in the interval.")
            : notes;
        return new SetupSummary(
            series,
            measure.Of(runTime, seconds => Si.Duration(seconds), Ends.Positive, notes),
            measure.Reciprocal(items, runTime, hertz => Si.Frequency(hertz), Ends.Positive, notes),
            measure.Of(cycles, number => number, Ends.Positive, perCycle),
            measure.Reciprocal(CyclesPerMegacycle, cycles, number => number, Ends.Positive, perCycle),
            RunTimeFigures.SpecimensOf(series),
            supply?.Summary,
            workings
        );
    }

    private const double CyclesPerMegacycle = 1e6;

    private static List<string> NotesOf(TrialSeries series, UncertainValue runTime)
    {
        var timer = series.Timer;
        var notes = new List<string>();
        if (timer.Reading is TimerReading.Truncated or TimerReading.TickDifferenceSynchronousStart)
        {
            notes.Add(
                $"Readings are cut to the step below; the mean was lifted by half a step, {Said.Seconds(Si.Seconds(timer.Resolution) / 2)}."
            );
        }

        if (timer.Tolerance is null)
        {
            notes.Add("The timer's tolerance is unknown and not in the interval.");
        }

        if (series.Trials is [var only])
        {
            var (below, above) = timer.Reach;
            var read = Si.Seconds(only.RunTime);
            notes.Add(
                $"The reading itself stands for a run time from {Said.Seconds(read - Si.Seconds(below))} to {Said.Seconds(read + Si.Seconds(above))}, the timer's tolerance apart: bounds of this one run, not a confidence interval."
            );
        }
        else if (runTime.Contributions.Any(c => IsUndivided(c.Source)))
        {
            notes.Add(
                $"The scatter doesn't spread the readings over the timer's step of {QuantityText.Format(timer.Resolution)}, so the step enters undivided: more trials would not narrow the interval, a finer timer or a longer run would."
            );
        }

        if (series.NotResults.Count > 0)
        {
            notes.Add($"{Said.Count(series.NotResults.Count, "trial")} with the wrong output left out.");
        }

        return notes;
    }

    private static bool IsUndivided(Source source) =>
        source.Key.StartsWith(ReadingMean.StepKey, StringComparison.Ordinal) && !source.AveragesDown;
}
