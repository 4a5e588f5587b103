using McuBench.Core.Trials;

namespace McuBench.Simulation;

/// <summary>A kind of study: two invented boards, timed on one workload under known circumstances.</summary>
public sealed record Scenario
{
    /// <summary>Trials a board.</summary>
    public required int Trials { get; init; }

    /// <summary>The first board's mean run time divided by the second's.</summary>
    public double Ratio { get; init; } = 1;

    /// <summary>The timer's step over the run times' standard deviation: 0 for a timer that is fine beside everything,
    /// positive infinity for run times that don't scatter at all.</summary>
    public double StepOverSpread { get; init; }

    /// <summary>How the timer turns a run time into steps.</summary>
    public TimerReading Reading { get; init; } = TimerReading.Rounded;

    /// <summary>The run times' standard deviation relative to a second, the shortest run time there is; where they don't
    /// scatter, the timer's step.</summary>
    public double Spread { get; init; } = 0.001;

    /// <summary>The shape of the scatter.</summary>
    public NoiseShape Shape { get; init; } = NoiseShape.Normal;

    /// <summary>The correlation of a trial's deviation with that of the same board's trial before.</summary>
    public double Lag { get; init; }

    /// <summary>By how many standard deviations run times rise from the study's first trial to its last.</summary>
    public double Drift { get; init; }

    /// <summary>The order of trials.</summary>
    public TrialOrder Order { get; init; } = TrialOrder.Random;

    /// <summary>The tolerance of the timer's oscillator, relative, within which any error is as likely as another.</summary>
    public double Tolerance { get; init; }

    /// <summary>Whether one timer outside serves both boards, or each has its own.</summary>
    public TimerPlace Place { get; init; } = TimerPlace.Outside;

    /// <summary>The margin of equality: the true difference itself, where a false "equal" is likeliest; 1 % for equal
    /// boards.</summary>
    public double Margin => Ratio == 1 ? 0.01 : Ratio - 1;
}
