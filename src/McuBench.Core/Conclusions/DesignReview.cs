using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using McuBench.Core.Trials;
using McuBench.Stats.Descriptive;

namespace McuBench.Core.Conclusions;

/// <summary>What is missing or uneven in the design of a study, and figures that contradict one another.</summary>
internal static class DesignReview
{
    private const double Uneven = 2;
    private const double Thousand = 1000;
    private const double LeastPrefix = 300;
    private const double MostPrefix = 3000;

    public static IEnumerable<Finding> Of(Study study, IReadOnlyList<SetupSummary> summaries) =>
        Unbalanced(summaries)
            .Concat(OneBuild(summaries))
            .Concat(NoEmptyWorkload(study, summaries))
            .Concat(ClocksThatDontMatch(summaries))
            .Concat(SlippedRunTimes(summaries))
            .Concat(SlippedCurrents(study));

    private static IEnumerable<Finding> Unbalanced(IReadOnlyList<SetupSummary> summaries)
    {
        foreach (var workload in summaries.GroupBy(s => s.Workload.Name, StringComparer.Ordinal))
        {
            var ordered = workload.OrderBy(s => s.Series.Trials.Count).ToArray();
            var (fewest, most) = (ordered[0], ordered[^1]);
            if (most.Series.Trials.Count < Uneven * fewest.Series.Trials.Count)
            {
                continue;
            }

            yield return new Finding(
                FindingKind.Unbalanced,
                Severity.Note,
                workload.Key,
                $"Setups were run unequally often: {fewest.Setup.Name} {Said.Count(fewest.Series.Trials.Count, "time")}, {most.Setup.Name} {Said.Count(most.Series.Trials.Count, "time")}. A comparison is as sure as its weaker side.",
                "Spend further trials on the setup with the fewest.",
                [new("fewest trials", fewest.Series.Trials.Count), new("most trials", most.Series.Trials.Count)],
                []
            );
        }
    }

    private static IEnumerable<Finding> OneBuild(IReadOnlyList<SetupSummary> summaries)
    {
        var once = summaries
            .Where(s =>
                s.Series.Trials.Select(t => t.Build).OfType<string>().Distinct(StringComparer.Ordinal).Count() < 2
            )
            .ToArray();
        if (once.Length == 0)
        {
            yield break;
        }

        string[] setups = [.. once.Select(s => s.Setup.Name).Distinct(StringComparer.Ordinal)];
        var isNoted = once.Any(s => s.Series.Trials.Any(t => t.Build is not null));
        yield return new Finding(
            FindingKind.BuildNeverRepeated,
            Severity.Note,
            Said.List(setups),
            isNoted
                ? "The program was built or flashed once. Where code comes to lie moves run times, and how far can't be told from one build."
                : "Which build or flash ran isn't noted. Where code comes to lie moves run times, and how far can't be told.",
            "Build and flash anew for some of the trials, with code moved, and note which build ran.",
            [new("setups and workloads of one build or none noted", once.Length)],
            []
        );
    }

    private static IEnumerable<Finding> NoEmptyWorkload(Study study, IReadOnlyList<SetupSummary> summaries)
    {
        var timed = summaries
            .Where(s => s.Workload.IsEmpty)
            .Select(s => s.Setup.Name)
            .ToHashSet(StringComparer.Ordinal);
        string[] without =
        [
            .. summaries
                .Select(s => s.Setup.Name)
                .Distinct(StringComparer.Ordinal)
                .Where(name => !timed.Contains(name)),
        ];
        if (without.Length == 0)
        {
            yield break;
        }

        yield return new Finding(
            FindingKind.EmptyWorkloadNeverTimed,
            Severity.Note,
            timed.Count == 0 ? study.Title : Said.List(without),
            $"{(timed.Count == 0 ? "No setup" : "Not every setup")} was timed with an empty workload: what starting, stopping and calling take is in every run time, and not known.",
            "Time a workload that does all but the work, and mark it as empty.",
            [new("setups without an empty workload", without.Length)],
            []
        );
    }

    /// <summary>Cycles counted over time read, against the clock as stated and both tolerances.</summary>
    private static IEnumerable<Finding> ClocksThatDontMatch(IReadOnlyList<SetupSummary> summaries)
    {
        foreach (var summary in summaries)
        {
            Trial[] counted = [.. summary.Series.Trials.Where(t => t.CycleCount is not null)];
            if (counted.Length == 0)
            {
                continue;
            }

            // Long runs weigh most: a step of the timer matters least there.
            var hertz = counted.Sum(t => (double)t.CycleCount!.Value) / counted.Sum(t => Si.Seconds(t.RunTime));
            var nominal = Si.Hertz(summary.Setup.Clock.Nominal);
            var timer = summary.Series.Timer;
            var step = Si.Seconds(timer.Resolution) / Location.Mean([.. counted.Select(t => Si.Seconds(t.RunTime))]);
            const double unstated = 0.01;
            var allowed =
                (summary.Setup.Clock.Tolerance is { } c ? Si.Fraction(c) : unstated)
                + (timer.Tolerance is { } t ? Si.Fraction(t) : unstated)
                + step;
            var off = hertz / nominal - 1;
            if (Math.Abs(off) <= allowed)
            {
                continue;
            }

            yield return new Finding(
                FindingKind.ClockMismatch,
                Severity.Fault,
                $"{summary.Setup.Name}, {summary.Workload.Name}",
                $"{Said.Count(counted.Length, "trial")} counted cycles at {QuantityText.Format(Si.Frequency(Math.Round(hertz)))}, {Said.Percent(Math.Abs(off))} {(off > 0 ? "above" : "below")} the clock of {QuantityText.Format(summary.Setup.Clock.Nominal)} that is stated; timer and clock allow {Said.Percent(allowed)}.",
                "Find out at what clock the core ran: figures per cycle and splits by clock rest on it.",
                [
                    new("clock counted", hertz, "Hz"),
                    new("clock stated", nominal, "Hz"),
                    new("difference", off),
                    new("allowed", allowed),
                ],
                counted
            );
        }
    }

    private static IEnumerable<Finding> SlippedRunTimes(IReadOnlyList<SetupSummary> summaries)
    {
        foreach (var summary in summaries.Where(s => s.Series.Trials.Count >= 3))
        {
            var median = Location.Median([.. summary.Series.Trials.Select(t => Si.Seconds(t.RunTime))]);
            Trial[] off = [.. summary.Series.Trials.Where(t => IsSlipped(Si.Seconds(t.RunTime) / median))];
            if (off.Length == 0)
            {
                continue;
            }

            yield return new Finding(
                FindingKind.SlippedPrefix,
                Severity.Fault,
                $"{summary.Setup.Name}, {summary.Workload.Name}",
                $"{Said.Count(off.Length, "run time")} of {summary.Series.Trials.Count} {(off.Length == 1 ? "is" : "are")} about a thousand times off the median of {Said.Seconds(median)} ({Said.Trials(off)}): a slipped prefix, such as ms for µs.",
                "Look the figure up in the notes of the bench and correct its unit.",
                [new("run times about 1000 times off", off.Length), new("median", median, "s")],
                off
            );
        }
    }

    /// <summary>A current about a thousand times off what its own setup, or all setups in that phase, draw.</summary>
    private static IEnumerable<Finding> SlippedCurrents(Study study)
    {
        foreach (var phase in study.Readings.Where(r => Si.Amperes(r.Current) > 0).GroupBy(r => r.Phase))
        {
            var all = phase.ToArray();
            if (all.Length < 3)
            {
                continue;
            }

            var ofPhase = Location.Median([.. all.Select(r => Si.Amperes(r.Current))]);
            foreach (var setup in all.GroupBy(r => r.Setup.Name, StringComparer.Ordinal))
            {
                double[] amperes = [.. setup.Select(r => Si.Amperes(r.Current))];
                var median =
                    amperes.Length >= 3 && !IsSlipped(Location.Median(amperes) / ofPhase)
                        ? Location.Median(amperes)
                        : ofPhase;
                double[] off = [.. amperes.Where(a => IsSlipped(a / median))];
                if (off.Length == 0)
                {
                    continue;
                }

                yield return new Finding(
                    FindingKind.SlippedPrefix,
                    Severity.Fault,
                    setup.Key,
                    $"{Said.Count(off.Length, "current")} of {amperes.Length} ({Said.List([.. off.Select(Said.Amperes).Distinct(StringComparer.Ordinal)])}) {(off.Length == 1 ? "is" : "are")} about a thousand times off the {Said.Amperes(median)} read elsewhere in that phase: a slipped prefix, such as mA for µA.",
                    "Look the figure up in the notes of the bench and correct its unit.",
                    [new("currents about 1000 times off", off.Length), new("median", median, "A")],
                    []
                );
            }
        }
    }

    private static bool IsSlipped(double ratio)
    {
        var up = ratio >= 1 ? ratio : 1 / ratio;
        return up is >= LeastPrefix and <= MostPrefix || up / Thousand is >= LeastPrefix and <= MostPrefix;
    }
}
