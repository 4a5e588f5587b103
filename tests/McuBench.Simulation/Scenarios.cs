using McuBench.Core.Trials;

namespace McuBench.Simulation;

/// <summary>The scenarios of the table, in groups.</summary>
public static class Scenarios
{
    private static readonly int[] Trials = [3, 5, 10, 30];
    private static readonly double[] Steps = [0, 0.5, 1, 3, 10, double.PositiveInfinity];
    private static readonly double[] CoarseSteps = [1, 3, 10, double.PositiveInfinity];
    private static readonly double[] Ratios = [1, 1.005, 1.02, 1.3];

    /// <summary>All groups: a heading, what holds in it, and its scenarios.</summary>
    public static IReadOnlyList<ScenarioGroup> All { get; } =
    [
        new(
            "Rounded timer, normal scatter of 0.1 %",
            IsIndependent: true,
            [
                .. from n in Trials
                from step in Steps
                from ratio in Ratios
                select new Scenario
                {
                    Trials = n,
                    StepOverSpread = step,
                    Ratio = ratio,
                },
            ]
        ),
        new(
            "Other readings of the timer, normal scatter of 0.1 %",
            IsIndependent: true,
            [
                .. from reading in new[]
                {
                    TimerReading.Truncated,
                    TimerReading.TickDifferenceRandomStart,
                    TimerReading.TickDifferenceSynchronousStart,
                }
                from n in Trials
                from step in CoarseSteps
                select new Scenario
                {
                    Trials = n,
                    StepOverSpread = step,
                    Reading = reading,
                    Ratio = 1.02,
                },
            ]
        ),
        new(
            "Normal scatter of 1 % and 10 %",
            IsIndependent: true,
            [
                .. from spread in new[] { 0.01, 0.1 }
                from n in Trials
                from step in new[] { 0, 3.0 }
                from ratio in new[] { 1, 1.02 }
                select new Scenario
                {
                    Trials = n,
                    StepOverSpread = step,
                    Spread = spread,
                    Ratio = ratio,
                },
            ]
        ),
        new(
            "Skewed and contaminated scatter of 0.1 %",
            IsIndependent: true,
            [
                .. from shape in new[] { NoiseShape.Skewed, NoiseShape.Contaminated }
                from n in Trials
                from step in new[] { 0, 3.0 }
                from ratio in new[] { 1, 1.02 }
                select new Scenario
                {
                    Trials = n,
                    StepOverSpread = step,
                    Shape = shape,
                    Ratio = ratio,
                },
            ]
        ),
        new(
            "One oscillator for both, and one each, off by up to 0.05 %",
            IsIndependent: true,
            [
                .. from place in new[] { TimerPlace.Outside, TimerPlace.OnBoard }
                from n in Trials
                from ratio in new[] { 1, 1.02 }
                select new Scenario
                {
                    Trials = n,
                    Place = place,
                    Tolerance = 0.0005,
                    Ratio = ratio,
                },
            ]
        ),
        new(
            "Trials that resemble the one before (lag-1 correlation 0.5)",
            IsIndependent: false,
            [
                .. from n in Trials
                from step in new[] { 0, 3.0 }
                from ratio in new[] { 1, 1.02 }
                select new Scenario
                {
                    Trials = n,
                    StepOverSpread = step,
                    Lag = 0.5,
                    Ratio = ratio,
                },
            ]
        ),
        new(
            "A drift of one standard deviation over the study, the same for both boards",
            IsIndependent: false,
            [
                .. from order in new[] { TrialOrder.Random, TrialOrder.OneAfterTheOther }
                from n in Trials
                select new Scenario
                {
                    Trials = n,
                    Drift = 1,
                    Order = order,
                },
            ]
        ),
    ];
}
