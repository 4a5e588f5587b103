using McuBench.Core.Quantities;
using McuBench.Core.Supply;

namespace McuBench.Core.Conclusions;

/// <summary>What a task's charge at a clock is made of: run time by clock, and current by clock while waiting, computing
/// and, for a repeated task, idling. In SI units.</summary>
internal sealed record TaskLines
{
    public required UncertainValue FixedTime { get; init; }

    public required UncertainValue Cycles { get; init; }

    /// <summary>The current while waiting: at a clock of zero, and for each hertz.</summary>
    public required (UncertainValue Base, UncertainValue Slope) Waiting { get; init; }

    public required (UncertainValue Base, UncertainValue Slope) Computing { get; init; }

    /// <summary>Idle current, period and charge of waking; absent for a task alone.</summary>
    public (UncertainValue Base, UncertainValue Slope, double Period, double Wake)? Idle { get; init; }

    /// <summary>The cost at the estimates.</summary>
    public ClockCost Cost => CostOf([.. All.Select(v => v.Value)]);

    /// <summary>All uncertain values, in the order that <see cref="CostOf"/> takes them.</summary>
    public IReadOnlyList<UncertainValue> All =>
        [
            FixedTime,
            Cycles,
            Waiting.Base,
            Waiting.Slope,
            Computing.Base,
            Computing.Slope,
            Idle?.Base ?? UncertainValue.Exact(0),
            Idle?.Slope ?? UncertainValue.Exact(0),
        ];

    /// <summary>The cost for values drawn: with t₀, N, I_w, k_w, I_c, k_c, I_i and k_i, per period T where there is one.</summary>
    public ClockCost CostOf(ReadOnlySpan<double> values)
    {
        var (fixedTime, cycles) = (values[0], values[1]);
        var (waiting, perWaiting, computing, perComputing) = (values[2], values[3], values[4], values[5]);
        var (idle, perIdle) = (values[6], values[7]);
        var constant = fixedTime * (waiting - idle) + cycles * (perComputing - perIdle);
        var rising = fixedTime * (perWaiting - perIdle);
        var falling = cycles * (computing - idle);
        return Idle is { } repeated
            ? new ClockCost(
                constant + repeated.Period * idle + repeated.Wake,
                rising + repeated.Period * perIdle,
                falling
            )
            : new ClockCost(constant, rising, falling);
    }

    /// <summary>The slowest clock at which a task is done when the next begins: N/(T − t₀); 0 for a task alone, infinite
    /// where no clock will do.</summary>
    public double SlowestHertz(double fixedTime, double cycles)
    {
        if (Idle is not { } repeated)
        {
            return 0;
        }

        var left = repeated.Period - fixedTime;
        return left > 0 ? Math.Max(0, cycles / left) : double.PositiveInfinity;
    }

    /// <summary>The charge at a clock with its sources, in coulombs.</summary>
    public UncertainValue ChargeAt(double hertz)
    {
        var computing = Cycles.Times(1 / hertz);
        var charge = FixedTime.Times(Current(Waiting)).Plus(computing.Times(Current(Computing)));
        if (Idle is not { } repeated)
        {
            return charge;
        }

        var rest = UncertainValue.Exact(repeated.Period).Minus(FixedTime).Minus(computing);
        return charge
            .Plus(rest.Times(Current((repeated.Base, repeated.Slope))))
            .Plus(UncertainValue.Exact(repeated.Wake));

        UncertainValue Current((UncertainValue Base, UncertainValue Slope) line) =>
            line.Base.Plus(line.Slope.Times(hertz));
    }

    /// <summary>The lines of a split whose setups had their current read.</summary>
    /// <param name="split">The split.</param>
    /// <param name="waiting">The line while waiting, or the running one.</param>
    /// <param name="computing">The line while computing, or the running one.</param>
    /// <param name="repeated">The period and what idling costs; null for a task alone.</param>
    /// <param name="options">The confidence of the idle line.</param>
    public static TaskLines Of(
        ClockSplit split,
        CurrentAgainstClock waiting,
        CurrentAgainstClock computing,
        RepeatedTask? repeated,
        ConclusionOptions options
    ) =>
        new()
        {
            FixedTime = split.Line.Intercept,
            Cycles = split.Line.Slope,
            Waiting = (waiting.Line.Intercept, waiting.Line.Slope),
            Computing = (computing.Line.Intercept, computing.Line.Slope),
            Idle = repeated is null ? null : IdleOf(split, repeated, options),
        };

    private static (UncertainValue, UncertainValue, double, double) IdleOf(
        ClockSplit split,
        RepeatedTask repeated,
        ConclusionOptions options
    )
    {
        var (period, wake) = (Si.Seconds(repeated.Period), Si.Coulombs(repeated.WakeCharge));
        SetupSummary[] summaries = [.. split.Points.Select(p => p.Summary)];
        if (repeated.Idle is { } given)
        {
            return (UncertainValue.Exact(Si.Amperes(given)), UncertainValue.Exact(0), period, wake);
        }

        if (CurrentAgainstClock.IsPossible(summaries, SupplyPhase.Idle))
        {
            var line = CurrentAgainstClock.Of(summaries, SupplyPhase.Idle, options).Line;
            return (line.Intercept, line.Slope, period, wake);
        }

        return Array.Find(summaries, s => s.Workings.Phases.Idle is not null) is { } only
            ? (only.Workings.Phases.Idle!.Mean, UncertainValue.Exact(0), period, wake)
            : throw new ArgumentException(
                $"A repeated task must have an idle current, given or read; none was read of {split.Name}.",
                nameof(repeated)
            );
    }
}
