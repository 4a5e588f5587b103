using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Stats.Descriptive;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>The current of one board, core and build at two or more clocks, in one phase: I = base + slope · f.</summary>
/// <remarks>
/// <para>A straight line through the mean currents against f, weighted with the relative scatter of all clocks together and
/// each one's own last digit and offset; the intervals carry each clock's own scatter through the line (GUM 5.1). With two
/// clocks it fits whatever the truth is (<see cref="IsApparent"/>).</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record CurrentAgainstClock
{
    internal CurrentAgainstClock(
        string name,
        SupplyPhase phase,
        IEnumerable<SetupSummary> summaries,
        Measured<ElectricCurrent> baseCurrent,
        Measured<ElectricCurrent> currentPerMegahertz,
        LackOfFit? lackOfFit,
        IEnumerable<string> notes,
        UncertainLine line
    )
    {
        Name = name;
        Phase = phase;
        Summaries = ValueList<SetupSummary>.Of(summaries, "Summaries", nameof(summaries));
        BaseCurrent = baseCurrent;
        CurrentPerMegahertz = currentPerMegahertz;
        LackOfFit = lackOfFit;
        Notes = ValueList<string>.Of(notes, "Notes", nameof(notes));
        Line = line;
    }

    /// <summary>What was run at several clocks, in words.</summary>
    public string Name { get; }

    /// <summary>What the board was doing while it was read.</summary>
    public SupplyPhase Phase { get; }

    /// <summary>The workload.</summary>
    public Workload Workload => Summaries[0].Workload;

    /// <summary>The setups, lowest clock first: at least two.</summary>
    public IReadOnlyList<SetupSummary> Summaries { get; }

    /// <summary>The current that doesn't follow the clock, in amperes.</summary>
    public Measured<ElectricCurrent> BaseCurrent { get; }

    /// <summary>The current that each megahertz adds, in amperes.</summary>
    public Measured<ElectricCurrent> CurrentPerMegahertz { get; }

    /// <summary>Whether the line could not be tested or was refuted.</summary>
    public bool IsApparent => LackOfFit is null or { IsRefuted: true };

    /// <summary>The test of the line; null with two clocks.</summary>
    public LackOfFit? LackOfFit { get; }

    /// <summary>What a reader of the line has to know.</summary>
    public IReadOnlyList<string> Notes { get; }

    /// <summary>The line with its sources of uncertainty: amperes against hertz.</summary>
    internal UncertainLine Line { get; }

    /// <summary>The current that the line gives at a clock, for drawing: without an interval.</summary>
    /// <param name="clock">A frequency within the range that was run.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency lies outside the range that was run.</exception>
    public ElectricCurrent CurrentAt(Frequency clock)
    {
        var hertz = Si.Hertz(clock, nameof(clock));
        var (lowest, highest) = (Summaries[0].Setup.Clock.Nominal, Summaries[^1].Setup.Clock.Nominal);
        return hertz >= Si.Hertz(lowest) && hertz <= Si.Hertz(highest)
            ? Si.Current(Line.At(hertz).Value)
            : throw new ArgumentOutOfRangeException(
                nameof(clock),
                clock,
                $"Clock must lie within the range that was run, {QuantityText.Format(lowest)} to {QuantityText.Format(highest)}; was {QuantityText.Format(clock)}."
            );
    }

    /// <summary>Fits the line of the running current. O(n log n) in the summaries.</summary>
    /// <param name="summaries">Summaries of setups that differ in name and clock only, on one workload with one timer, at
    /// two or more clocks; those without a running current are passed over.</param>
    /// <param name="options">The confidence; <see cref="ConclusionOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">Current was read at fewer than two clocks, or the setups differ in more than
    /// the clock.</exception>
    public static CurrentAgainstClock Of(IEnumerable<SetupSummary> summaries, ConclusionOptions? options = null) =>
        Of(summaries, SupplyPhase.Running, options);

    /// <summary>Fits the line of the current in a phase. O(n log n) in the summaries.</summary>
    /// <param name="summaries">Summaries of setups that differ in name and clock only, on one workload with one timer, at
    /// two or more clocks; those without a current read in the phase are passed over.</param>
    /// <param name="phase">Running, waiting, computing or idle.</param>
    /// <param name="options">The confidence; <see cref="ConclusionOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">Current was read at fewer than two clocks, or the setups differ in more than
    /// the clock.</exception>
    public static CurrentAgainstClock Of(
        IEnumerable<SetupSummary> summaries,
        SupplyPhase phase,
        ConclusionOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(summaries);
        Require.Defined(phase, "Supply phase", nameof(phase));
        SetupSummary[] group =
        [
            .. summaries.Where(s => CurrentOf(s, phase) is not null).OrderBy(s => Si.Hertz(s.Setup.Clock.Nominal)),
        ];
        if (
            !ClockGroup.IsOne(group)
            || Si.Hertz(group[0].Setup.Clock.Nominal) == Si.Hertz(group[^1].Setup.Clock.Nominal)
        )
        {
            throw new ArgumentException(
                "A line of current against clock must be of setups that differ in name and clock only, with current read at two clocks or more.",
                nameof(summaries)
            );
        }

        var confidence = (options ?? ConclusionOptions.Default).Confidence;
        double[] hertz = [.. group.Select(s => Si.Hertz(s.Setup.Clock.Nominal))];
        UncertainValue[] amperes = [.. group.Select(s => CurrentOf(s, phase)!)];

        // What all points share moves the line, not the points against it.
        var everywhere = amperes
            .SelectMany(point => point.Contributions.Select(c => c.Source.Key))
            .GroupBy(key => key, StringComparer.Ordinal)
            .Where(shared => shared.Count() == amperes.Length)
            .Select(shared => shared.Key)
            .ToHashSet(StringComparer.Ordinal);
        var variances = LineWeights.Of(
            [.. group.Select((s, i) => PointOf(amperes[i], ReadingsOf(s, phase), everywhere))],
            out var degreesOfFreedom
        );
        var line = UncertainLine.Through(hertz, amperes, variances, degreesOfFreedom);

        var measure = new Measure(
            confidence,
            group.Sum(s => ReadingsOf(s, phase).Count),
            "weighted straight line in f, propagated by source (GUM 5.1)"
        );
        var notes = new List<string>();
        if (line.LackOfFit is null)
        {
            notes.Add("Two clocks: a line fits whatever the truth is.");
        }
        else if (line.LackOfFit.IsRefuted)
        {
            notes.Add(
                $"Currents at {group.Length} clocks don't lie on a line ({Said.PValue(line.LackOfFit.PValue)}); a voltage or a wait state that changes with the clock does this. The intervals don't allow for it."
            );
        }

        return new CurrentAgainstClock(
            ClockGroup.NameOf(group),
            phase,
            group,
            measure.Of(line.Intercept, value => Si.Current(value), Ends.Symmetric),
            measure.Of(line.Slope.Times(HertzPerMegahertz), value => Si.Current(value), Ends.Symmetric),
            line.LackOfFit,
            notes,
            line
        );
    }

    /// <summary>Whether the phase was read at two clocks or more.</summary>
    internal static bool IsPossible(IEnumerable<SetupSummary> summaries, SupplyPhase phase) =>
        summaries
            .Where(s => CurrentOf(s, phase) is not null)
            .Select(s => Si.Hertz(s.Setup.Clock.Nominal))
            .Distinct()
            .Count() > 1;

    private static UncertainValue? CurrentOf(SetupSummary summary, SupplyPhase phase) =>
        phase == SupplyPhase.Running ? summary.Workings.Running : summary.Workings.Phases.Of(phase)?.Mean;

    /// <summary>The readings behind a summary's current in a phase.</summary>
    internal static IReadOnlyList<SupplyReading> ReadingsOf(SetupSummary summary, SupplyPhase phase)
    {
        if (phase != SupplyPhase.Running)
        {
            return summary.Workings.Phases.Of(phase)!.Readings;
        }

        // Where no whole run was read, the current while computing stands in for it.
        var read = summary.Supply!.Readings;
        SupplyReading[] running = [.. read.Where(r => r.Phase == SupplyPhase.Running)];
        return running.Length > 0 ? running : [.. read.Where(r => r.Phase == SupplyPhase.Computing)];
    }

    private static (double Mean, int Count, double Variance, double Besides) PointOf(
        UncertainValue current,
        IReadOnlyList<SupplyReading> readings,
        HashSet<string> everywhere
    )
    {
        double[] amperes = [.. readings.Select(r => Si.Amperes(r.Current))];
        return (
            current.Value,
            amperes.Length,
            amperes.Length > 1 ? Scale.Variance(amperes) : 0,
            current
                .Contributions.Where(c => !everywhere.Contains(c.Source.Key))
                .Where(c => !c.Source.Key.StartsWith(ReadingMean.ScatterKey, StringComparison.Ordinal))
                .Sum(c => c.Amount * c.Amount)
        );
    }

    private const double HertzPerMegahertz = 1e6;
}
