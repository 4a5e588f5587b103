using McuBench.Core.Quantities;
using McuBench.Stats.Descriptive;

namespace McuBench.Core.Conclusions;

/// <summary>Fits the split of run time by clock and puts its results together.</summary>
internal static class ClockSplitFigures
{
    public static ClockSplit Of(SetupSummary[] group, ConclusionOptions options)
    {
        double[] periods = [.. group.Select(s => 1 / Si.Hertz(s.Setup.Clock.Nominal))];
        var variances = Variances(group, out var degreesOfFreedom);

        // The clocks' tolerances move a point along x by a share of x, which is the same as moving it along y by that
        // share of the part that follows the clock. A first line without them gives that part.
        var slope = UncertainLine
            .Through(periods, [.. group.Select(s => s.Workings.RunTime)], variances, degreesOfFreedom)
            .Slope.Value;
        var points = new UncertainValue[group.Length];
        for (var i = 0; i < group.Length; i++)
        {
            points[i] = group[i].Workings.RunTime;
            if (group[i].Setup.Clock.Tolerance is not { } tolerance)
            {
                continue;
            }

            // A clock that is fast makes true periods shorter than nominal ones.
            var amount = -slope * periods[i] * RunTimeFigures.OfTolerance(Si.Fraction(tolerance));
            points[i] = points[i]
                .Plus(UncertainValue.Of(0, new Contribution(RunTimeFigures.ClockTolerance(group[i].Series), amount)));
            variances[i] += amount * amount;
        }

        var line = UncertainLine.Through(periods, points, variances, degreesOfFreedom);
        return Results(group, periods, line, options);
    }

    private static double[] Variances(SetupSummary[] group, out double degreesOfFreedom) =>
        LineWeights.Of(
            [
                .. group.Select(summary =>
                {
                    var runTime = summary.Workings.RunTime;
                    double[] seconds = [.. summary.Series.RunTimes.Select(t => Si.Seconds(t))];
                    return (
                        runTime.Value,
                        seconds.Length,
                        seconds.Length > 1 ? Scale.Variance(seconds) : 0,
                        runTime
                            .Contributions.Where(c =>
                                c.Source.Key.StartsWith(ReadingMean.StepKey, StringComparison.Ordinal)
                            )
                            .Sum(c => c.Amount * c.Amount)
                    );
                }),
            ],
            out degreesOfFreedom
        );

    private static ClockSplit Results(
        SetupSummary[] group,
        double[] periods,
        UncertainLine line,
        ConclusionOptions options
    )
    {
        var measure = new Measure(
            options.Confidence,
            group.Sum(s => s.Series.Trials.Count),
            "weighted straight line in 1/f, propagated by source (GUM 5.1)"
        );
        var fixedTime = measure.Of(line.Intercept, seconds => Si.Duration(seconds), Ends.Symmetric);
        var fixedPart = fixedTime switch
        {
            { Lower: { } lower } when Si.Seconds(lower) > 0 => FixedPart.Present,
            { Upper: { } upper } when Si.Seconds(upper) < 0 => FixedPart.Negative,
            _ => FixedPart.NotResolved,
        };
        var items = group[0].Workload.WorkItemsPerRun;
        var (first, last) = (group[0].Workings, group[^1].Workings);
        var extra = last
            .RunTime.Times(last.Clock)
            .Over(first.RunTime.Times(first.Clock))
            .Minus(UncertainValue.Exact(1));
        return new ClockSplit(
            ClockGroup.NameOf(group),
            group.Select((summary, i) => Point(summary, periods[i], line, measure)),
            fixedTime,
            measure.Of(line.Slope, cycles => cycles, Ends.Symmetric),
            measure.Of(line.Slope.Times(1.0 / items), cycles => cycles, Ends.Symmetric),
            measure.Of(extra, share => Si.Ratio(share), Ends.Symmetric),
            fixedPart,
            group.All(s => s.Series.Trials.Count == 1)
                ? ClockSplitBounds.Of(group.Select(s => s.Series), ClockGroup.NameOf(group))
                : null,
            Notes(group, line, fixedPart, extra.Value),
            line,
            measure
        );
    }

    private static ClockSplitPoint Point(SetupSummary summary, double period, UncertainLine line, Measure measure)
    {
        var fitted = line.At(period).Value;
        var runTime = summary.Workings.RunTime;
        var scaling = runTime.Minus(line.Intercept);
        return new ClockSplitPoint(
            summary,
            Si.Duration(fitted),
            Si.Duration(runTime.Value - fitted),
            measure.Of(scaling.Over(runTime), share => Si.Ratio(share), Ends.Symmetric),
            measure.Of(scaling, seconds => Si.Duration(seconds), Ends.Symmetric)
        );
    }

    private static IEnumerable<string> Notes(
        SetupSummary[] group,
        UncertainLine line,
        FixedPart fixedPart,
        double extraCycles
    )
    {
        if (line.LackOfFit is null)
        {
            yield return "Two clocks: the fixed part is an apparent one, since wait states that are added at the higher clock look the same.";
            if (extraCycles > 0)
            {
                yield return $"Without any fixed part, {Said.Percent(extraCycles)} more cycles at {Said.Hertz(group[^1].Setup.Clock.Nominal)} than at {Said.Hertz(group[0].Setup.Clock.Nominal)} would give the same run times.";
            }
        }
        else if (line.LackOfFit.IsRefuted)
        {
            yield return $"Run times at {group.Length} clocks don't lie on a line in 1/f ({Said.PValue(line.LackOfFit.PValue)}): wait states or caches change with the clock. The split is an apparent one, and its intervals don't allow for the misfit.";
        }

        if (fixedPart == FixedPart.Negative)
        {
            yield return "The fixed part comes out below zero, which no part of a run can be: periodic interrupts, a timer's bias, or a timer that follows the clock.";
        }

        if (line.Slope.Value <= 0)
        {
            yield return "Run time doesn't fall as the clock rises: the timer may take its time from the clock that was changed.";
        }

        if (group.Any(s => s.Setup.Clock.Tolerance is null))
        {
            yield return "A clock's tolerance is unknown and not in the intervals.";
        }

        if (group.Select(s => string.Join('|', s.Specimens)).Distinct(StringComparer.Ordinal).Count() > 1)
        {
            yield return "The clocks were not all run on the same specimens: differences between specimens are in the split.";
        }
    }
}
