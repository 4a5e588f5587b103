using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Distributions;
using UnitsNet;

namespace McuBench.Core.Planning;

/// <summary>How many trials, sessions and specimens of each setup a goal takes; or that none suffice, and what would
/// help.</summary>
/// <remarks>
/// <para>The standard uncertainty planned with is s²(specimens)/a + s²(sessions)/ab + s²(trials)/abn and the timer's
/// part: nothing that averages can take below it where the spread doesn't carry the readings over several steps. The
/// degrees of freedom are those of the highest level that has a spread, a − 1, ab − 1 or abn − 1, twice that for two
/// setups; so the plan is on the safe side where levels below matter too.</para>
/// <para>Among the plans that reach the goal, the one with the fewest trials, then sessions, then specimens.
/// Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record TrialPlan
{
    private const double Power = 0.80;
    private const int FewestTrials = 3;

    private TrialPlan(
        PlanBasis basis,
        PlanGoal goal,
        Ratio wanted,
        double confidence,
        Design? design,
        RunLength? length
    )
    {
        Basis = basis;
        Goal = goal;
        Wanted = wanted;
        Confidence = confidence;
        TrialsPerSession = design?.Trials;
        SessionsPerSpecimen = design?.Sessions;
        Specimens = design?.Specimens;
        Expected = design is { } found ? Si.Ratio(found.Expected) : null;
        NeededRunTime = length is { } l ? Si.Duration(l.Seconds) : null;
        NeededWorkItemsPerRun = length?.Items;
    }

    /// <summary>What it rests on.</summary>
    public PlanBasis Basis { get; }

    /// <summary>What is to be reached.</summary>
    public PlanGoal Goal { get; }

    /// <summary>The half-width or difference wanted.</summary>
    public Ratio Wanted { get; }

    /// <summary>The confidence of the intervals planned for.</summary>
    public double Confidence { get; }

    /// <summary>Whether the goal can be reached within the limits.</summary>
    public bool IsReached => TrialsPerSession is not null;

    /// <summary>Trials of each setup in a session; null where the goal can't be reached.</summary>
    public int? TrialsPerSession { get; }

    /// <summary>Sessions on each specimen; null where the goal can't be reached.</summary>
    public int? SessionsPerSpecimen { get; }

    /// <summary>Specimens of each model; null where the goal can't be reached.</summary>
    public int? Specimens { get; }

    /// <summary>All trials of a setup; null where the goal can't be reached.</summary>
    public int? TrialsPerSetup => TrialsPerSession * SessionsPerSpecimen * Specimens;

    /// <summary>The half-width or difference that the plan is expected to come to, at most what is wanted; null where the
    /// goal can't be reached.</summary>
    public Ratio? Expected { get; }

    /// <summary>Where the timer's step stands in the way: the run time from which on it takes no more than half of the
    /// variance that the goal allows; null otherwise.</summary>
    public Duration? NeededRunTime { get; }

    /// <summary>The work items that such a run completes, at the pace of the basis; null where run time isn't what
    /// stands in the way.</summary>
    public long? NeededWorkItemsPerRun { get; }

    /// <summary>Plans for an interval of one setup's run time of at most a half-width. O(limits · log trials).</summary>
    /// <param name="basis">What it rests on.</param>
    /// <param name="halfWidth">The half-width, as a share of the run time; above 0 %.</param>
    /// <param name="limits">What the bench can give; <see cref="PlanLimits.Default"/> when null.</param>
    /// <param name="confidence">Of the interval, from 0.5 to 0.9999.</param>
    /// <exception cref="ArgumentOutOfRangeException">The half-width or the confidence is out of its range.</exception>
    public static TrialPlan ForRunTimeWithin(
        PlanBasis basis,
        Ratio halfWidth,
        PlanLimits? limits = null,
        double confidence = 0.95
    ) => Of(basis, PlanGoal.RunTimeWithin, halfWidth, nameof(halfWidth), limits, confidence);

    /// <summary>Plans for an interval of the ratio of two setups like the basis of at most a half-width.</summary>
    /// <inheritdoc cref="ForRunTimeWithin"/>
    public static TrialPlan ForRatioWithin(
        PlanBasis basis,
        Ratio halfWidth,
        PlanLimits? limits = null,
        double confidence = 0.95
    ) => Of(basis, PlanGoal.RatioWithin, halfWidth, nameof(halfWidth), limits, confidence);

    /// <summary>Plans for a difference between two setups like the basis that four of five studies show.</summary>
    /// <param name="basis">What it rests on.</param>
    /// <param name="difference">The smallest difference worth showing, as by how much the larger exceeds the smaller;
    /// above 0 %.</param>
    /// <param name="limits">What the bench can give; <see cref="PlanLimits.Default"/> when null.</param>
    /// <param name="confidence">Of the comparison, from 0.5 to 0.9999.</param>
    /// <exception cref="ArgumentOutOfRangeException">The difference or the confidence is out of its range.</exception>
    public static TrialPlan ForDifference(
        PlanBasis basis,
        Ratio difference,
        PlanLimits? limits = null,
        double confidence = 0.95
    ) => Of(basis, PlanGoal.ShowDifference, difference, nameof(difference), limits, confidence);

    private static TrialPlan Of(
        PlanBasis basis,
        PlanGoal goal,
        Ratio wanted,
        string parameter,
        PlanLimits? limits,
        double confidence
    )
    {
        ArgumentNullException.ThrowIfNull(basis);
        var share = Si.Fraction(Require.Share(wanted, "What is wanted", parameter));
        if (share == 0)
        {
            throw new ArgumentOutOfRangeException(parameter, wanted, "What is wanted must be above 0 %; was 0 %.");
        }

        // Options hold the range of a confidence.
        _ = new ConclusionOptions { Confidence = confidence };
        var width = new PlannedWidth(basis, goal, confidence);
        var design = Cheapest(width, share, limits ?? PlanLimits.Default, Si.Fraction(basis.SpecimenSpread) > 0);
        var length = design is null && width.IsStepInTheWay(share) ? RunLength.Of(basis, width, share) : null;
        return new TrialPlan(basis, goal, Si.Ratio(share), confidence, design, length);
    }

    private static Design? Cheapest(PlannedWidth width, double wanted, PlanLimits limits, bool isOfModel)
    {
        Design? best = null;
        for (var specimens = isOfModel ? 2 : 1; specimens <= (isOfModel ? limits.Specimens : 1); specimens++)
        {
            for (var sessions = 1; sessions <= limits.SessionsPerSpecimen; sessions++)
            {
                if (Fewest(width, wanted, specimens, sessions, limits.TrialsPerSession) is not { } trials)
                {
                    continue;
                }

                var total = trials * sessions * specimens;
                if (best is null || total < best.Trials * best.Sessions * best.Specimens)
                {
                    best = new Design(trials, sessions, specimens, width.Of(trials, sessions, specimens));
                }
            }
        }

        return best;
    }

    /// <summary>The fewest trials a session, by halving: the width falls as they grow.</summary>
    private static int? Fewest(PlannedWidth width, double wanted, int specimens, int sessions, int most)
    {
        if (width.Of(most, sessions, specimens) > wanted)
        {
            return null;
        }

        var (below, enough) = (FewestTrials - 1, most);
        while (enough - below > 1)
        {
            var middle = (below + enough) / 2;
            if (width.Of(middle, sessions, specimens) > wanted)
            {
                below = middle;
            }
            else
            {
                enough = middle;
            }
        }

        return enough;
    }

    private sealed record Design(int Trials, int Sessions, int Specimens, double Expected);

    private sealed record RunLength(double Seconds, long Items)
    {
        /// <summary>Rounded up to two digits: "at least 12 s".</summary>
        public static RunLength Of(PlanBasis basis, PlannedWidth width, double wanted)
        {
            var exact = width.SecondsForStep(wanted);
            var unit = Math.Pow(10, Math.Floor(Math.Log10(exact)) - 1);
            var seconds = Math.Ceiling(exact / unit - 1e-9) * unit;
            var items = Math.Ceiling(basis.Workload.WorkItemsPerRun * seconds / Si.Seconds(basis.RunTime) - 1e-9);
            return new RunLength(seconds, (long)Math.Min(items, long.MaxValue / 2));
        }
    }

    /// <summary>The half-width or smallest difference that so many trials are expected to come to.</summary>
    private sealed class PlannedWidth
    {
        private readonly double trial;
        private readonly double session;
        private readonly double specimen;
        private readonly double step;
        private readonly double seconds;
        private readonly bool randomStart;
        private readonly bool isRatio;
        private readonly bool isDifference;
        private readonly double alpha;

        public PlannedWidth(PlanBasis basis, PlanGoal goal, double confidence)
        {
            seconds = Si.Seconds(basis.RunTime);
            trial = Si.Fraction(basis.TrialSpread);
            session = Si.Fraction(basis.SessionSpread);
            specimen = Si.Fraction(basis.SpecimenSpread);
            step = Si.Seconds(basis.Timer.Resolution) / seconds;
            randomStart = basis.Timer.Reading == TimerReading.TickDifferenceRandomStart;
            isRatio = goal != PlanGoal.RunTimeWithin;
            isDifference = goal == PlanGoal.ShowDifference;
            alpha = 1 - confidence;
        }

        /// <summary>Half a step of scatter spreads readings over three steps or more, and rounding then biases the mean by
        /// less than 0.3 % of the step (widrow-kollar-2008).</summary>
        private bool IsDithered => randomStart || trial >= step / 2;

        public double Of(int trials, int sessions, int specimens)
        {
            double groups = (double)sessions * specimens;
            var all = groups * trials;
            var ofStep = step * step / (randomStart ? 6 : 12);
            var variance =
                specimen * specimen / specimens
                + session * session / groups
                + (IsDithered ? (trial * trial + ofStep) / all : Math.Max(trial * trial / all, ofStep));
            var degrees =
                specimen > 0 ? specimens - 1
                : session > 0 ? groups - 1
                : all - 1;
            if (degrees < 1)
            {
                return double.PositiveInfinity;
            }

            return Reach(variance, isRatio ? 2 * degrees : degrees);
        }

        /// <summary>Whether no number of trials, sessions and specimens could reach the goal for the step alone.</summary>
        public bool IsStepInTheWay(double wanted) =>
            !IsDithered && Reach(step * step / 12, double.PositiveInfinity) > wanted;

        public double SecondsForStep(double wanted)
        {
            // On the whole variance that the goal allows, the step may take half.
            var unit = Factor(double.PositiveInfinity) * Math.Sqrt((isRatio ? 2 : 1) / 12.0) * step * seconds;
            var allowed = isDifference ? Math.Log(1 + wanted) : wanted;
            return Math.Sqrt(2) * unit / allowed;
        }

        private double Reach(double variance, double degrees)
        {
            var reach = Factor(degrees) * Math.Sqrt(isRatio ? 2 * variance : variance);
            return isDifference ? Math.Exp(reach) - 1 : reach;
        }

        private double Factor(double degrees)
        {
            var student = StudentT.Of(degrees);
            var twoSided = student.UpperQuantile(alpha / 2);
            return isDifference ? twoSided + student.UpperQuantile(1 - Power) : twoSided;
        }
    }
}
