namespace McuBench.Stats.Resampling;

/// <summary>Draws the statistic of resamples. One for each thread, since it may hold scratch space.</summary>
internal abstract class Replicator
{
    /// <summary>The statistic of the next resample.</summary>
    internal abstract double Draw(RandomStream random);

    /// <summary>The statistic of the next resample, and its standard error as that resample shows it.</summary>
    internal virtual (double Value, double StandardError) DrawWithError(RandomStream random) =>
        throw new NotSupportedException("No standard error belongs to this way of resampling.");
}
