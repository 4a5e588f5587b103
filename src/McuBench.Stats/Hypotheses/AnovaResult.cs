namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of a one-way analysis of variance.</summary>
/// <param name="Test">The F test that all group means are equal.</param>
/// <param name="Between">The spread of the group means about the grand mean.</param>
/// <param name="Within">The spread of the values about their group's mean.</param>
/// <param name="ResidualDeviation">The pooled standard deviation within groups, above 0, in the unit of the data.</param>
/// <param name="RSquared">The share of the sum of squares that lies between groups, from 0 to 1.</param>
public sealed record AnovaResult(
    FTestResult Test,
    AnovaRow Between,
    AnovaRow Within,
    double ResidualDeviation,
    double RSquared
);
