using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Distributions;
using McuBench.Stats.Planning;
using UnitsNet;

namespace McuBench.Core.Planning;

/// <summary>Says after each trial of a setup whether its run time is known as closely as wanted.</summary>
/// <remarks>
/// <para>
/// Scatter is looked at by <see cref="SequentialMean"/>, whose coverage is simulated with the repeated looking; what the
/// timer leaves whatever the number of trials is taken off the wanted width first. Where that alone is too wide, the
/// answer is <see cref="StopOutlook.OutOfReach"/>.
/// </para>
/// <para>Immutable; equal when all properties are equal. A decision depends on the trials alone.</para>
/// </remarks>
public sealed record StopRule
{
    private SequentialOptions options = SequentialOptions.Default;

    /// <summary>Makes a rule.</summary>
    /// <param name="halfWidth">The wanted half-width of the run time's interval as a share of the run time, above 0 % and
    /// below 100 %.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is not in that range.</exception>
    public StopRule(Ratio halfWidth)
    {
        HalfWidth = halfWidth;
    }

    /// <summary>The wanted half-width, as a share of the run time.</summary>
    public Ratio HalfWidth
    {
        get;
        init
        {
            var share = Require.Share(value, "Wanted half-width", nameof(HalfWidth));
            field =
                Si.Fraction(share) > 0
                    ? share
                    : throw new ArgumentOutOfRangeException(
                        nameof(HalfWidth),
                        value,
                        "Wanted half-width must be above 0 %; was 0 %."
                    );
        }
    }

    /// <summary>How it is looked and when it is given up; 95 %, from 10 trials on, 4 to confirm, 1000 at most unless
    /// set.</summary>
    public SequentialOptions Options
    {
        get => options;
        init => options = Require.Given(value, nameof(Options));
    }

    /// <summary>Looks at the trials taken so far. O(n).</summary>
    /// <param name="series">The trials of one setup, in the order taken; null before the first.</param>
    public StopDecision Judge(TrialSeries? series)
    {
        if (series is null || series.Trials.Count == 0)
        {
            return new StopDecision(StopOutlook.GoOn, 0, HalfWidth, Options.Minimum + Options.Confirming);
        }

        var summary = SetupSummary.Of(series, options: new ConclusionOptions { Confidence = Options.Confidence });
        var runTime = summary.RunTime;
        var mean = Si.Seconds(runTime.Value);
        var wanted = Si.Fraction(HalfWidth);
        var remains = Remains(runTime);
        var isOutOfReach = remains >= wanted && series.Trials.Count >= Options.Minimum;
        double[] times = [.. series.Trials.Select(trial => Si.Seconds(trial.RunTime))];
        var scatter = SequentialMean.Judge(
            times,
            mean * (remains < wanted ? Math.Sqrt((wanted * wanted) - (remains * remains)) : wanted),
            Options
        );
        return new StopDecision(
            isOutOfReach ? StopOutlook.OutOfReach : OutlookOf(scatter.Outlook),
            series.Trials.Count,
            HalfWidth,
            isOutOfReach ? series.Trials.Count : scatter.ExpectedCount ?? Options.Minimum + Options.Confirming
        )
        {
            HalfWidth = runTime.HasInterval
                ? Si.Ratio((Si.Seconds(runTime.Upper!.Value) - Si.Seconds(runTime.Lower!.Value)) / 2 / mean)
                : null,
            Fixed = runTime.HasInterval ? Si.Ratio(remains) : null,
        };
    }

    // At many trials the scatter's part vanishes and what remains has no degrees of freedom to be short of.
    private double Remains(Measured<Duration> runTime)
    {
        var squares = runTime
            .Budget.Where(line => !line.AveragesDown)
            .Sum(line => line.RelativeStandardUncertainty * line.RelativeStandardUncertainty);
        return Math.Sqrt(squares) * Normal.Standard.UpperQuantile((1 - Options.Confidence) / 2);
    }

    private static StopOutlook OutlookOf(SequentialOutlook outlook) =>
        outlook switch
        {
            SequentialOutlook.GoOn => StopOutlook.GoOn,
            SequentialOutlook.Confirm => StopOutlook.Confirm,
            SequentialOutlook.Enough => StopOutlook.Enough,
            _ => StopOutlook.AtMaximum,
        };
}
