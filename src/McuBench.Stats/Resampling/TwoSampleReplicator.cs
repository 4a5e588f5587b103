namespace McuBench.Stats.Resampling;

/// <summary>Any statistic of two samples, resampled apart or, where they are pairs, pair by pair.</summary>
internal sealed class TwoSampleReplicator(
    Sample first,
    Sample second,
    TwoSampleStatistic statistic,
    bool inPairs,
    int inner
) : Replicator
{
    private readonly double[] _first = new double[first.Count];
    private readonly double[] _second = new double[second.Count];
    private readonly double[] _firstAgain = new double[first.Count];
    private readonly double[] _secondAgain = new double[second.Count];

    internal override double Draw(RandomStream random)
    {
        Resample(first.Values, second.Values, _first, _second, random);
        return statistic.Value(_first, _second);
    }

    internal override (double Value, double StandardError) DrawWithError(RandomStream random)
    {
        double value = Draw(random);
        var spread = new RunningSpread();
        for (int i = 0; i < inner; i++)
        {
            Resample(_first, _second, _firstAgain, _secondAgain, random);
            spread.Add(statistic.Value(_firstAgain, _secondAgain));
        }

        return (value, spread.StandardDeviation);
    }

    private void Resample(
        ReadOnlySpan<double> a,
        ReadOnlySpan<double> b,
        Span<double> toA,
        Span<double> toB,
        RandomStream random
    )
    {
        for (int i = 0; i < a.Length; i++)
        {
            int place = random.Index(a.Length);
            toA[i] = a[place];
            if (inPairs)
            {
                toB[i] = b[place];
            }
        }

        for (int i = 0; !inPairs && i < b.Length; i++)
        {
            toB[i] = b[random.Index(b.Length)];
        }
    }
}
