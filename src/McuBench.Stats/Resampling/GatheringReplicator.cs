namespace McuBench.Stats.Resampling;

/// <summary>Any statistic of resamples that are put together value by value.</summary>
internal sealed class GatheringReplicator : Replicator
{
    private readonly double[] _values;
    private readonly ResamplingScheme _scheme;
    private readonly Statistic _statistic;
    private readonly int _inner;
    private readonly int[] _places;
    private readonly double[] _resample;
    private readonly double[] _again;

    internal GatheringReplicator(Sample sample, ResamplingScheme scheme, Statistic statistic, int inner)
    {
        _values = sample.Values.ToArray();
        _scheme = scheme;
        _statistic = statistic;
        _inner = inner;
        int capacity = scheme.Capacity(_values.Length);
        _places = new int[capacity];
        _resample = new double[capacity];
        _again = new double[capacity];
    }

    internal override double Draw(RandomStream random) => _statistic.Value(Resample(random));

    internal override (double Value, double StandardError) DrawWithError(RandomStream random)
    {
        ReadOnlySpan<double> resample = Resample(random);
        double value = _statistic.Value(resample);
        var spread = new RunningSpread();
        for (int i = 0; i < _inner; i++)
        {
            for (int k = 0; k < resample.Length; k++)
            {
                _again[k] = resample[random.Index(resample.Length)];
            }

            spread.Add(_statistic.Value(_again.AsSpan(0, resample.Length)));
        }

        return (value, spread.StandardDeviation);
    }

    private ReadOnlySpan<double> Resample(RandomStream random)
    {
        int count = _scheme.Draw(_places, _values.Length, random);
        for (int i = 0; i < count; i++)
        {
            _resample[i] = _values[_places[i]];
        }

        return _resample.AsSpan(0, count);
    }
}
