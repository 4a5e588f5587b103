using McuBench.Core.Boards;

namespace McuBench.Core.Conclusions;

/// <summary>Ranks the setups of every workload by every quantity that was read, and adjusts the comparisons of a family
/// for their number.</summary>
internal static class RankingAnalysis
{
    private const string Method =
        "differences and equalities by p-values of Student t on logarithms, stepped down over the family (Holm, with Shaffer's logic where a margin is stated); simultaneous intervals after Bonferroni";

    private static readonly ComparedQuantity[] Quantities =
    [
        ComparedQuantity.RunTime,
        ComparedQuantity.CyclesPerItem,
        ComparedQuantity.ChargePerTask,
        ComparedQuantity.EnergyPerTask,
    ];

    /// <summary>The rankings, in order of workloads and quantities.</summary>
    public static IReadOnlyList<Ranking> Of(
        IReadOnlyList<SetupSummary> summaries,
        IReadOnlyList<SetupComparison> comparisons,
        ConclusionOptions options
    )
    {
        var compared = comparisons.ToLookup(c => c.Workload.Name, StringComparer.Ordinal);
        var drafts = summaries
            .GroupBy(s => s.Workload.Name, StringComparer.Ordinal)
            .SelectMany(w => Quantities.Select(q => Draft.Of([.. w], [.. compared[w.Key]], q)))
            .OfType<Draft>()
            .ToArray();
        var rankings = new Ranking[drafts.Length];
        var families = drafts
            .Select((draft, i) => (draft, i))
            .GroupBy(d => options.Family == ClaimFamily.Workload ? d.draft.Workload.Name : "", StringComparer.Ordinal);
        foreach (var family in families)
        {
            var evidence = family
                .SelectMany(d => d.draft.Pairs.Select(p => p.Evidence))
                .OfType<PairEvidence>()
                .ToArray();
            var adjusted = StepDown.Adjust([.. evidence.Select(e => (e.Difference, e.Equality))]);
            var figures = evidence
                .Select((e, i) => Figures(e, adjusted[i], evidence.Length, options.Confidence))
                .ToArray();
            var next = 0;
            foreach (var (draft, i) in family)
            {
                var pairs = draft.Pairs.Select(p => Adjusted(p, p.Evidence is null ? null : figures[next++], options));
                var basis = new RankingBasis(options.Family, evidence.Length, options.Confidence, Method);
                rankings[i] = Rank(draft, [.. pairs], basis, options.Seed, (ulong)i);
            }
        }

        return rankings;
    }

    private static AdjustedFigures Figures(
        PairEvidence evidence,
        (double Difference, double? Equality) adjusted,
        int comparisons,
        double confidence
    )
    {
        var (lower, upper) = evidence.Ends((1 - confidence) / comparisons);
        return new AdjustedFigures(evidence.Difference, adjusted.Difference, adjusted.Equality, lower, upper);
    }

    private static AdjustedComparison Adjusted(DraftPair pair, AdjustedFigures? figures, ConclusionOptions options)
    {
        var level = 1 - options.Confidence;
        var verdict = figures switch
        {
            null => Verdict.NoVerdict,
            { AdjustedDifference: var p, AdjustedEquality: var q } => (p < level, q < level) switch
            {
                (true, true) => Verdict.DifferentWithinMargin,
                (true, false) => Verdict.Different,
                (false, true) => Verdict.EqualWithinMargin,
                _ => Verdict.NotResolved,
            },
        };
        return new AdjustedComparison(pair.Comparison, pair.Compared, verdict, figures);
    }

    private static Ranking Rank(
        Draft draft,
        IReadOnlyList<AdjustedComparison> pairs,
        RankingBasis basis,
        ulong seed,
        ulong stream
    )
    {
        var notes = new List<string>(draft.Notes);
        var number = draft
            .Placed.Select((s, i) => (s.Setup.Name, i))
            .ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal);
        var count = draft.Placed.Count;

        // +1 where the one in the row is shown to take less than the one in the column, −1 where more.
        var shown = new int[count, count];
        foreach (var pair in pairs.Where(p => p.IsToldApart))
        {
            var first = number[pair.Comparison.First.Setup.Name];
            var second = number[pair.Comparison.Second.Setup.Name];
            shown[first, second] = pair.Less == Side.First ? 1 : -1;
            shown[second, first] = -shown[first, second];
        }

        var withheld = pairs.Count(p => p.Unadjusted.Reason is not null and not NoVerdictReason.NoInterval);
        if (withheld > 0)
        {
            notes.Add(
                $"No verdict can be given on {Said.Count(withheld, "pair")}, for the reason given there, so no place has a probability."
            );
        }

        var probabilities = withheld == 0 && count > 1 ? PlaceProbabilities.Of(draft.Values, seed, stream) : null;
        RankedSetup[] places =
        [
            .. draft.Placed.Select(
                (summary, i) =>
                    new RankedSetup(
                        i + 1,
                        summary,
                        1 + Enumerable.Range(0, count).Count(j => shown[j, i] > 0),
                        count - Enumerable.Range(0, count).Count(j => shown[i, j] > 0),
                        probabilities?[i] ?? []
                    )
            ),
        ];
        var groups = TellingApart.Groups(count, (i, j) => shown[i, j] != 0, Ranking.MostGroups);
        if (groups is null)
        {
            notes.Add(
                $"There are more than {Ranking.MostGroups} groups of setups that can't be told apart; the pairs show which."
            );
        }

        return new Ranking(
            draft.Workload,
            draft.Quantity,
            places,
            draft.Unplaced,
            (groups ?? []).Select(g => new RankGroup(g.Select(i => places[i]))),
            pairs,
            basis,
            probabilities is null
                ? null
                : FormattableString.Invariant(
                    $"Monte Carlo (JCGM 101), {PlaceProbabilities.Rounds} rounds, seed {seed}, stream {stream}"
                ),
            notes
        );
    }

    private sealed record DraftPair(SetupComparison Comparison, QuantityComparison Compared)
    {
        public PairEvidence? Evidence { get; } = PairEvidence.Of(Compared);
    }

    private sealed record Draft(
        Workload Workload,
        ComparedQuantity Quantity,
        IReadOnlyList<SetupSummary> Placed,
        IReadOnlyList<UncertainValue> Values,
        IReadOnlyList<SetupSummary> Unplaced,
        IReadOnlyList<DraftPair> Pairs,
        IReadOnlyList<string> Notes
    )
    {
        /// <summary>The setups of a workload with a figure of that quantity, or null where fewer than two have one.</summary>
        public static Draft? Of(
            IReadOnlyList<SetupSummary> summaries,
            IReadOnlyList<SetupComparison> comparisons,
            ComparedQuantity quantity
        )
        {
            var read = summaries
                .Select(s => (Summary: s, Value: ValueOf(s, quantity)))
                .Where(s => s.Value is { Value: > 0 })
                .ToArray();
            var notes = new List<string>();
            var chosen = read.GroupBy(s => s.Summary.Setup.Name, StringComparer.Ordinal)
                .Select(g => Narrowest([.. g], notes))
                .ToArray();
            if (chosen.Length < 2)
            {
                return null;
            }

            var placed = chosen.Where(HasInterval).OrderBy(s => s.Value!.Value).ToArray();
            var names = placed.Select(s => RunTimeFigures.KeyOf(s.Summary.Series)).ToHashSet(StringComparer.Ordinal);
            return new Draft(
                summaries[0].Workload,
                quantity,
                [.. placed.Select(s => s.Summary)],
                [.. placed.Select(s => s.Value!)],
                [.. chosen.Where(s => !HasInterval(s)).Select(s => s.Summary)],
                [
                    .. comparisons
                        .Where(c =>
                            names.Contains(RunTimeFigures.KeyOf(c.First.Series))
                            && names.Contains(RunTimeFigures.KeyOf(c.Second.Series))
                        )
                        .Select(c => (Comparison: c, Compared: ComparedBy(c, quantity)))
                        .Where(c => c.Compared is not null)
                        .Select(c => new DraftPair(c.Comparison, c.Compared!)),
                ],
                notes
            );
        }

        /// <summary>A setup that was timed with several timers takes its place once, with the figure that is surest.</summary>
        private static (SetupSummary Summary, UncertainValue? Value) Narrowest(
            IReadOnlyList<(SetupSummary Summary, UncertainValue? Value)> ofSetup,
            List<string> notes
        )
        {
            if (ofSetup is [var only])
            {
                return only;
            }

            var best = ofSetup
                .OrderByDescending(HasInterval)
                .ThenBy(s => s.Value!.StandardUncertainty / s.Value.Value)
                .First();
            notes.Add(
                $"{best.Summary.Setup.Name} was timed with {ofSetup.Count} timers; it is ranked by \"{best.Summary.Series.Timer.Name}\", whose interval is narrowest."
            );
            return best;
        }

        private static bool HasInterval((SetupSummary Summary, UncertainValue? Value) read) =>
            read.Value is { Missing: null, StandardUncertainty: > 0 };

        private static UncertainValue? ValueOf(SetupSummary summary, ComparedQuantity quantity) =>
            quantity switch
            {
                ComparedQuantity.RunTime => summary.Workings.RunTime,
                ComparedQuantity.CyclesPerItem => summary.Workings.CyclesPerItem(summary.Workload.WorkItemsPerRun),
                ComparedQuantity.ChargePerTask => summary.Workings.Charge,
                _ => summary.Workings.Energy,
            };

        private static QuantityComparison? ComparedBy(SetupComparison comparison, ComparedQuantity quantity) =>
            quantity switch
            {
                ComparedQuantity.RunTime => comparison.RunTime,
                ComparedQuantity.CyclesPerItem => comparison.CyclesPerItem,
                ComparedQuantity.ChargePerTask => comparison.ChargePerTask,
                _ => comparison.EnergyPerTask,
            };
    }
}
