using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Intervals;

namespace McuBench.Core.Conclusions;

/// <summary>Mean run time and clock of a series as uncertain numbers.</summary>
internal static class RunTimeFigures
{
    /// <summary>A tolerance is a limit within which any value is as likely as another: its standard uncertainty is a
    /// √3rd (GUM 4.3.7).</summary>
    private static readonly double RectangularDivisor = Math.Sqrt(3);

    /// <summary>The relative standard uncertainty of a tolerance ±a.</summary>
    public static double OfTolerance(double tolerance) => tolerance / RectangularDivisor;

    /// <summary>What tells a series from all others.</summary>
    public static string KeyOf(TrialSeries series) => $"{series.Setup.Name}|{series.Workload.Name}|{series.Timer.Name}";

    /// <summary>The named specimens, in ordinal order.</summary>
    public static IReadOnlyList<string> SpecimensOf(TrialSeries series) =>
        [
            .. series
                .Trials.Select(t => t.Specimen)
                .OfType<string>()
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];

    /// <summary>The mean of the run times alone, without the timer's tolerance, in seconds; its variance corrected for
    /// trials that resemble the one before.</summary>
    public static UncertainValue MeanOfReadings(TrialSeries series, IReadOnlyList<Trial> trials)
    {
        var mean = ReadingMean.Of(
            [.. trials.Select(t => Si.Seconds(t.RunTime))],
            Si.Seconds(series.Timer.Resolution),
            series.Timer.Reading,
            KeyOf(series),
            new ReadingWords(
                "trial",
                series.Setup.Name,
                $"timer step of {QuantityText.Format(series.Timer.Resolution)}, {series.Setup.Name}"
            )
        );
        return SerialCorrelation.Of(trials) is { } correlation
            ? mean.WithScaled(ScatterOf(series), correlation.VarianceFactor, correlation.FreedomFactor)
            : mean;
    }

    /// <summary>The key of the scatter of a series' trials.</summary>
    public static string ScatterOf(TrialSeries series) => ReadingMean.ScatterKey + KeyOf(series);

    /// <summary>How the mean run time and its interval were found.</summary>
    public static string MethodOf(TrialSeries series)
    {
        double[] seconds = [.. series.RunTimes.Select(t => Si.Seconds(t))];
        var isStepped =
            seconds.Length > 1
            && seconds.Max() - seconds.Min() <= SteppedMeanInterval.DitheredSteps * Si.Seconds(series.Timer.Resolution);
        var mean = isStepped
            ? "mean of run times read in steps (likelihood integrated over their scatter), Student t"
            : "mean, Student t";
        return $"{mean} with timer step and tolerance; {DependenceOf(series.Trials, SerialCorrelation.Of(series.Trials))}";
    }

    /// <summary>What was made of the dependence of trials on one another, in words.</summary>
    public static string DependenceOf(IReadOnlyList<Trial> trials, SerialCorrelation? correlation) =>
        correlation is { } known ? $"variance for a lag-1 correlation of {Said.Number(known.Lag, 2)}"
        : trials.Count < SerialCorrelation.FewestTrials
            ? $"trials taken as independent, since fewer than {SerialCorrelation.FewestTrials} don't show otherwise"
        : trials.Any(t => t.Order is null) ? "trials taken as independent, since their order isn't known"
        : "trials taken as independent";

    /// <summary>The mean run time with the timer's tolerance, in seconds.</summary>
    public static UncertainValue RunTime(TrialSeries series, IReadOnlyList<Trial> trials)
    {
        var mean = MeanOfReadings(series, trials);
        return series.Timer.Tolerance is { } tolerance
            ? mean.WithRelative(TimerTolerance(series), OfTolerance(Si.Fraction(tolerance)))
            : mean;
    }

    /// <summary>The clock's frequency, in hertz.</summary>
    public static UncertainValue Clock(TrialSeries series)
    {
        var clock = series.Setup.Clock;
        var frequency = UncertainValue.Exact(Si.Hertz(clock.Nominal));
        return clock.Tolerance is { } tolerance
            ? frequency.WithRelative(ClockTolerance(series), OfTolerance(Si.Fraction(tolerance)))
            : frequency;
    }

    /// <summary>One oscillator for all outside timers of a name; one for each board's specimens where it sits on the board.</summary>
    private static Source TimerTolerance(TrialSeries series)
    {
        var timer = series.Timer;
        var outside = timer.Place == TimerPlace.Outside;
        return new Source(
            outside ? $"timer|{timer.Name}" : $"timer|{timer.Name}|{OscillatorOf(series)}",
            outside
                ? $"tolerance of timer \"{timer.Name}\""
                : $"tolerance of timer \"{timer.Name}\" on {series.Setup.Board.Name}",
            EvaluationType.TypeB,
            double.PositiveInfinity,
            AveragesDown: false
        )
        {
            Kind = BudgetKind.TimerTolerance,
            IsLimit = true,
        };
    }

    /// <summary>Each clock setting is off by an amount of its own: whether two settings share an oscillator isn't known,
    /// and independence is the cautious choice for what is compared across clocks.</summary>
    public static Source ClockTolerance(TrialSeries series) =>
        new(
            FormattableString.Invariant($"clock|{OscillatorOf(series)}|{Si.Hertz(series.Setup.Clock.Nominal):R}"),
            $"tolerance of the {QuantityText.Format(series.Setup.Clock.Nominal)} clock of {series.Setup.Board.Name}",
            EvaluationType.TypeB,
            double.PositiveInfinity,
            AveragesDown: false
        )
        {
            Kind = BudgetKind.ClockTolerance,
            IsLimit = true,
        };

    private static string OscillatorOf(TrialSeries series)
    {
        Board board = series.Setup.Board;
        return $"{board.Name}|{string.Join('|', SpecimensOf(series))}";
    }
}
