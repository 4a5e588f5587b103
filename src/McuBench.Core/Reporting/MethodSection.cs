using System.Globalization;
using System.Reflection;
using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Reporting;

/// <summary>Says how the figures came about, so that somebody else could redo them.</summary>
internal static class MethodSection
{
    public static IEnumerable<ReportBlock> Of(StudyConclusions conclusions)
    {
        var study = conclusions.Study;
        yield return new ReportHeading(2, "Method");
        yield return new ReportList(Words(conclusions));
        yield return new ReportTable(
            "Setups. A setup is a board with one of its execution cores, a clock, a supply, a toolchain, and what hangs on it.",
            [
                new ReportColumn("setup", false),
                new ReportColumn("board", false),
                new ReportColumn("core", false),
                new ReportColumn("clock", true),
                new ReportColumn("supply", false),
                new ReportColumn("toolchain", false),
                new ReportColumn("attachments", false),
            ],
            study.Setups.Select<Setup, IReadOnlyList<ReportCell>>(setup =>
                [
                    setup.Name,
                    setup.Board.Name,
                    setup.Core.Name,
                    Tolerant(QuantityText.Format(setup.Clock.Nominal), setup.Clock.Tolerance),
                    setup.Supply is { } supply
                        ? Tolerant(QuantityText.Format(supply.Voltage), supply.Tolerance)
                        : "not noted",
                    setup.Toolchain is { } toolchain ? Named(toolchain) : "not noted",
                    setup.Attachments.Count == 0
                        ? "none"
                        : string.Join(", ", setup.Attachments.Select(a => $"{a.Name} ({Phrase.Word(a.State)})")),
                ]
            )
        );
        yield return new ReportTable(
            "Timers.",
            [
                new ReportColumn("timer", false),
                new ReportColumn("resolution", true),
                new ReportColumn("reads", false),
                new ReportColumn("tolerance", true),
                new ReportColumn("where", false),
            ],
            study.Timers.Select<TrialTimer, IReadOnlyList<ReportCell>>(timer =>
                [
                    timer.Name,
                    QuantityText.Format(timer.Resolution),
                    Phrase.Word(timer.Reading),
                    timer.Tolerance is { } tolerance ? $"± {QuantityText.Format(tolerance)}" : "not known",
                    timer.Place == TimerPlace.OnBoard ? "on each board" : "outside, one for all",
                ]
            )
        );
        if (study.Meters.Count > 0)
        {
            yield return Meters(study.Meters);
        }
    }

    private static IEnumerable<string> Words(StudyConclusions conclusions)
    {
        var study = conclusions.Study;
        var wrong = study.Trials.Count(trial => !trial.IsResult);
        var taken =
            $"{Said.Count(study.Trials.Count, "trial")} and {Said.Count(study.Readings.Count, "supply reading")}";
        yield return wrong == 0
            ? $"{taken}, all of them used."
            : $"{taken}; {Said.Count(wrong, "trial")} put out something with the wrong checksum and {(wrong == 1 ? "is" : "are")} no result, all others were used.";
        yield return study.Trials.All(trial => trial.Order is not null)
            ? "The order in which the trials ran is known and was reviewed for drift."
            : "The order of some trials is not known, so that drift over them can't be ruled out.";
        foreach (var method in conclusions.Summaries.Select(s => s.RunTime.Method).Distinct(StringComparer.Ordinal))
        {
            yield return $"Run time: {method}.";
        }

        foreach (
            var method in conclusions.Comparisons.Select(c => c.RunTime.Ratio.Method).Distinct(StringComparer.Ordinal)
        )
        {
            yield return $"Comparison: {method}.";
        }

        yield return $"Intervals hold with {Phrase.Confidence(conclusions.Options.Confidence)} confidence each, not all at once: among many comparisons some may miss. Rankings are adjusted for their number.";
        foreach (var method in conclusions.Rankings.Select(r => r.Method).Distinct(StringComparer.Ordinal))
        {
            yield return $"Rankings: {method}.";
        }

        yield return conclusions.Options.Margin is { } margin
            ? $"Equality was tested against a margin of {Phrase.Percent(margin)}, stated by the user."
            : "No margin was stated, so nothing is called equal.";
        yield return $"McuBench.Core {typeof(MethodSection).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0]}; random numbers, where they are used, come of seed {conclusions.Options.Seed.ToString(CultureInfo.InvariantCulture)}.";
    }

    private static ReportTable Meters(IReadOnlyList<Meter> meters) =>
        new(
            "Meters.",
            [
                new ReportColumn("meter", false),
                new ReportColumn("range", true),
                new ReportColumn("accuracy", false),
                new ReportColumn("averaging time", true),
            ],
            meters.SelectMany(meter =>
                meter.Ranges.Select<MeterRange, IReadOnlyList<ReportCell>>(range =>
                    [
                        meter.Name,
                        QuantityText.Format(range.FullScale),
                        $"± ({QuantityText.Format(range.OfReading)} of reading + {QuantityText.Format(range.OfRange)} of range + {Said.Count(range.Digits, "digit")} of {QuantityText.Format(range.Resolution)})",
                        meter.AveragingTime is { } time ? QuantityText.Format(time) : "not known",
                    ]
                )
            )
        );

    private static string Tolerant(string nominal, UnitsNet.Ratio? tolerance) =>
        tolerance is { } share ? $"{nominal} ± {QuantityText.Format(share)}" : nominal;

    private static string Named(Toolchain toolchain) =>
        string.Join(
            ", ",
            new[] { toolchain.Version is { } version ? $"{toolchain.Name} {version}" : toolchain.Name }.Concat(
                toolchain.Settings
            )
        );
}
