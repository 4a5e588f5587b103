using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Finds a best clock and puts its results together.</summary>
internal sealed record BestClockFigures
{
    private const string Method = "charge from lines of run time and current, first order (GUM 5.1)";

    /// <summary>The largest angle that stands for a finite clock: beyond it the tangent is rounding.</summary>
    private const double UprightAngle = Math.PI / 2 - 1e-9;

    public required TaskLines Lines { get; init; }

    public required BestClockCase Case { get; init; }

    public required Frequency? Balance { get; init; }

    public required Frequency Clock { get; init; }

    public required ClockInterval? Interval { get; init; }

    public required ClockInterval? Bounds { get; init; }

    public required Frequency? SlowestInTime { get; init; }

    public required Measured<ElectricCharge> Charge { get; init; }

    public required IReadOnlyList<BestClockPoint> Offered { get; init; }

    public static BestClock Find(
        ClockSplit split,
        (CurrentAgainstClock Waiting, CurrentAgainstClock Computing) currents,
        BestClockOptions options,
        ConclusionOptions conclusion
    )
    {
        var lines = TaskLines.Of(split, currents.Waiting, currents.Computing, options.Repeated, conclusion);
        var range = options.Range ?? split.RangeRun;
        var slowest = lines.SlowestHertz(lines.FixedTime.Value, lines.Cycles.Value);
        if (slowest > range.HighestHertz)
        {
            throw new ArgumentException(
                $"Period must leave time for the task at the highest clock of the range, {QuantityText.Format(range.Highest)}; a run of {split.Name} takes longer than {QuantityText.Format(options.Repeated!.Period)} there.",
                nameof(options)
            );
        }

        var lowest = Math.Max(range.LowestHertz, slowest);
        var cost = lines.Cost;
        var best = cost.Best(lowest, range.HighestHertz);
        var clock = Math.Clamp(best, lowest, range.HighestHertz);
        var measure = split.Measuring with { Method = Method };
        var figures = new BestClockFigures
        {
            Lines = lines,
            Case = cost.Case,
            Balance = cost.Case == BestClockCase.Between ? Si.Frequency(best) : null,
            Clock = Si.Frequency(clock),
            Interval = IntervalOf(lines, range, options, conclusion.Confidence),
            Bounds = options.Repeated is null ? BestClockBounds.Of(split, currents.Waiting, currents.Computing) : null,
            SlowestInTime = options.Repeated is null ? null : Si.Frequency(slowest),
            Charge = measure.Of(lines.ChargeAt(clock), coulombs => Si.Charge(coulombs), Ends.Positive),
            Offered = OfferedOf(split, lines, range, lowest, options, measure),
        };
        return new BestClock(split, currents, (range, options), figures, Notes(split, currents, range, figures));
    }

    /// <summary>By Monte Carlo on the angle whose tangent is the clock in units of the range's geometric middle, so that
    /// infinite clocks have a place; quantiles don't mind the bend.</summary>
    private static ClockInterval? IntervalOf(
        TaskLines lines,
        ClockRange range,
        BestClockOptions options,
        double confidence
    )
    {
        var draws = new SourceDraws(lines.All);
        if (!draws.IsPossible)
        {
            return null;
        }

        var (lowest, highest) = (range.LowestHertz, range.HighestHertz);
        var middle = Math.Sqrt(lowest * highest);
        var angles = draws.Interval(
            values =>
            {
                var slowest = lines.SlowestHertz(values[0], values[1]);
                var best = lines.CostOf(values).Best(Math.Max(lowest, Math.Min(slowest, highest)), highest);
                return Math.Atan(Math.Max(best, slowest) / middle);
            },
            options.Seed,
            options.Draws,
            confidence
        );
        return angles is null ? null : new ClockInterval(ClockOf(angles.Lower), ClockOf(angles.Upper), confidence);

        double ClockOf(double angle) =>
            angle < UprightAngle ? middle * Math.Tan(angle)
            : angle == angles.Lower ? double.MaxValue
            : double.PositiveInfinity;
    }

    private static List<BestClockPoint> OfferedOf(
        ClockSplit split,
        TaskLines lines,
        ClockRange range,
        double lowest,
        BestClockOptions options,
        Measure measure
    )
    {
        var isStated = options.Range is not null;
        IEnumerable<Frequency> offered =
            options.Offered.Count > 0
                ? options.Offered
                : split.Points.Select(p => p.Clock).DistinctBy(f => Si.Hertz(f)).Where(range.Contains);
        var charges = offered
            .Select(clock => (Clock: clock, Hertz: range.Hertz(clock, isStated, nameof(options))))
            .Where(at => at.Hertz >= lowest)
            .Select(at => (at.Clock, at.Hertz, Charge: lines.ChargeAt(at.Hertz)))
            .ToList();
        if (charges.Count == 0)
        {
            throw new ArgumentException(
                $"An offered clock must be fast enough for the task to be done in its period; of {split.Name} none was.",
                nameof(options)
            );
        }

        var best = charges.MinBy(at => at.Charge.Value).Charge;
        return
        [
            .. charges.Select(at => new BestClockPoint(
                at.Clock,
                measure.Of(at.Charge, coulombs => Si.Charge(coulombs), Ends.Positive),
                measure.Of(
                    ReferenceEquals(at.Charge, best) ? UncertainValue.Exact(1) : at.Charge.Over(best),
                    ratio => ratio,
                    Ends.Logarithmic
                ),
                VoltageAt(split, at.Hertz) is { } volts
                    ? measure.Of(volts.Times(at.Charge), joules => Si.Energy(joules), Ends.Positive)
                    : null
            )),
        ];
    }

    /// <summary>The voltage of the setup that ran at a clock, where one is known.</summary>
    private static UncertainValue? VoltageAt(ClockSplit split, double hertz) =>
        split
            .Points.Where(p => Si.Hertz(p.Clock) == hertz)
            .Select(p => p.Summary.Workings)
            .Where(w => w.Energy is not null && w.Charge is not null)
            .Select(w => w.Energy!.Over(w.Charge!))
            .FirstOrDefault();

    private static IEnumerable<string> Notes(
        ClockSplit split,
        (CurrentAgainstClock Waiting, CurrentAgainstClock Computing) currents,
        ClockRange range,
        BestClockFigures figures
    )
    {
        if (currents.Waiting.Phase == Supply.SupplyPhase.Running)
        {
            yield return "Rests on waiting and computing drawing alike, since currents weren't read by phase: a line through whole-run means is wrong where they don't.";
        }

        if (split.IsApparent)
        {
            yield return "Rests on a fixed part that is only apparent.";
        }

        if (!split.RangeRun.Contains(range.Lowest) || !split.RangeRun.Contains(range.Highest))
        {
            yield return $"The range reaches beyond the clocks that were run, {split.RangeRun}: that the lines hold there is taken for granted.";
        }

        if (figures.Balance is { } balance && Si.Hertz(balance) != Si.Hertz(figures.Clock))
        {
            yield return $"What rises and what falls balance at {ClockInterval.Shown(balance)}, beyond what can be chosen: the nearest end is the best.";
        }

        if (figures.Interval is { Upper: null })
        {
            yield return "What rises with the clock can't be told from nothing: nothing bounds the best clock from above.";
        }

        if (figures.Offered.Select(p => p.Energy).OfType<Measured<Energy>>().Any())
        {
            yield return "Energy is at the voltage that the board had at each clock.";
        }
    }
}
