using McuBench.Core.Trials;
using McuBench.Stats.Descriptive;

namespace McuBench.Core.Conclusions;

/// <summary>
/// The mean of readings that are shown in steps, with its uncertainty: each reading stands for an interval, and
/// averaging takes the step out only where scatter spreads the readings over several steps.
/// </summary>
/// <remarks>
/// <para>Rounding turns a true mean into one that is off by at most r/π·exp(−2π²σ²/r²) and smaller terms, with σ the
/// scatter and r the step (widrow-kollar-2008, the bias of a rounded mean); without scatter this is the sawtooth of
/// variance r²/12 (gum-2008, F.2.2.1). So:</para>
/// <list type="bullet">
/// <item>Readings that spread over three steps or more are dithered: s²/n, and the bias that is left.</item>
/// <item>Otherwise the larger of s²/n and r²/12: the step enters undivided. Its degrees of freedom are those of
/// Welch and Satterthwaite with the scatter s²/n inside it, (n − 1)(r²/12 : s²/n)², so that they pass into n − 1 where
/// scatter takes over.</item>
/// <item>A difference of two ticks with a random start is unbiased, and its variance is at most r²/4 and r²/6 on
/// average over all run times: each reading varies at least by the larger of s² and r²/6, and the mean by 1/n of it.</item>
/// </list>
/// <para>Readings that are cut off, or started on a tick, are low by half a step on average and are lifted by it.</para>
/// <para>The rule is provisional. Averaged over the truth's place on the timer's grid its 95 % intervals hold at least
/// 94 % for the mean and for the ratio, at 3 to 300 trials and steps from nothing to infinitely many times the scatter
/// (tests/reference/scripts/reading_mean_coverage.py; at 1000 trials and a step of three to four times the scatter
/// 93 %). It is nowhere wider than the larger of s²/n and r²/12 with n − 1 degrees of freedom.</para>
/// </remarks>
internal static class ReadingMean
{
    /// <summary>Two steps between the smallest and the largest reading, less what decimal readings lose in binary.</summary>
    private const double DitheredSteps = 2 - 1e-6;

    /// <summary>How many terms of the bias's Fourier series count: at no scatter the rest is 2 % of r²/12, and the
    /// readings are not dithered then.</summary>
    private const int BiasTerms = 8;

    public const string ScatterKey = "scatter|";
    public const string StepKey = "step|";

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
        var randomStart = reading is TimerReading.TickDifferenceRandomStart;
        var mean = Location.Mean(readings) + lift;
        var n = readings.Length;
        var ofStep = randomStart ? step * step / 6 / n : step * step / 12;

        if (n == 1)
        {
            return UncertainValue
                .Of(mean, Step(double.PositiveInfinity, ofStep))
                .WithMissing(
                    $"One {words.Reading} alone: its scatter is unknown, so there is no interval and no comparison."
                );
        }

        var variance = Scale.Variance(readings);
        var ofScatter = variance / n;
        if (Span(readings) >= DitheredSteps * step)
        {
            return randomStart
                ? UncertainValue.Of(mean, Scatter(ofScatter))
                : UncertainValue.Of(mean, Scatter(ofScatter), Step(double.PositiveInfinity, BiasLeft(variance, step)));
        }

        if (ofScatter >= ofStep)
        {
            return UncertainValue.Of(mean, Scatter(ofScatter));
        }

        // From two equal readings next to nothing is known of the scatter, whatever the step.
        var excess = ofScatter / ofStep;
        var degreesOfFreedom = n == 2 ? 1 : (n - 1) / (excess * excess);
        return UncertainValue.Of(mean, Step(degreesOfFreedom, ofStep));

        Contribution Scatter(double ofMean) =>
            new(
                new Source(ScatterKey + series, words.Scatter(n), EvaluationType.TypeA, n - 1, AveragesDown: true)
                {
                    Kind = BudgetKind.Scatter,
                },
                Math.Sqrt(ofMean)
            );

        Contribution Step(double degreesOfFreedom, double ofMean) =>
            new(
                new Source(StepKey + series, words.Step, EvaluationType.TypeB, degreesOfFreedom, randomStart)
                {
                    Kind = words.StepKind,
                    Size = step,
                },
                Math.Sqrt(ofMean)
            );
    }

    /// <summary>The mean squared bias, over all places of the truth on the grid, that rounding leaves in the mean of
    /// scattered readings: r²/2π² · Σ exp(−4π²k²σ²/r²)/k².</summary>
    private static double BiasLeft(double varianceOfReadings, double step)
    {
        // What is seen is scatter and rounding; rounding adds r²/12 (Sheppard's correction).
        var scatter = Math.Max(0, varianceOfReadings / (step * step) - 1.0 / 12);
        double sum = 0;
        for (var k = 1; k <= BiasTerms; k++)
        {
            sum += Math.Exp(-4 * Math.PI * Math.PI * k * k * scatter) / (k * k);
        }

        var bias = step * step / (2 * Math.PI * Math.PI) * sum;

        // Below a millionth of the scatter it only clutters the budget.
        return bias > 1e-12 * varianceOfReadings ? bias : 0;
    }

    private static double Span(ReadOnlySpan<double> readings)
    {
        var least = readings[0];
        var most = readings[0];
        foreach (var reading in readings)
        {
            least = Math.Min(least, reading);
            most = Math.Max(most, reading);
        }

        return most - least;
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
