using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Conclusions;

/// <summary>The mean of current readings as an uncertain number.</summary>
internal static class CurrentFigures
{
    /// <summary>The mean of readings of one setup in one phase, in amperes.</summary>
    /// <remarks>
    /// A meter's accuracy in a range doesn't average: its gain (share of reading) is one error for all readings that were
    /// taken with that meter in that range, in this setup or another, so it cancels where they are divided; its offset
    /// (share of range, digits) is taken as one error for the readings of this mean and as another elsewhere.
    /// </remarks>
    /// <param name="readings">At least one.</param>
    /// <param name="series">What tells these readings from all others.</param>
    /// <param name="of">What they are of, in words.</param>
    public static UncertainValue Mean(IReadOnlyList<SupplyReading> readings, string series, string of)
    {
        double[] amperes = [.. readings.Select(r => Si.Amperes(r.Current))];
        var coarsest = readings.Max(r => Si.Amperes(r.MeterRange.Resolution));
        var mean = ReadingMean.Of(
            amperes,
            coarsest,
            TimerReading.Rounded,
            series,
            new ReadingWords("reading", of, $"last digit of {Said.Amperes(coarsest)}, {of}")
            {
                StepKind = BudgetKind.MeterStep,
            }
        );

        var accuracy = readings
            .GroupBy(r => (r.Meter.Name, FullScale: Si.Amperes(r.MeterRange.FullScale)))
            .SelectMany(used => AccuracyOf([.. used], readings.Count, series, of));
        var value = UncertainValue.Of(mean.Value, [.. mean.Contributions, .. accuracy]);

        // One figure of a meter that states its accuracy has an uncertainty of type B; its scatter is not in it.
        return readings.Count == 1 && !StatesAccuracy(readings[0].MeterRange)
            ? value.WithMissing(
                "One reading alone, of a meter without stated accuracy: there is no interval and no comparison."
            )
            : value;
    }

    public static bool StatesAccuracy(MeterRange range) =>
        Si.Fraction(range.OfReading) > 0 || Si.Fraction(range.OfRange) > 0 || range.Digits > 0;

    private static IEnumerable<Contribution> AccuracyOf(SupplyReading[] used, int count, string series, string of)
    {
        var range = used[0].MeterRange;
        var meter = used[0].Meter.Name;
        var fullScale = Said.Amperes(Si.Amperes(range.FullScale));
        var gain = Si.Fraction(range.OfReading) * used.Sum(r => Si.Amperes(r.Current)) / count;
        var offset =
            (Si.Fraction(range.OfRange) * Si.Amperes(range.FullScale) + range.Digits * Si.Amperes(range.Resolution))
            * used.Length
            / count;
        yield return new Contribution(
            new Source(
                FormattableString.Invariant($"gain|{meter}|{Si.Amperes(range.FullScale):R}"),
                $"gain of meter \"{meter}\" in its {fullScale} range",
                EvaluationType.TypeB,
                double.PositiveInfinity,
                AveragesDown: false
            )
            {
                Kind = BudgetKind.MeterGain,
                IsLimit = true,
            },
            RunTimeFigures.OfTolerance(gain)
        );
        yield return new Contribution(
            new Source(
                FormattableString.Invariant($"offset|{meter}|{Si.Amperes(range.FullScale):R}|{series}"),
                $"offset of meter \"{meter}\" in its {fullScale} range, {of}",
                EvaluationType.TypeB,
                double.PositiveInfinity,
                AveragesDown: false
            )
            {
                Kind = BudgetKind.MeterOffset,
                IsLimit = true,
            },
            RunTimeFigures.OfTolerance(offset)
        );
    }
}
