using McuBench.Core.Quantities;

namespace McuBench.Core.Conclusions;

/// <summary>What an interval would come to if one thing on the bench were better.</summary>
/// <remarks>Computed from the budget: the components of one kind are lessened, the standard uncertainty and its degrees of
/// freedom are combined anew. Immutable; equal when all properties are equal, lists in order. Safe to use from many
/// threads.</remarks>
public sealed record Improvement
{
    private const double FinerBy = 10;
    private const double MoreTrialsBy = 4;
    private const double WorthIt = 0.8;

    private Improvement(BudgetKind kind, string change, IEnumerable<string> components, double factor, double least)
    {
        Kind = kind;
        Change = change;
        Components = ValueList<string>.Of(components, "Components", nameof(components));
        WidthFactor = factor;
        LeastWidthFactor = least;
    }

    /// <summary>What would be better.</summary>
    public BudgetKind Kind { get; }

    /// <summary>The change, in words that a sentence can begin with: "a timer step of 10 ms in place of 100 ms".</summary>
    public string Change { get; }

    /// <summary>The components of the budget that it lessens; empty where it lessens none.</summary>
    public IReadOnlyList<string> Components { get; }

    /// <summary>The interval's width after the change as a share of its width now: 0.5 where it is halved, 1 where nothing
    /// changes. Where a step hid what scatter there is, the width may come out larger.</summary>
    public double WidthFactor { get; }

    /// <summary>The same if these components vanished altogether.</summary>
    public double LeastWidthFactor { get; }

    /// <summary>Whether the interval would narrow to four fifths or less.</summary>
    public bool Pays => WidthFactor <= WorthIt;

    /// <summary>All changes that a budget gives reason for, and more trials in any case; what narrows most first.
    /// O(lines · kinds).</summary>
    internal static IReadOnlyList<Improvement> Of(IReadOnlyList<BudgetLine> budget, double confidence)
    {
        if (budget.Count == 0)
        {
            return [];
        }

        var kinds = budget.Select(l => l.Kind).Where(k => k is not (BudgetKind.Other or BudgetKind.Scatter)).Distinct();
        return
        [
            .. kinds
                .Select(kind => Finer(kind, budget, confidence))
                .Append(MoreTrials(budget, confidence))
                .OrderBy(i => i.WidthFactor)
                .ThenBy(i => i.Kind),
        ];
    }

    private static Improvement MoreTrials(IReadOnlyList<BudgetLine> budget, double confidence)
    {
        var concerned = budget.Where(l => l.AveragesDown).ToArray();
        return new Improvement(
            BudgetKind.Scatter,
            FormattableString.Invariant($"{MoreTrialsBy} times as many trials and readings"),
            concerned.Select(l => l.Component),
            Factor(budget, confidence, l => l.AveragesDown, 1 / Math.Sqrt(MoreTrialsBy), MoreTrialsBy),
            Factor(budget, confidence, l => l.AveragesDown, 0, MoreTrialsBy)
        );
    }

    private static Improvement Finer(BudgetKind kind, IReadOnlyList<BudgetLine> budget, double confidence)
    {
        var concerned = budget.Where(l => l.Kind == kind).ToArray();
        return new Improvement(
            kind,
            ChangeOf(kind, concerned),
            concerned.Select(l => l.Component),
            Factor(budget, confidence, l => l.Kind == kind, 1 / FinerBy, 1),
            Factor(budget, confidence, l => l.Kind == kind, 0, 1)
        );
    }

    private static string ChangeOf(BudgetKind kind, BudgetLine[] lines)
    {
        double[] sizes = [.. lines.Select(l => l.Size).OfType<double>().Distinct()];
        return kind switch
        {
            BudgetKind.TimerStep when sizes is [var step] =>
                $"a timer step of {Said.Seconds(step / FinerBy)} in place of {Said.Seconds(step)}, or runs ten times as long,",
            BudgetKind.TimerStep => "timers ten times as fine, or runs ten times as long,",
            BudgetKind.TimerTolerance => "a timer ten times as accurate",
            BudgetKind.ClockTolerance => "a clock known ten times as well",
            BudgetKind.MeterGain => "a meter gain known ten times as well (a load of known draw)",
            BudgetKind.MeterOffset => "a meter offset known ten times as well (a check of its zero)",
            BudgetKind.MeterStep when sizes is [var digit] =>
                $"a last digit of {Said.Amperes(digit / FinerBy)} in place of {Said.Amperes(digit)}",
            BudgetKind.MeterStep => "last digits ten times as fine",
            _ => "a supply voltage known ten times as well",
        };
    }

    /// <summary>The width with some lines scaled and their degrees of freedom raised, over the width now.</summary>
    private static double Factor(
        IReadOnlyList<BudgetLine> budget,
        double confidence,
        Func<BudgetLine, bool> isConcerned,
        double scale,
        double more
    )
    {
        var now = Width(budget.Select(l => (l.Share, l.DegreesOfFreedom)), confidence);
        var then = Width(
            budget.Select(l =>
                isConcerned(l)
                    ? (l.Share * scale * scale, more * (l.DegreesOfFreedom + 1) - 1)
                    : (l.Share, l.DegreesOfFreedom)
            ),
            confidence
        );
        return then / now;
    }

    private static double Width(IEnumerable<(double Variance, double Degrees)> lines, double confidence)
    {
        double variance = 0;
        double spread = 0;
        foreach (var (part, degrees) in lines)
        {
            variance += part;
            spread += part * part / degrees;
        }

        var effective = spread == 0 ? double.PositiveInfinity : variance * variance / spread;
        return variance == 0 ? 0 : new Measure(confidence, 0, "").CoverageFactor(effective) * Math.Sqrt(variance);
    }
}
