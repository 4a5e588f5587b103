using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>The running current of one board, core and build at two or more clocks: I = base + slope · f.</summary>
/// <remarks>
/// <para>A straight line through the mean currents against f, weighted by their own standard uncertainties. With two
/// clocks it fits whatever the truth is (<see cref="IsApparent"/>).</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record CurrentAgainstClock
{
    internal CurrentAgainstClock(
        string name,
        IEnumerable<SetupSummary> summaries,
        Measured<ElectricCurrent> baseCurrent,
        Measured<ElectricCurrent> currentPerMegahertz,
        LackOfFit? lackOfFit,
        IEnumerable<string> notes,
        UncertainLine line
    )
    {
        Name = name;
        Summaries = ValueList<SetupSummary>.Of(summaries, "Summaries", nameof(summaries));
        BaseCurrent = baseCurrent;
        CurrentPerMegahertz = currentPerMegahertz;
        LackOfFit = lackOfFit;
        Notes = ValueList<string>.Of(notes, "Notes", nameof(notes));
        Line = line;
    }

    /// <summary>What was run at several clocks, in words.</summary>
    public string Name { get; }

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

    /// <summary>Fits the line. O(n log n) in the summaries.</summary>
    /// <param name="summaries">Summaries of setups that differ in name and clock only, on one workload with one timer, at
    /// two or more clocks; those without a running current are passed over.</param>
    /// <param name="options">The confidence; <see cref="ConclusionOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">Current was read at fewer than two clocks, or the setups differ in more than
    /// the clock.</exception>
    public static CurrentAgainstClock Of(IEnumerable<SetupSummary> summaries, ConclusionOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(summaries);
        SetupSummary[] group =
        [
            .. summaries.Where(s => s.Workings.Running is not null).OrderBy(s => Si.Hertz(s.Setup.Clock.Nominal)),
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
        UncertainValue[] amperes = [.. group.Select(s => s.Workings.Running!)];

        // What all points share moves the line, not the points against it.
        var everywhere = amperes
            .SelectMany(point => point.Contributions.Select(c => c.Source.Key))
            .GroupBy(key => key, StringComparer.Ordinal)
            .Where(shared => shared.Count() == amperes.Length)
            .Select(shared => shared.Key)
            .ToHashSet(StringComparer.Ordinal);
        UncertainValue[] alone = [.. amperes.Select(point => point.Without(everywhere))];
        var line = UncertainLine.Through(
            hertz,
            amperes,
            [.. alone.Select(point => point.StandardUncertainty * point.StandardUncertainty)],
            alone.Min(point => point.DegreesOfFreedom)
        );

        var measure = new Measure(
            confidence,
            group.Sum(s => s.Supply!.Readings.Count),
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
            group,
            measure.Of(line.Intercept, value => Si.Current(value), Ends.Symmetric),
            measure.Of(line.Slope.Times(HertzPerMegahertz), value => Si.Current(value), Ends.Symmetric),
            line.LackOfFit,
            notes,
            line
        );
    }

    private const double HertzPerMegahertz = 1e6;
}
