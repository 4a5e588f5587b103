using McuBench.Core.Trials;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Intervals;

namespace McuBench.Core.Conclusions;

/// <summary>
/// The mean of readings that are shown in steps, with its uncertainty: each reading stands for an interval, and
/// averaging takes the step out only where scatter spreads the readings over several steps.
/// </summary>
/// <remarks>
/// <para>Mean and uncertainty are those of <see cref="SteppedMeanInterval"/>: the likelihood of the steps that the
/// readings stand for, integrated over the unknown scatter (elster-2000), or Student's t on them where they spread over
/// more than six. What remains of the variance beside s²/n less the rounding's own part is the step's; readings that are
/// all equal stand for the whole step undivided, as likely at one place of it as at another (gum-2008, F.2.2.1).</para>
/// <para>Readings that are cut off, or started on a tick, are low by half a step on average and are lifted by it.</para>
/// <para>How often intervals of this kind hold the truth, and how wide others are: docs/coverage.md.</para>
/// </remarks>
internal static class ReadingMean
{
    public const string ScatterKey = "scatter|";
    public const string StepKey = "step|";

    /// <summary>A share of the variance that is not worth a line of its own.</summary>
    private const double Negligible = 1e-6;

    /// <summary>The mean of readings in one unit.</summary>
    /// <param name="readings">At least one, in the order taken.</param>
    /// <param name="step">The step that they are shown in, above zero, in their unit.</param>
    /// <param name="reading">How they are turned into steps.</param>
    /// <param name="series">What tells these readings from all others; the source's key.</param>
    /// <param name="words">How the parts are called.</param>
    public static UncertainValue Of(
        ReadOnlySpan<double> readings,
        double step,
        TimerReading reading,
        string series,
        ReadingWords words
    )
    {
        var lift = reading is TimerReading.Truncated or TimerReading.TickDifferenceSynchronousStart ? step / 2 : 0;
        var isRandomStart = reading is TimerReading.TickDifferenceRandomStart;
        var ofStep = step * step / (isRandomStart ? 6 : 12);
        var n = readings.Length;
        if (n == 1)
        {
            return UncertainValue
                .Of(readings[0] + lift, Step(double.PositiveInfinity, ofStep, isDithered: false))
                .WithMissing(
                    $"One {words.Reading} alone: its scatter is unknown, so there is no interval and no comparison."
                );
        }

        var stepped = SteppedMeanInterval.Of(
            readings,
            step,
            isRandomStart ? SteppedReading.RandomStart : SteppedReading.Rounded
        );
        if (stepped is not { StandardError: { } error, DegreesOfFreedom: { } degreesOfFreedom })
        {
            throw new InvalidOperationException("A mean of readings in steps came out without a standard error.");
        }

        var mean = stepped.Value + lift;
        var all = error * error;
        var variance = Scale.Variance(readings);
        var ofScatter = Math.Min(all, Math.Max(0, variance - ofStep) / n);
        if (all - ofScatter <= Negligible * all)
        {
            return UncertainValue.Of(mean, Scatter(degreesOfFreedom, all));
        }

        var isDithered = isRandomStart || variance > 0;
        return ofScatter <= Negligible * all
            ? UncertainValue.Of(mean, Step(degreesOfFreedom, all, isDithered))
            // By Welch and Satterthwaite the two then have the degrees of freedom of the whole.
            : UncertainValue.Of(
                mean,
                Scatter(degreesOfFreedom * (ofScatter / all) * (ofScatter / all), ofScatter),
                Step(double.PositiveInfinity, all - ofScatter, isDithered)
            );

        Contribution Scatter(double ofFreedom, double ofMean) =>
            new(
                new Source(ScatterKey + series, words.Scatter(n), EvaluationType.TypeA, ofFreedom, AveragesDown: true)
                {
                    Kind = BudgetKind.Scatter,
                },
                Math.Sqrt(ofMean)
            );

        Contribution Step(double ofFreedom, double ofMean, bool isDithered) =>
            new(
                new Source(StepKey + series, words.Step, EvaluationType.TypeB, ofFreedom, isDithered)
                {
                    Kind = words.StepKind,
                    Size = step,
                    IsLimit = double.IsPositiveInfinity(ofFreedom) && !isDithered,
                },
                Math.Sqrt(ofMean)
            );
    }
}

/// <summary>How the parts of a mean's uncertainty are called.</summary>
/// <param name="Reading">One of them: "trial", "reading".</param>
/// <param name="Of">What they are of: "Marl 200".</param>
/// <param name="Step">The step: "timer step of 0.1 s".</param>
internal sealed record ReadingWords(string Reading, string Of, string Step)
{
    /// <summary>Whose step it is.</summary>
    public BudgetKind StepKind { get; init; } = BudgetKind.TimerStep;

    public string Scatter(int count) => FormattableString.Invariant($"scatter of {count} {Reading}s, {Of}");
}
