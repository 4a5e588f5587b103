using McuBench.Stats.Distributions;

namespace McuBench.Stats.Resampling;

/// <summary>
/// Medians of resamples of independent values, each drawn in O(log n) from the distribution that it has over all resamples:
/// the ranks of a resample are n uniform choices, so that the probability of its middle ranks is binomial (efron-1979).
/// </summary>
internal sealed class MedianReplicator : Replicator
{
    private readonly double[] _sorted;

    // The place of the lower middle value among 1 … n, and its distribution function over the ranks.
    private readonly int _half;
    private readonly double[] _lower;

    // For an even count: the probability that the upper middle value has a rank of its own, given the lower one's.
    private readonly double[] _apart;

    internal MedianReplicator(Sample sample)
    {
        _sorted = sample.Sorted.ToArray();
        int n = _sorted.Length;
        _half = (n + 1) / 2;
        _lower = new double[n];
        var rank = BetaDistribution.Of(_half, n - _half + 1);
        for (int j = 0; j < n; j++)
        {
            _lower[j] = j == n - 1 ? 1 : rank.Cdf((j + 1.0) / n);
        }

        _apart = n % 2 == 0 ? Apart(_lower, _half) : [];
    }

    internal override double Draw(RandomStream random)
    {
        int low = RankOf(random.Uniform());
        return _apart.Length == 0 ? _sorted[low] : Middle(_sorted[low], _sorted[UpperRank(low, random.Uniform())]);
    }

    private static double Middle(double low, double high) => low + 0.5 * (high - low);

    /// <summary>The rank of the upper middle value given that of the lower one.</summary>
    private int UpperRank(int low, double uniform)
    {
        if (uniform >= _apart[low])
        {
            return low;
        }

        // Half the values lie above the rank; the least of them is at or above k with probability ((n − k)/above)^half.
        int above = _sorted.Length - low - 1;
        int left = (int)Math.Ceiling(above * Math.Pow(uniform / _apart[low], 1.0 / _half));
        return _sorted.Length - Math.Clamp(left, 1, above);
    }

    private int RankOf(double uniform)
    {
        int low = 0;
        int high = _lower.Length - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (_lower[middle] < uniform)
            {
                low = middle + 1;
            }
            else
            {
                high = middle;
            }
        }

        return low;
    }

    /// <summary>Just half of the values at or below rank j, not all below it, and the rest above: the binomial coefficient
    /// times ((j + 1)/n)^h·(1 − (j/(j + 1))^h)·((n − j − 1)/n)^h; over the probability of rank j.</summary>
    private static double[] Apart(double[] lower, int half)
    {
        int n = lower.Length;
        double logChoices = 0;
        for (int i = 1; i <= half; i++)
        {
            logChoices += Math.Log((double)(half + i) / i);
        }

        double[] apart = new double[n];
        for (int j = 0; j < n - 1; j++)
        {
            double mass = lower[j] - (j == 0 ? 0 : lower[j - 1]);
            double logBoth = logChoices + half * (Math.Log((j + 1.0) / n) + Math.Log((n - j - 1.0) / n));
            double reached = j == 0 ? 1 : -Elementary.Expm1(half * Math.Log(j / (j + 1.0)));
            // Where the mass is lost to rounding the rank is never drawn.
            apart[j] = mass > 0 ? Math.Min(1, Math.Exp(logBoth) * reached / mass) : 0;
        }

        return apart;
    }
}
