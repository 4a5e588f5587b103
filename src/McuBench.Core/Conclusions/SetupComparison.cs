using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Two setups compared on one workload: by run time, by cycles per item, and by charge and energy per task
/// where both were read; and all else in which the two differ.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record SetupComparison
{
    internal SetupComparison(
        SetupSummary first,
        SetupSummary second,
        QuantityComparison runTime,
        Measured<double> speedRatio,
        QuantityComparison cyclesPerItem,
        QuantityComparison? chargePerTask,
        QuantityComparison? energyPerTask,
        IEnumerable<SetupDifference> differences,
        IEnumerable<string> notes
    )
    {
        First = first;
        Second = second;
        RunTime = runTime;
        SpeedRatio = speedRatio;
        CyclesPerItem = cyclesPerItem;
        ChargePerTask = chargePerTask;
        EnergyPerTask = energyPerTask;
        Differences = ValueList<SetupDifference>.Of(differences, "Differences", nameof(differences));
        Notes = ValueList<string>.Of(notes, "Notes", nameof(notes));
    }

    /// <summary>The first setup's summary.</summary>
    public SetupSummary First { get; }

    /// <summary>The second setup's summary.</summary>
    public SetupSummary Second { get; }

    /// <summary>The workload that both executed.</summary>
    public Workload Workload => First.Workload;

    /// <summary>The comparison by run time, first to second.</summary>
    public QuantityComparison RunTime { get; }

    /// <summary>How many times as fast the first is: the second's run time divided by the first's. 1.25 means 25 %
    /// faster, which is the same result as 20 % less time.</summary>
    public Measured<double> SpeedRatio { get; }

    /// <summary>How much less time the first takes, as a share of the second's run time: 20 % less time is the same
    /// result as 25 % faster. Negative where the first takes more.</summary>
    public Measured<Ratio> TimeSaved => RunTime.SavedByFirst;

    /// <summary>The comparison by clock cycles per work item, first to second.</summary>
    public QuantityComparison CyclesPerItem { get; }

    /// <summary>The comparison by charge per task, first to second; null where either wasn't read.</summary>
    public QuantityComparison? ChargePerTask { get; }

    /// <summary>The comparison by energy per task, first to second; null where either wasn't read or has no voltage.</summary>
    public QuantityComparison? EnergyPerTask { get; }

    /// <summary>All in which the two setups and their trials differ, as far as it was noted.</summary>
    public IReadOnlyList<SetupDifference> Differences { get; }

    /// <summary>What a reader has to know of this comparison: specimens behind it, order, timer.</summary>
    public IReadOnlyList<string> Notes { get; }

    /// <summary>Whether each side rests on a single specimen or on unnamed ones: what is said then holds for these
    /// specimens, not for the models of board.</summary>
    public bool IsOfSpecimensOnly => First.Specimens.Count < 2 || Second.Specimens.Count < 2;

    /// <summary>Compares two setups on the workload that both executed. O(n log n) in their trials.</summary>
    /// <param name="first">The one whose figures are divided by the other's.</param>
    /// <param name="second">The one that is divided by.</param>
    /// <param name="options">Confidence and margin; <see cref="ConclusionOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">The two executed different workloads.</exception>
    public static SetupComparison Of(SetupSummary first, SetupSummary second, ConclusionOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return Of(
            first,
            second,
            Drift.Of(first.Series) is { IsFound: true } || Drift.Of(second.Series) is { IsFound: true },
            options ?? ConclusionOptions.Default
        );
    }

    /// <summary>Compares two setups of whose trials it is known whether they drifted.</summary>
    internal static SetupComparison Of(SetupSummary first, SetupSummary second, bool drifts, ConclusionOptions options)
    {
        if (first.Workload != second.Workload)
        {
            throw new ArgumentException(
                $"Two setups must be compared on one workload; were \"{first.Workload.Name}\" and \"{second.Workload.Name}\".",
                nameof(second)
            );
        }

        var trials = first.Series.Trials.Count + second.Series.Trials.Count;
        var relation = TrialFacts.Relation(first.Workings.Facts, second.Workings.Facts);
        NoVerdictReason? withheld =
            TimerFollowsClock(first, second) ? NoVerdictReason.TimerFollowsClock
            : relation is OrderRelation.SessionsApart ? NoVerdictReason.SessionsConfounded
            : relation is OrderRelation.OneBeforeTheOther or OrderRelation.OneMostlyBeforeTheOther
                ? NoVerdictReason.OrderConfounded
            : null;

        var (a, b) = WithSharedCorrelation(first, second);
        var items = first.Workload.WorkItemsPerRun;
        return new SetupComparison(
            first,
            second,
            Compared(ComparedQuantity.RunTime, a.RunTime, b.RunTime),
            CompareFigures.SpeedRatio(a.RunTime, b.RunTime, trials, options.Confidence),
            Compared(ComparedQuantity.CyclesPerItem, a.CyclesPerItem(items), b.CyclesPerItem(items)),
            MayCompare(ComparedQuantity.ChargePerTask, a.Charge, b.Charge),
            MayCompare(ComparedQuantity.EnergyPerTask, a.Energy, b.Energy),
            SetupDifferences.Between(first, second),
            NotesOf(first, second, relation, drifts)
        );

        QuantityComparison Compared(ComparedQuantity quantity, UncertainValue ofFirst, UncertainValue ofSecond) =>
            CompareFigures.Of(quantity, ofFirst, ofSecond, trials, options, withheld);

        // A current of nothing has no ratio; the summary still shows it.
        QuantityComparison? MayCompare(ComparedQuantity quantity, UncertainValue? ofFirst, UncertainValue? ofSecond) =>
            ofFirst is { Value: > 0 } && ofSecond is { Value: > 0 } ? Compared(quantity, ofFirst, ofSecond) : null;
    }

    /// <summary>Both sides' figures, with the correlation of trials as both together show it in place of each side's
    /// own.</summary>
    private static (SummaryWorkings First, SummaryWorkings Second) WithSharedCorrelation(
        SetupSummary first,
        SetupSummary second
    )
    {
        var pooled = SerialCorrelation.Pooled(first.Series.Trials, second.Series.Trials);
        return (Rescaled(first, pooled.First), Rescaled(second, pooled.Second));

        static SummaryWorkings Rescaled(SetupSummary summary, SerialCorrelation? shared)
        {
            if (shared is null || SerialCorrelation.Of(summary.Series.Trials) is not { } own || own == shared)
            {
                return summary.Workings;
            }

            var key = RunTimeFigures.ScatterOf(summary.Series);
            var workings = summary.Workings;
            return workings with
            {
                RunTime = Of(workings.RunTime),
                Charge = workings.Charge is { } charge ? Of(charge) : null,
                Energy = workings.Energy is { } energy ? Of(energy) : null,
            };

            UncertainValue Of(UncertainValue value) =>
                value.WithScaled(
                    key,
                    shared.VarianceFactor / own.VarianceFactor,
                    shared.FreedomFactor / own.FreedomFactor
                );
        }
    }

    private static bool TimerFollowsClock(SetupSummary first, SetupSummary second) =>
        first.Series.Timer == second.Series.Timer
        && first.Series.Timer.DerivedFromChangedClock == true
        && Si.Hertz(first.Setup.Clock.Nominal) != Si.Hertz(second.Setup.Clock.Nominal);

    private static IEnumerable<string> NotesOf(
        SetupSummary first,
        SetupSummary second,
        OrderRelation relation,
        bool drifts
    )
    {
        foreach (var (summary, other) in new[] { (first, second), (second, first) })
        {
            var isSameBoard = summary.Setup.Board == other.Setup.Board;
            if (summary.Specimens.Count < 2 && !(isSameBoard && summary == second))
            {
                yield return summary.Specimens is [var only]
                    ? $"One specimen of {summary.Setup.Board.Name} (\"{only}\") ran: what is said holds for this specimen."
                    : $"Which specimens of {summary.Setup.Board.Name} ran isn't noted: what is said holds for what was on the bench.";
            }
        }

        var order = relation switch
        {
            OrderRelation.OneBeforeTheOther =>
                "All trials of one setup came before all of the other: a drift of the bench would look like a difference, so there is no verdict.",
            OrderRelation.OneMostlyBeforeTheOther =>
                "Trials of one setup mostly came before those of the other: a drift of the bench would look like a difference, so there is no verdict.",
            OrderRelation.SessionsApart =>
                "Each setup was run in sessions of its own: what changes from session to session would look like a difference, so there is no verdict.",
            _ => null,
        };
        if (order is not null)
        {
            yield return drifts ? order + " Run times did drift." : order;
        }
    }
}
