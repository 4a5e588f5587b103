using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>The clock at which a task takes the least charge: t₀ waiting at I_w + k_w f and N cycles of computing at
/// I_c + k_c f take Q = t₀ (I_w + k_w f) + (N/f)(I_c + k_c f), which is least at f = √(I_c N/(k_w t₀)).</summary>
/// <remarks>
/// <para>A slow clock computes long at the current that doesn't follow it, a fast one waits at a current that does. Where one
/// of the two terms isn't there, the best clock is an end of the range (<see cref="Case"/>).</para>
/// <para>Without currents by phase the running current stands for both: that is right only if the board draws as much while
/// it waits as while it computes (<see cref="RestsOnEqualDraw"/>).</para>
/// <para>The interval is drawn by Monte Carlo from all sources of the lines (gum-s1-2008), seeded: the same data give the
/// same ends. It has no upper end where what rises may be nothing. Near its least the charge is flat: a clock 25, 50 or
/// 100 % above the best costs 2.5, 8 or 25 % of the part that varies, so <see cref="NotToldFromBest"/> says more than the
/// best clock itself.</para>
/// <para>At one voltage the least energy is where the least charge is; where the board's voltage differs from clock to
/// clock, <see cref="LeastEnergy"/> may be elsewhere.</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record BestClock
{
    internal BestClock(
        ClockSplit split,
        (CurrentAgainstClock Waiting, CurrentAgainstClock Computing) currents,
        (ClockRange Range, BestClockOptions Options) asked,
        BestClockFigures figures,
        IEnumerable<string> notes
    )
    {
        Split = split;
        Waiting = currents.Waiting;
        Computing = currents.Computing;
        Range = asked.Range;
        Repeated = asked.Options.Repeated;
        Case = figures.Case;
        Balance = figures.Balance;
        Clock = figures.Clock;
        Interval = figures.Interval;
        Bounds = figures.Bounds;
        SlowestInTime = figures.SlowestInTime;
        Charge = figures.Charge;
        Offered = ValueList<BestClockPoint>.Of(figures.Offered, "Offered clocks", nameof(figures));
        Notes = ValueList<string>.Of(notes, "Notes", nameof(notes));
        Lines = figures.Lines;
    }

    /// <summary>The split of run time that it rests on.</summary>
    public ClockSplit Split { get; }

    /// <summary>Current against clock while waiting; the running current where phases weren't read.</summary>
    public CurrentAgainstClock Waiting { get; }

    /// <summary>Current against clock while computing; the running current where phases weren't read.</summary>
    public CurrentAgainstClock Computing { get; }

    /// <summary>Whether waiting and computing are taken to draw alike, since phases weren't read.</summary>
    public bool RestsOnEqualDraw => Waiting.Phase == SupplyPhase.Running;

    /// <summary>The range that the best clock is sought in.</summary>
    public ClockRange Range { get; }

    /// <summary>The period, idle current and wake cost; absent for a task alone.</summary>
    public RepeatedTask? Repeated { get; }

    /// <summary>Where the charge is least, by what rises with the clock and what falls.</summary>
    public BestClockCase Case { get; }

    /// <summary>The clock at which what rises and what falls balance, wherever it lies, in hertz; absent where they don't.</summary>
    public Frequency? Balance { get; }

    /// <summary>The best clock of the range, in hertz: the balance or the end that comes closest to it.</summary>
    public Frequency Clock { get; }

    /// <summary>The interval of the best clock, not cut to the range; absent where a line has none.</summary>
    public ClockInterval? Interval { get; }

    /// <summary>The bounds that single readings of time and current allow; absent where there is more than one reading, the
    /// readings agree with no line, or the task is repeated.</summary>
    public ClockInterval? Bounds { get; }

    /// <summary>The slowest clock at which a repeated task is done when the next begins, in hertz; absent for a task alone.</summary>
    public Frequency? SlowestInTime { get; }

    /// <summary>The charge per task at the best clock, or per period where the task is repeated, in coulombs.</summary>
    public Measured<ElectricCharge> Charge { get; }

    /// <summary>The clocks that the board offers, lowest first, with what a task costs at each.</summary>
    public IReadOnlyList<BestClockPoint> Offered { get; }

    /// <summary>The offered clock of the least charge.</summary>
    public BestClockPoint BestOffered => Offered.MinBy(p => Si.Coulombs(p.Charge.Value))!;

    /// <summary>The offered clocks whose charge the data can't tell from the least, that one included.</summary>
    public IReadOnlyList<BestClockPoint> NotToldFromBest => [.. Offered.Where(p => p.IsNotToldFromBest)];

    /// <summary>The offered clock of the least energy among those whose voltage is known; absent where none is.</summary>
    public BestClockPoint? LeastEnergy =>
        Offered.Where(p => p.Energy is not null).MinBy(p => Si.Joules(p.Energy!.Value));

    /// <summary>What a reader has to know besides.</summary>
    public IReadOnlyList<string> Notes { get; }

    internal TaskLines Lines { get; }

    /// <summary>The charge at a clock, with its interval.</summary>
    /// <param name="clock">A clock in the range.</param>
    /// <exception cref="ArgumentOutOfRangeException">The clock lies outside the range, or is too slow for the period.</exception>
    public Measured<ElectricCharge> ChargeAt(Frequency clock)
    {
        var hertz = Range.Hertz(clock, isStated: true, nameof(clock));
        if (SlowestInTime is { } slowest && hertz < Si.Hertz(slowest))
        {
            throw new ArgumentOutOfRangeException(
                nameof(clock),
                clock,
                $"Clock must be at least {ClockInterval.Shown(slowest)}, for the task to be done in {QuantityText.Format(Repeated!.Period)}; was {QuantityText.Format(clock)}."
            );
        }

        return Split.Measuring.Of(Lines.ChargeAt(hertz), coulombs => Si.Charge(coulombs), Ends.Positive);
    }

    /// <summary>Whether a split's setups had their current read at two clocks or more, so that there can be a best one.</summary>
    public static bool IsPossible(ClockSplit split)
    {
        ArgumentNullException.ThrowIfNull(split);
        SetupSummary[] summaries = [.. split.Points.Select(p => p.Summary)];
        return CurrentAgainstClock.IsPossible(summaries, SupplyPhase.Running) || HasPhases(summaries);
    }

    /// <summary>Finds the best clock. O(n) in the draws.</summary>
    /// <param name="split">The split of run time, of setups whose current was read at two clocks or more.</param>
    /// <param name="options">Range, offered clocks, period; <see cref="BestClockOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">Current was read at fewer than two clocks, a repeated task has no idle current, or
    /// no clock of the range is fast enough for its period.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An offered clock lies outside the range.</exception>
    public static BestClock Of(ClockSplit split, BestClockOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(split);
        if (!IsPossible(split))
        {
            throw new ArgumentException(
                $"A best clock must rest on currents read at two clocks or more; those of {split.Name} were read at fewer.",
                nameof(split)
            );
        }

        var asked = options ?? BestClockOptions.Default;
        var conclusion = new ConclusionOptions { Confidence = split.Measuring.Confidence };
        SetupSummary[] summaries = [.. split.Points.Select(p => p.Summary)];
        var hasPhases = HasPhases(summaries);
        var waiting = CurrentAgainstClock.Of(
            summaries,
            hasPhases ? SupplyPhase.Waiting : SupplyPhase.Running,
            conclusion
        );
        var computing = hasPhases ? CurrentAgainstClock.Of(summaries, SupplyPhase.Computing, conclusion) : waiting;
        return BestClockFigures.Find(split, (waiting, computing), asked, conclusion);
    }

    /// <summary>"least charge at 231 MHz (95 % interval 210 MHz to 256 MHz), within 80 MHz to 240 MHz".</summary>
    public override string ToString()
    {
        var where = Case switch
        {
            BestClockCase.Flat => "the charge doesn't depend on the clock",
            _ => $"least charge at {ClockInterval.Shown(Clock)}",
        };
        var interval = Interval ?? Bounds;
        return $"{where} ({interval?.ToString() ?? "no interval"}), within {Range}";
    }

    private static bool HasPhases(SetupSummary[] summaries) =>
        CurrentAgainstClock.IsPossible(summaries, SupplyPhase.Waiting)
        && CurrentAgainstClock.IsPossible(summaries, SupplyPhase.Computing);
}
