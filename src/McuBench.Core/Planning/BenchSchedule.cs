using McuBench.Core.Conclusions;
using McuBench.Core.Studies;
using McuBench.Core.Trials;
using McuBench.Stats.Planning;

namespace McuBench.Core.Planning;

/// <summary>Says what a bench is to run next, in blocks of random order, until all is known as closely as wanted.</summary>
/// <remarks>
/// <para>
/// In each block every slot is run once, in an order drawn from the seed, so that drift falls on all alike. All slots go on
/// until the last has enough: a setup that ended early would have been run at another time than the rest, and drift would
/// look like a difference.
/// </para>
/// <para>
/// A look depends on the trials alone, so that after an interruption the schedule goes on from the journal as if nothing had
/// happened. Immutable; safe to use from many threads.
/// </para>
/// </remarks>
public sealed class BenchSchedule
{
    private readonly ValueList<BenchSlot> slots;
    private readonly RunOrder? order;

    /// <summary>Makes a schedule.</summary>
    /// <param name="slots">What is run: at least one, no two alike.</param>
    /// <param name="rule">When a slot has enough.</param>
    /// <param name="seed">What the order is drawn from.</param>
    /// <exception cref="ArgumentException">There is no slot, or two are alike, or there would be more than a million
    /// trials.</exception>
    public BenchSchedule(IEnumerable<BenchSlot> slots, StopRule rule, ulong seed)
    {
        this.slots = ValueList<BenchSlot>.Of(slots, "Slots", nameof(slots));
        Rule = Require.Given(rule, nameof(rule));
        if (this.slots.Count == 0)
        {
            throw new ArgumentException("A schedule must hold at least one slot; the list was empty.", nameof(slots));
        }

        if (this.slots.GroupBy(slot => slot).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            throw new ArgumentException($"Slots must differ; {twice.Key} stands twice.", nameof(slots));
        }

        Seed = seed;
        order = this.slots.Count == 1 ? null : RunOrder.RandomisedBlocks(this.slots.Count, rule.Options.Maximum, seed);
    }

    /// <summary>What is run.</summary>
    public IReadOnlyList<BenchSlot> Slots => slots;

    /// <summary>When a slot has enough.</summary>
    public StopRule Rule { get; }

    /// <summary>What the order is drawn from.</summary>
    public ulong Seed { get; }

    /// <summary>Looks at the trials taken so far. O(n) in trials, and O(m log m) in those of the last one's slot.</summary>
    /// <param name="trials">All trials in the order taken; those of no slot are passed over.</param>
    public BenchLook Look(IEnumerable<Trial> trials)
    {
        ArgumentNullException.ThrowIfNull(trials);
        var taken = Sorted(trials, out var last);
        StopDecision[] decisions =
        [
            .. taken.Select(list => Rule.Judge(list.Count == 0 ? null : new TrialSeries(list))),
        ];
        var isDone = decisions.All(decision => decision.IsDone);
        var goal = decisions.Max(decision => decision.ExpectedTrials);
        return new BenchLook(
            decisions,
            isDone ? null : Next(taken),
            last is { } slot ? Brought(taken[slot]) : null,
            isDone ? 0 : taken.Sum(list => Math.Max(goal - list.Count, 0))
        );
    }

    private List<Trial>[] Sorted(IEnumerable<Trial> trials, out int? last)
    {
        var places = slots.Select((slot, place) => (slot, place)).ToDictionary(x => x.slot, x => x.place);
        List<Trial>[] taken = [.. slots.Select(_ => new List<Trial>())];
        last = null;
        foreach (var trial in trials)
        {
            var slot = new BenchSlot(trial.Setup, trial.Workload, trial.Timer, trial.Specimen);
            last = places.TryGetValue(slot, out var place) ? place : null;
            if (last is { } known)
            {
                taken[known].Add(trial);
            }
        }

        return taken;
    }

    // The first place in the blocks that isn't filled yet. A run whose output was wrong fills its place too, or a board
    // that is always wrong would be run for ever.
    private BenchSlot? Next(List<Trial>[] taken)
    {
        var fewest = taken.Min(list => list.Count);
        if (fewest >= Rule.Options.Maximum)
        {
            return null;
        }

        var place = order is null ? 0 : order.Blocks[fewest].First(slot => taken[slot].Count <= fewest);
        return slots[place];
    }

    // Found now and not yet without the last trial: what was found before has been looked at.
    private static Finding? Brought(List<Trial> trials)
    {
        var before = Found(trials[..^1]);
        return Found(trials).FirstOrDefault(finding => !before.Any(known => IsSame(known, finding)));
    }

    private static bool IsSame(Finding known, Finding finding) =>
        known.Kind == finding.Kind
        && (finding.Kind == FindingKind.Drift || finding.Trials.All(trial => known.Trials.Contains(trial)));

    private static Finding[] Found(List<Trial> trials) =>
        trials.Count == 0
            ? []
            :
            [
                .. StudyConclusions
                    .Of(Study.FromTrials("bench", trials))
                    .Review.Findings.Where(finding => finding.Kind is FindingKind.Drift or FindingKind.Outliers),
            ];
}
