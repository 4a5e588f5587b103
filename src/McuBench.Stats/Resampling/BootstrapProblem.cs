namespace McuBench.Stats.Resampling;

/// <summary>What a bootstrap needs to know of data, statistic and scheme.</summary>
/// <param name="Observed">The statistic of the data.</param>
/// <param name="Count">The number of values.</param>
/// <param name="Name">The statistic's name.</param>
/// <param name="Scheme">The scheme's name, with a comma before it; empty for independent values.</param>
/// <param name="Replicator">Makes what draws resamples, one for each thread.</param>
/// <param name="StandardError">The formula's standard error of the data; null where the statistic has none.</param>
/// <param name="Acceleration">Finds the acceleration; gives null where it can't be had.</param>
internal sealed record BootstrapProblem(
    double Observed,
    int Count,
    string Name,
    string Scheme,
    Func<Replicator> Replicator,
    double? StandardError,
    Func<double?> Acceleration
);
