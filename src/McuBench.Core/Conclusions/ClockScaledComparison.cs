namespace McuBench.Core.Conclusions;

/// <summary>What the split of run time by clock does to the comparison of two boards (or cores, or builds) on one workload.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record ClockScaledComparison
{
    internal ClockScaledComparison(
        ClockSplit first,
        ClockSplit second,
        QuantityComparison cyclesPerItem,
        IEnumerable<ClockScaledPair> pairs
    )
    {
        First = first;
        Second = second;
        CyclesPerItem = cyclesPerItem;
        Pairs = ValueList<ClockScaledPair>.Of(pairs, "Pairs", nameof(pairs));
    }

    /// <summary>The first board's split.</summary>
    public ClockSplit First { get; }

    /// <summary>The second board's split.</summary>
    public ClockSplit Second { get; }

    /// <summary>The comparison at equal clock: cycles per work item with fixed time taken out, first to second.</summary>
    public QuantityComparison CyclesPerItem { get; }

    /// <summary>Each setup of the first compared with each of the second, as measured and with fixed time taken out.</summary>
    public IReadOnlyList<ClockScaledPair> Pairs { get; }

    /// <summary>Compares two splits of one workload. O(n log n) in trials for each pair of setups.</summary>
    /// <param name="first">The one whose figures are divided by the other's.</param>
    /// <param name="second">The one that is divided by.</param>
    /// <param name="options">Confidence and margin; <see cref="ConclusionOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">The workloads differ, or a split has no part that follows the clock.</exception>
    public static ClockScaledComparison Of(ClockSplit first, ClockSplit second, ConclusionOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var asked = options ?? ConclusionOptions.Default;
        return Of(first, second, (a, b) => SetupComparison.Of(a, b, asked), asked);
    }

    /// <summary>Whether a split has a part that follows the clock at each of its clocks, so that ratios can be made of it.</summary>
    internal static bool IsPossible(ClockSplit split) =>
        split.Line.Slope.Value > 0
        && split.Points.All(p => p.Summary.Workings.RunTime.Value > split.Line.Intercept.Value);

    internal static ClockScaledComparison Of(
        ClockSplit first,
        ClockSplit second,
        Func<SetupSummary, SetupSummary, SetupComparison> compare,
        ConclusionOptions options
    )
    {
        if (first.Workload != second.Workload)
        {
            throw new ArgumentException(
                $"Two splits must be compared on one workload; were \"{first.Workload.Name}\" and \"{second.Workload.Name}\".",
                nameof(second)
            );
        }

        foreach (var (split, name) in new[] { (first, nameof(first)), (second, nameof(second)) })
        {
            if (!IsPossible(split))
            {
                throw new ArgumentException(
                    $"A split must have a part that follows the clock; run times of {split.Name} don't fall as the clock rises.",
                    name
                );
            }
        }

        ClockScaledPair[] pairs =
        [
            .. first.Points.SelectMany(a =>
                second.Points.Select(b => Pair(compare(a.Summary, b.Summary), first.Line, second.Line, options))
            ),
        ];
        var withheld = pairs.Select(p => p.Gross.RunTime.Reason).FirstOrDefault(IsOfTheData);
        var items = 1.0 / first.Workload.WorkItemsPerRun;
        var cycles = CompareFigures.Of(
            ComparedQuantity.ScalingCyclesPerItem,
            first.Line.Slope.Times(items),
            second.Line.Slope.Times(items),
            first.FixedTime.Trials + second.FixedTime.Trials,
            options,
            withheld
        );
        return new ClockScaledComparison(first, second, cycles, pairs);
    }

    private static ClockScaledPair Pair(
        SetupComparison gross,
        UncertainLine first,
        UncertainLine second,
        ConclusionOptions options
    )
    {
        var reason = gross.RunTime.Reason;
        var scaling = CompareFigures.Of(
            ComparedQuantity.ScalingRunTime,
            gross.First.Workings.RunTime.Minus(first.Intercept),
            gross.Second.Workings.RunTime.Minus(second.Intercept),
            gross.RunTime.Ratio.Trials,
            options,
            IsOfTheData(reason) ? reason : null
        );
        var isReversed = gross.RunTime.Less is { } less && scaling.Less is { } other && less != other;
        return new ClockScaledPair(gross, scaling, isReversed);
    }

    private static bool IsOfTheData(NoVerdictReason? reason) => reason is not (null or NoVerdictReason.NoInterval);
}
