namespace McuBench.Core.Conclusions;

/// <summary>Which comparisons share the chance of a false claim. The more there are in a family, the more each has to
/// show.</summary>
public enum ClaimFamily
{
    /// <summary>All comparisons of the study, by whatever quantity: the chance that it makes any false claim is at most
    /// one less the confidence.</summary>
    Study,

    /// <summary>All comparisons on one workload, by whatever quantity: for workloads that are separate questions, each
    /// with a chance of its own.</summary>
    Workload,
}
