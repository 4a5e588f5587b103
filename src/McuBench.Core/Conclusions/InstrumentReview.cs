using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using McuBench.Core.Trials;

namespace McuBench.Core.Conclusions;

/// <summary>What isn't known of timers, clocks and specimens, or is wrong with them.</summary>
internal static class InstrumentReview
{
    public static IEnumerable<Finding> Of(Study study, IReadOnlyList<SetupSummary> summaries) =>
        TimersThatFollow(summaries)
            .Concat(TimersOfUnknownTolerance(summaries))
            .Concat(ClocksOfUnknownTolerance(summaries))
            .Concat(Specimens(summaries))
            .Concat(FedElsewhere(study));

    private static IEnumerable<Finding> TimersThatFollow(IReadOnlyList<SetupSummary> summaries)
    {
        foreach (var group in ClockGroup.Of(summaries.Where(s => s.Series.Timer.DerivedFromChangedClock == true)))
        {
            yield return new Finding(
                FindingKind.TimerFollowsClock,
                Severity.Fault,
                $"{ClockGroup.NameOf(group)}, {group[0].Workload.Name}",
                $"Timer \"{group[0].Series.Timer.Name}\" takes its time from the clock that was changed ({Said.List([.. group.Select(s => QuantityText.Format(s.Setup.Clock.Nominal))])}): run times at different clocks can't be told apart from the timer's own change of pace.",
                "Time the runs with a timer of its own pace. Until then there is no verdict between these clocks and no split by clock.",
                [new("clocks", group.Count)],
                []
            );
        }
    }

    private static IEnumerable<Finding> TimersOfUnknownTolerance(IReadOnlyList<SetupSummary> summaries)
    {
        foreach (var used in summaries.GroupBy(s => s.Series.Timer.Name, StringComparer.Ordinal))
        {
            var timer = used.First().Series.Timer;
            if (timer.Tolerance is not null)
            {
                continue;
            }

            var outside = timer.Place == TimerPlace.Outside;
            yield return new Finding(
                FindingKind.TimerToleranceUnknown,
                outside ? Severity.Note : Severity.Caution,
                $"timer \"{timer.Name}\"",
                outside
                    ? "Its tolerance is unknown and not in the intervals of run times. In ratios of run times it cancels, since one timer timed them all."
                    : "Its tolerance is unknown and not in the intervals, and each board has an oscillator of its own: ratios of run times are off by it too.",
                "State it: ±50 ppm is usual for crystals, ±1 % and more for oscillators without one.",
                [new("setups and workloads timed", used.Count())],
                []
            );
        }
    }

    private static IEnumerable<Finding> ClocksOfUnknownTolerance(IReadOnlyList<SetupSummary> summaries)
    {
        foreach (
            var board in summaries
                .Where(s => s.Setup.Clock.Tolerance is null)
                .GroupBy(s => s.Setup.Board.Name, StringComparer.Ordinal)
        )
        {
            string[] setups = [.. board.Select(s => s.Setup.Name).Distinct(StringComparer.Ordinal)];
            yield return new Finding(
                FindingKind.ClockToleranceUnknown,
                Severity.Note,
                board.Key,
                $"The clock's tolerance is unknown for {Said.List(setups)}, and not in the intervals of per-cycle figures and of splits by clock.",
                "State it from the oscillator's data.",
                [new("setups", setups.Length)],
                []
            );
        }
    }

    private static IEnumerable<Finding> Specimens(IReadOnlyList<SetupSummary> summaries)
    {
        foreach (var board in summaries.GroupBy(s => s.Setup.Board.Name, StringComparer.Ordinal))
        {
            string[] named =
            [
                .. board.SelectMany(s => s.Specimens).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
            ];
            if (named.Length >= 2)
            {
                continue;
            }

            yield return new Finding(
                FindingKind.OneSpecimen,
                Severity.Note,
                board.Key,
                named.Length == 1
                    ? $"One specimen of {board.Key} ran (\"{named[0]}\"): conclusions hold for this specimen, not for the model."
                    : $"Which specimens of {board.Key} ran isn't noted: conclusions hold for what was on the bench, not for the model.",
                "For conclusions about the model run several specimens and note which ran.",
                [new("specimens named", named.Length)],
                []
            );
        }
    }

    private static IEnumerable<Finding> FedElsewhere(Study study)
    {
        foreach (var read in study.Readings.GroupBy(r => r.Setup.Name, StringComparer.Ordinal))
        {
            if (read.First().Setup.Supply?.FedElsewhereToo != true)
            {
                continue;
            }

            yield return new Finding(
                FindingKind.FedElsewhere,
                Severity.Fault,
                read.Key,
                $"The board drew current through another path as well while {Said.Count(read.Count(), "reading")} {(read.Count() == 1 ? "was" : "were")} taken: the meter saw a part of it.",
                "Disconnect debugger and serial line, or feed them from the measured supply, and read again.",
                [new("readings", read.Count())],
                []
            );
        }
    }
}
