using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Reporting;

/// <summary>What a hurried reader has to know of one workload: who is ahead, what the attachments cost, what is not
/// resolved and why. A line each; the sentences in full stand elsewhere.</summary>
internal sealed class Headlines
{
    private const int MostPairs = 4;
    private const int MostNames = 6;

    private readonly StudyConclusions conclusions;
    private readonly Workload workload;
    private readonly TrialAnchors anchors;
    private readonly IReadOnlyList<SetupSummary> summaries;
    private readonly PairIndex index;

    public Headlines(StudyConclusions conclusions, Workload workload, TrialAnchors anchors)
    {
        this.conclusions = conclusions;
        this.workload = workload;
        this.anchors = anchors;
        summaries = [.. conclusions.Summaries.Where(summary => summary.Workload == workload)];
        index = new PairIndex(conclusions, workload);
    }

    /// <summary>One line for all of it: who is ahead by time and charge, what the attachments take, how much is open.</summary>
    public IReadOnlyList<ReportCell> Glance() =>
        [
            new ReportCell(Phrase.Capital(workload.Name)) { Target = anchors.Of(workload) },
            Best(s => s.RunTime, c => c.RunTime),
            Best(s => s.Supply?.ChargePerTask, c => c.ChargePerTask),
            AttachmentShare(),
            OpenPairs(),
        ];

    /// <summary>What is executed.</summary>
    public Workload Workload => workload;

    /// <summary>Whether no trial of it counts as a result.</summary>
    public bool IsEmpty => summaries.Count == 0;

    public IReadOnlyList<ReportItem> Items() =>
        [
            .. Ahead("Fastest:", "time", s => s.RunTime, c => c.RunTime),
            .. Ahead("Least charge per task:", "charge", s => s.Supply?.ChargePerTask, c => c.ChargePerTask),
            .. Ahead("Least energy per task:", "energy", s => s.Supply?.EnergyPerTask, c => c.EnergyPerTask),
            .. Ahead(
                $"Fewest clock cycles per {workload.ItemName}:",
                "cycles",
                s => s.CyclesPerItem,
                c => c.CyclesPerItem
            ),
            .. Attachments(),
            .. FixedTimes(),
            .. Unresolved(),
            .. WithoutVerdict(),
        ];

    private IEnumerable<ReportItem> Ahead<T>(
        string lead,
        string what,
        Func<SetupSummary, Measured<T>?> result,
        Func<SetupComparison, QuantityComparison?> quantity
    )
        where T : struct
    {
        var ranked = Ranked(result);
        if (ranked.Length == 0)
        {
            yield break;
        }

        var best = ranked[0];
        var said = $"{best.Setup.Name}, {Phrase.ValueAndInterval(result(best)!)}.";
        var others = ranked
            .Skip(1)
            .Select(other => (Summary: other, Pair: index.Find(best, other)))
            .Where(other => other.Pair is not null && quantity(other.Pair) is not null)
            .Select(other =>
                (other.Summary, Found: quantity(other.Pair!)!, IsFirst: ReferenceEquals(other.Pair!.First, best))
            )
            .ToArray();
        var equal = others.Where(other => other.Found.Verdict == Verdict.EqualWithinMargin).ToArray();
        if (equal.Length > 0)
        {
            said +=
                $" Equal to it within {Phrase.Percent(conclusions.Options.Margin!.Value)}: {Names(equal.Select(other => other.Summary))}.";
        }

        var open = others.Where(other => other.Found.Verdict is Verdict.NotResolved or Verdict.NoVerdict).ToArray();
        if (open.Length > 0)
        {
            said += $" Not told apart from {Names(open.Select(other => other.Summary))}.";
        }

        var beaten = others.Where(other => other.Found.Less is not null).ToArray();
        if (beaten.Length > 0)
        {
            var (next, found, isFirst) = beaten[0];
            var saved = isFirst ? found.SavedByFirst : found.SavedBySecond;
            said += $" It takes {Phrase.Percent(saved.Value)} {Less(what)} than {next.Setup.Name}.";
        }

        yield return new ReportItem(said)
        {
            Lead = lead,
            Links = anchors.Links(
                others
                    .Take(Math.Min(open.Length + equal.Length + 1, MostPairs))
                    .Select(other => other.Summary)
                    .Prepend(best)
            ),
        };
    }

    private ReportCell Best<T>(
        Func<SetupSummary, Measured<T>?> result,
        Func<SetupComparison, QuantityComparison?> quantity
    )
        where T : struct
    {
        var ranked = Ranked(result);
        if (ranked.Length == 0)
        {
            return "not read";
        }

        var rivals = ranked
            .Skip(1)
            .Where(other => index.Find(ranked[0], other) is { } pair && quantity(pair) is { Less: null })
            .ToArray();
        var said = $"{ranked[0].Setup.Name}, {Phrase.Value(result(ranked[0])!)}";
        return rivals.Length == 0 ? said : $"{said} (not ahead of {Names(rivals)} for certain)";
    }

    private ReportCell AttachmentShare()
    {
        var shares = Attached().GroupBy(pair => pair.Net.Baseline, StringComparer.Ordinal).Select(Range).ToArray();
        return shares.Length == 0 ? "not read alone" : string.Join("; ", shares);

        static string Range(IGrouping<string, (SetupSummary Summary, NetSupply Net)> group)
        {
            var ordered = group
                .Select(pair => pair.Net.BaselineShare.Value)
                .OrderBy(share => Si.Fraction(share))
                .ToArray();
            var (least, most) = (Phrase.Percent(ordered[0]), Phrase.Percent(ordered[^1]));
            return least == most ? $"{group.Key} {least}" : $"{group.Key} {least} to {most}";
        }
    }

    private ReportCell OpenPairs()
    {
        var pairs = conclusions.Comparisons.Count(pair => pair.Workload == workload);
        var open = Pairs(Verdict.NotResolved).Length + Pairs(Verdict.NoVerdict).Length;
        return new ReportCell(FormattableString.Invariant($"{open} of {Said.Count(pairs, "pair")}")) { Order = open };
    }

    private SetupSummary[] Ranked<T>(Func<SetupSummary, Measured<T>?> result)
        where T : struct =>
        [
            .. summaries
                .Where(summary => result(summary) is not null)
                .OrderBy(summary => MeasuredText.Number(result(summary)!.Value)),
        ];

    private IEnumerable<(SetupSummary Summary, NetSupply Net)> Attached() =>
        summaries
            .SelectMany(summary => (summary.Supply?.Net ?? []).Select(net => (Summary: summary, Net: net)))
            .Where(pair => pair.Net.Kind == BaselineKind.Attachment);

    /// <summary>What each attachment that was read alone costs, and who would be cheapest without it.</summary>
    private IEnumerable<ReportItem> Attachments()
    {
        foreach (var group in Attached().GroupBy(pair => pair.Net.Baseline, StringComparer.Ordinal))
        {
            var shares = group.OrderBy(pair => Si.Fraction(pair.Net.BaselineShare.Value)).ToArray();
            var (least, most) = (shares[0], shares[^1]);
            var range =
                shares.Length == 1
                    ? $"takes {Phrase.Value(least.Net.BaselineShare)} of the charge per task of {least.Summary.Setup.Name}"
                    : $"takes {Phrase.Value(least.Net.BaselineShare)} ({least.Summary.Setup.Name}) to {Phrase.Value(most.Net.BaselineShare)} ({most.Summary.Setup.Name}) of the charge per task";
            var cheapest = group.MinBy(pair => Si.Coulombs(pair.Net.ChargePerTask.Value));
            yield return new ReportItem(
                $"{range}. Less it, {cheapest.Summary.Setup.Name} has the smallest figure: {Phrase.ValueAndInterval(cheapest.Net.ChargePerTask)}, net."
            )
            {
                Lead = $"{Phrase.Capital(group.Key)}:",
                Links = anchors.Links(
                    new[] { least.Summary, most.Summary, cheapest.Summary }.Distinct<SetupSummary>(
                        ReferenceEqualityComparer.Instance
                    )
                ),
            };
        }
    }

    private IEnumerable<ReportItem> FixedTimes()
    {
        var present = conclusions
            .Splits.Where(split => split.Workload == workload && split.FixedPart == FixedPart.Present)
            .OrderByDescending(split => Si.Seconds(split.FixedTime.Value))
            .ToArray();
        if (present.Length > 0)
        {
            yield return new ReportItem(
                $"{Said.List(present.Select(split => $"{split.Name} {Phrase.Value(split.FixedTime)}{(split.IsApparent ? " (apparent)" : "")}"))} of each run, spent on what does not follow it, such as a display or a bus."
            )
            {
                Lead = "Time that no clock shortens:",
                Links = [new ReportLink(workload.Name, anchors.Of(workload))],
            };
        }
    }

    private IEnumerable<ReportItem> Unresolved()
    {
        var pairs = Pairs(Verdict.NotResolved);
        if (pairs.Length == 0)
        {
            yield break;
        }

        var said = pairs
            .Take(MostPairs)
            .Select(pair =>
            {
                var found = pair.RunTime;
                var would = found.SmallestDetectableDifference is { } smallest
                    ? $", and a difference of {Phrase.Percent(smallest)} would probably have shown"
                    : "";
                return $"{pair.First.Setup.Name} and {pair.Second.Setup.Name} (the {Phrase.IntervalOf(found.Ratio)} of the ratio holds 1{would})";
            });
        yield return new ReportItem(Listed(said, pairs.Length))
        {
            Lead = "Not resolved in run time:",
            Links = Links(pairs),
        };
    }

    private IEnumerable<ReportItem> WithoutVerdict()
    {
        foreach (var reason in Pairs(Verdict.NoVerdict).GroupBy(pair => pair.RunTime.Reason))
        {
            var pairs = reason.ToArray();
            var named = pairs.Take(MostPairs).Select(pair => $"{pair.First.Setup.Name} and {pair.Second.Setup.Name}");
            yield return new ReportItem(
                $"{Listed(named, pairs.Length)[..^1]}, since {ComparisonStatement.Why(pairs[0].RunTime)}."
            )
            {
                Lead = "No verdict on run time:",
                Links = Links(pairs),
            };
        }
    }

    private SetupComparison[] Pairs(Verdict verdict) =>
        [.. conclusions.Comparisons.Where(pair => pair.Workload == workload && pair.RunTime.Verdict == verdict)];

    private IReadOnlyList<ReportLink> Links(IEnumerable<SetupComparison> pairs) =>
        anchors.Links(
            pairs
                .Take(MostPairs)
                .SelectMany(pair => new[] { pair.First, pair.Second })
                .Distinct<SetupSummary>(ReferenceEqualityComparer.Instance)
        );

    private static string Listed(IEnumerable<string> shown, int count)
    {
        var more = count - MostPairs;
        return more > 0 ? $"{Said.List(shown.Append(Said.Count(more, "more pair")))}." : $"{Said.List(shown)}.";
    }

    private static string Names(IEnumerable<SetupSummary> of) =>
        Said.Some([.. of.Select(summary => summary.Setup.Name)], MostNames, "other");

    private static string Less(string what) => what == "cycles" ? "fewer cycles" : $"less {what}";
}
