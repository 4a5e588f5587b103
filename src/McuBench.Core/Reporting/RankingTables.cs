using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>A table a ranking: places, how sure they are, and who can't be told from whom.</summary>
internal static class RankingTables
{
    public static IEnumerable<ReportBlock> Of(StudyConclusions conclusions, TrialAnchors anchors)
    {
        if (conclusions.Rankings.Count == 0)
        {
            yield break;
        }

        yield return new ReportHeading(2, "Rankings");
        yield return new ReportParagraph(
            $"{RankingStatement.Basis(conclusions.Rankings[0])} A place in brackets is one that the data leave open. Not being told apart is not being equal. Chances take all uncertainties as stated, and no claim rests on them."
        );
        foreach (var ranking in conclusions.Rankings)
        {
            yield return new ReportHeading(
                3,
                $"{Phrase.Capital(ranking.Workload.Name)} by {Phrase.Noun(ranking.Quantity)}"
            );
            yield return new ReportParagraph(string.Join(' ', ranking.Notes.Prepend(RankingStatement.Of(ranking))));
            if (ranking.Places.Count > 1)
            {
                var table = Table(ranking, anchors);
                yield return new ReportDetails($"{table.Caption.TrimEnd('.')}: place by place", [table]);
            }

            if (ranking.Unplaced.Count > 0)
            {
                yield return new ReportParagraph(
                    $"Without a place, since their figures have no interval: {Said.List(ranking.Unplaced.Select(s => s.Setup.Name))}."
                );
            }
        }
    }

    private static ReportTable Table(Ranking ranking, TrialAnchors anchors)
    {
        var apart = ranking
            .Pairs.Where(p => p.IsToldApart)
            .Select(p => (p.Comparison.First.Setup.Name, p.Comparison.Second.Setup.Name))
            .ToHashSet();
        return new ReportTable(
            $"Ranked by {Phrase.Noun(ranking.Quantity)}, {ranking.Workload.Name}.",
            [
                new ReportColumn("place", true),
                new ReportColumn("setup", false),
                new ReportColumn(Phrase.Noun(ranking.Quantity), true),
                new ReportColumn("chance of first", true),
                new ReportColumn("chance of this place", true),
                new ReportColumn("not told apart from places", false),
            ],
            ranking.Places.Select<RankedSetup, IReadOnlyList<ReportCell>>(place =>
                [
                    new ReportCell(
                        place.BestPlace == place.WorstPlace
                            ? Phrase.Number(place.Place)
                            : $"{Phrase.Number(place.Place)} ({Phrase.Number(place.BestPlace)} to {Phrase.Number(place.WorstPlace)})"
                    )
                    {
                        Order = place.Place,
                    },
                    anchors.Cell(place.Summary),
                    Figure(place.Summary, ranking.Quantity),
                    Chance(place, 1),
                    Chance(place, place.Place),
                    string.Join(
                        ", ",
                        ranking
                            .Places.Where(other => other.Place != place.Place && !AreApart(place, other))
                            .Select(other => Phrase.Number(other.Place))
                    ),
                ]
            )
        );

        bool AreApart(RankedSetup one, RankedSetup other) =>
            apart.Contains((one.Summary.Setup.Name, other.Summary.Setup.Name))
            || apart.Contains((other.Summary.Setup.Name, one.Summary.Setup.Name));
    }

    private static ReportCell Figure(SetupSummary summary, ComparedQuantity quantity) =>
        quantity switch
        {
            ComparedQuantity.RunTime => Phrase.Cell(summary.RunTime),
            ComparedQuantity.CyclesPerItem => Phrase.Cell(summary.CyclesPerItem),
            ComparedQuantity.ChargePerTask => Phrase.Cell(summary.Supply?.ChargePerTask),
            _ => Phrase.Cell(summary.Supply?.EnergyPerTask),
        };

    private static ReportCell Chance(RankedSetup setup, int place) =>
        setup.PlaceProbabilities.Count == 0
            ? new ReportCell("–")
            : new ReportCell(Phrase.Chance(setup.PlaceProbabilities[place - 1]))
            {
                Order = setup.PlaceProbabilities[place - 1],
            };
}
