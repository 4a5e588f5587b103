namespace McuBench.Simulation;

/// <summary>Scenarios of one kind.</summary>
/// <param name="Heading">What they have in common.</param>
/// <param name="IsIndependent">Whether trials are independent, so that the stricter goals bind.</param>
/// <param name="Members">The scenarios.</param>
public sealed record ScenarioGroup(string Heading, bool IsIndependent, IReadOnlyList<Scenario> Members);
