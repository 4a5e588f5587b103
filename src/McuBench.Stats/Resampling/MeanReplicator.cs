using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Resampling;

/// <summary>Means of resamples of independent values.</summary>
internal sealed class MeanReplicator : Replicator
{
    private readonly double _mean;

    // Taken from the mean, so that an offset costs no digits.
    private readonly double[] _deviations;

    internal MeanReplicator(Sample sample)
    {
        _mean = SquaredDeviations.MeanAlone(sample.Values);
        _deviations = new double[sample.Count];
        for (int i = 0; i < _deviations.Length; i++)
        {
            _deviations[i] = sample.Values[i] - _mean;
        }
    }

    internal override double Draw(RandomStream random)
    {
        double sum = 0;
        for (int i = 0; i < _deviations.Length; i++)
        {
            sum += _deviations[random.Index(_deviations.Length)];
        }

        return _mean + sum / _deviations.Length;
    }

    internal override (double Value, double StandardError) DrawWithError(RandomStream random)
    {
        double sum = 0;
        double squares = 0;
        int n = _deviations.Length;
        for (int i = 0; i < n; i++)
        {
            double deviation = _deviations[random.Index(n)];
            sum += deviation;
            squares += deviation * deviation;
        }

        double shift = sum / n;
        double variance = Math.Max(0, squares / n - shift * shift) / (n - 1);
        return (_mean + shift, Math.Sqrt(variance));
    }
}
