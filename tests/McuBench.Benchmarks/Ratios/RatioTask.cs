namespace McuBench.Benchmarks.Ratios;

/// <summary>A piece of work that is timed here and elsewhere.</summary>
/// <param name="Key">What the other sides know it by.</param>
/// <param name="Work">What it is, in words.</param>
/// <param name="Run">The work; what it finds, to compare with what the others find.</param>
/// <param name="Rival">Which side's time it is held against: R or Python; null where there is none.</param>
/// <param name="Goal">How many times as fast as the rival it is to be.</param>
/// <param name="Tolerance">How far results may differ, relative; null where they come from different random numbers or an
/// approximate search.</param>
internal sealed record RatioTask(
    string Key,
    string Work,
    Func<double[]> Run,
    string? Rival,
    double Goal,
    double? Tolerance = 1e-9
)
{
    /// <summary>For times that are an average over several calls inside the work: how many.</summary>
    internal int Calls { get; init; } = 1;
}
