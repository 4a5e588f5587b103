using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Quantities;

namespace McuBench.Core.Reporting;

/// <summary>Says a plan in sentences: how many trials, sessions and specimens a goal takes, or why none suffice.</summary>
public static class PlanStatement
{
    /// <summary>Says the plan.</summary>
    /// <param name="plan">The plan.</param>
    public static string Of(TrialPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.IsReached ? Reached(plan)
            : plan.NeededRunTime is { } needed ? TooShort(plan, needed)
            : $"{NotWithLimits(plan)} Lessen the spread, or ask for less.";
    }

    private static string Reached(TrialPlan plan)
    {
        var sessions =
            plan.SessionsPerSpecimen > 1 ? $" in each of {Count(plan.SessionsPerSpecimen.Value, "session")}" : "";
        var specimens = plan.Specimens > 1 ? $" on each of {Count(plan.Specimens.Value, "specimen")}" : "";
        var all = plan.TrialsPerSetup == plan.TrialsPerSession ? "" : $" ({plan.TrialsPerSetup} trials a setup)";
        var come =
            plan.Goal == PlanGoal.ShowDifference
                ? $"are expected to show a difference of {Phrase.Percent(plan.Expected!.Value)} in four studies of five"
                : $"are expected to bring {Aim(plan)} to ± {Phrase.Percent(plan.Expected!.Value)}";
        return $"{Count(plan.TrialsPerSession!.Value, "trial")} of each setup{sessions}{specimens}{all} {come}, at {Phrase.Confidence(plan.Confidence)} confidence.";
    }

    private static string TooShort(TrialPlan plan, UnitsNet.Duration needed)
    {
        var step = QuantityText.Format(plan.Basis.Timer.Resolution);
        var share = Said.Percent(Si.Seconds(plan.Basis.Timer.Resolution) / Si.Seconds(plan.Basis.RunTime));
        return $"No number of trials {Verb(plan)} with this timer, whose step of {step} is {share} of a run: lengthen the run to at least {Said.Seconds(Si.Seconds(needed))}, {plan.NeededWorkItemsPerRun} {Phrase.Plural(plan.Basis.Workload.ItemName)}, or use a finer timer.";
    }

    private static string NotWithLimits(TrialPlan plan) =>
        $"No plan within the bench's limits {Verb(plan)}: run times spread by {Said.Percent(Si.Fraction(plan.Basis.TrialSpread))} between trials, {Said.Percent(Si.Fraction(plan.Basis.SessionSpread))} between sessions and {Said.Percent(Si.Fraction(plan.Basis.SpecimenSpread))} between specimens.";

    private static string Verb(TrialPlan plan) =>
        plan.Goal == PlanGoal.ShowDifference
            ? $"shows a difference of {Phrase.Percent(plan.Wanted)} in four studies of five"
            : $"brings {Aim(plan)} to ± {Phrase.Percent(plan.Wanted)}";

    private static string Aim(TrialPlan plan) =>
        plan.Goal == PlanGoal.RunTimeWithin
            ? "the interval of a setup's run time"
            : "the interval of the ratio of two setups";

    private static string Count(int count, string what) => Said.Count(count, what);
}
