namespace McuBench.Core.Planning;

/// <summary>What a plan is to reach.</summary>
public enum PlanGoal
{
    /// <summary>A half-width of the interval of one setup's mean run time, as a share of it.</summary>
    RunTimeWithin,

    /// <summary>A half-width of the interval of the ratio of two setups' run times, as a share of it.</summary>
    RatioWithin,

    /// <summary>A difference between two setups that four of five studies would show.</summary>
    ShowDifference,
}
