using McuBench.Core.Studies;

namespace McuBench.Core.Conclusions;

/// <summary>Everything that can be concluded from a study: summaries, comparisons, the split by clock, and what is wrong
/// with the data.</summary>
/// <remarks>The same study and options give the same conclusions, bit for bit on one platform.
/// Immutable; safe to use from many threads.</remarks>
public sealed record StudyConclusions
{
    internal StudyConclusions(
        Study study,
        ConclusionOptions options,
        IEnumerable<SetupSummary> summaries,
        IEnumerable<SetupComparison> comparisons,
        IEnumerable<Ranking> rankings,
        IEnumerable<SuiteComparison> suites,
        IEnumerable<ClockSplit> splits,
        IEnumerable<ClockScaledComparison> scaledComparisons,
        IEnumerable<CurrentAgainstClock> currents,
        IEnumerable<BestClock> bestClocks,
        Review review
    )
    {
        Study = study;
        Options = options;
        Summaries = ValueList<SetupSummary>.Of(summaries, "Summaries", nameof(summaries));
        Comparisons = ValueList<SetupComparison>.Of(comparisons, "Comparisons", nameof(comparisons));
        Rankings = ValueList<Ranking>.Of(rankings, "Rankings", nameof(rankings));
        Suites = ValueList<SuiteComparison>.Of(suites, "Suites", nameof(suites));
        Splits = ValueList<ClockSplit>.Of(splits, "Splits", nameof(splits));
        ScaledComparisons = ValueList<ClockScaledComparison>.Of(
            scaledComparisons,
            "Scaled comparisons",
            nameof(scaledComparisons)
        );
        Currents = ValueList<CurrentAgainstClock>.Of(currents, "Current lines", nameof(currents));
        BestClocks = ValueList<BestClock>.Of(bestClocks, "Best clocks", nameof(bestClocks));
        Review = review;
    }

    /// <summary>The study.</summary>
    public Study Study { get; }

    /// <summary>What was asked.</summary>
    public ConclusionOptions Options { get; }

    /// <summary>One summary for each setup, workload and timer with at least one trial that counts, in order of the
    /// study's workloads and setups.</summary>
    public IReadOnlyList<SetupSummary> Summaries { get; }

    /// <summary>All pairs of setups within a workload, in order of <see cref="Summaries"/>.</summary>
    public IReadOnlyList<SetupComparison> Comparisons { get; }

    /// <summary>The setups of each workload that two or more executed in order of run time, cycles per item, charge and
    /// energy, as far as these are known, with the comparisons adjusted for their number.</summary>
    public IReadOnlyList<Ranking> Rankings { get; }

    /// <summary>Every two setups that executed two or more workloads, over all of them together.</summary>
    public IReadOnlyList<SuiteComparison> Suites { get; }

    /// <summary>The split of run time by clock, wherever a board, core and build ran at two or more clocks.</summary>
    public IReadOnlyList<ClockSplit> Splits { get; }

    /// <summary>What the splits do to the comparisons: all pairs of splits within a workload.</summary>
    public IReadOnlyList<ClockScaledComparison> ScaledComparisons { get; }

    /// <summary>Current against clock, wherever current was read at two or more clocks.</summary>
    public IReadOnlyList<CurrentAgainstClock> Currents { get; }

    /// <summary>The clock of the least charge per task, wherever run time could be split and current was read at two or more
    /// clocks.</summary>
    public IReadOnlyList<BestClock> BestClocks { get; }

    /// <summary>What is wrong with the data, or weak.</summary>
    public Review Review { get; }

    /// <summary>Draws all conclusions. O(n log n) in trials and O(p) in pairs of setups within a workload.</summary>
    /// <param name="study">The study.</param>
    /// <param name="options">What is asked; <see cref="ConclusionOptions.Default"/> when null.</param>
    /// <param name="progress">Told of every step; may be null.</param>
    /// <param name="cancellationToken">Looked at between steps.</param>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static StudyConclusions Of(
        Study study,
        ConclusionOptions? options = null,
        IProgress<ConclusionProgress>? progress = null,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(study);
        return new StudyAnalysis(study, options ?? ConclusionOptions.Default, progress, cancellationToken).Run();
    }
}
