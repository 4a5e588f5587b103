namespace McuBench.Stats.Resampling;

/// <summary>A difference or ratio of what two samples' replicators draw, the samples resampled apart.</summary>
internal sealed class CombinedReplicator(Replicator first, Replicator second, TwoSampleStatistic statistic) : Replicator
{
    internal override double Draw(RandomStream random)
    {
        double a = first.Draw(random);
        return statistic.Combine(a, second.Draw(random));
    }

    internal override (double Value, double StandardError) DrawWithError(RandomStream random)
    {
        (double a, double aError) = first.DrawWithError(random);
        (double b, double bError) = second.DrawWithError(random);
        double value = statistic.Combine(a, b);
        // To first order, where it is a ratio.
        return (
            value,
            statistic.IsRatio ? double.Hypot(aError, value * bError) / Math.Abs(b) : double.Hypot(aError, bError)
        );
    }
}
