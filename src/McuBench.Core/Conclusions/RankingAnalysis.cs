namespace McuBench.Core.Conclusions;

/// <summary>Ranks the setups of every workload by every quantity that was read, compares suites of workloads, and adjusts
/// the comparisons of a family for their number.</summary>
internal static class RankingAnalysis
{
    /// <summary>Rankings in order of workloads and quantities, and suites in order of pairs and quantities.</summary>
    public static (IReadOnlyList<Ranking> Rankings, IReadOnlyList<SuiteComparison> Suites) Of(
        IReadOnlyList<SetupSummary> summaries,
        IReadOnlyList<SetupComparison> comparisons,
        ConclusionOptions options
    )
    {
        var compared = comparisons.ToLookup(c => c.Workload.Name, StringComparer.Ordinal);
        var drafts = summaries
            .GroupBy(s => s.Workload.Name, StringComparer.Ordinal)
            .SelectMany(w => RankedQuantity.All.Select(q => RankingDraft.Of([.. w], [.. compared[w.Key]], q)))
            .OfType<RankingDraft>()
            .ToArray();
        var suites = SuiteAnalysis.Of(comparisons, options);
        var rankings = new Ranking[drafts.Length];
        var ofSuites = new SuiteComparison[suites.Count];

        // Suites are a question of their own where each workload is.
        var families = drafts
            .Select((draft, i) => (Name: draft.Workload.Name, Ranking: i, Suite: -1))
            .Concat(suites.Select((_, i) => (Name: "", Ranking: -1, Suite: i)))
            .GroupBy(m => options.Family == ClaimFamily.Workload ? m.Name : "", StringComparer.Ordinal);
        foreach (var family in families)
        {
            QuantityComparison[] members =
            [
                .. family.SelectMany(m =>
                    m.Suite < 0 ? drafts[m.Ranking].Pairs.Select(p => p.Compared) : [suites[m.Suite].Mean]
                ),
            ];
            var (claims, count) = FamilyAdjustment.Of(members, options.Confidence);
            var basis = new RankingBasis(options.Family, count, options.Confidence, FamilyAdjustment.Method);
            var next = 0;
            foreach (var (_, ranking, suite) in family)
            {
                if (suite >= 0)
                {
                    ofSuites[suite] = suites[suite].With(claims[next++]);
                    continue;
                }

                var draft = drafts[ranking];
                AdjustedComparison[] pairs =
                [
                    .. draft.Pairs.Select(p => new AdjustedComparison(p.Comparison, p.Compared, claims[next++])),
                ];
                rankings[ranking] = Rank(draft, pairs, basis, options.Seed, (ulong)ranking);
            }
        }

        return (rankings, ofSuites);
    }

    private static Ranking Rank(
        RankingDraft draft,
        IReadOnlyList<AdjustedComparison> pairs,
        RankingBasis basis,
        ulong seed,
        ulong stream
    )
    {
        var notes = new List<string>(draft.Notes);
        var count = draft.Placed.Count;
        var shown = Shown(draft, pairs);
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

    /// <summary>+1 where the one in the row is shown to take less than the one in the column, −1 where more.</summary>
    private static int[,] Shown(RankingDraft draft, IReadOnlyList<AdjustedComparison> pairs)
    {
        var number = draft
            .Placed.Select((s, i) => (s.Setup.Name, i))
            .ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal);
        var shown = new int[number.Count, number.Count];
        foreach (var pair in pairs.Where(p => p.IsToldApart))
        {
            var first = number[pair.Comparison.First.Setup.Name];
            var second = number[pair.Comparison.Second.Setup.Name];
            shown[first, second] = pair.Less == Side.First ? 1 : -1;
            shown[second, first] = -shown[first, second];
        }

        return shown;
    }
}
