using System.Globalization;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Resampling;

/// <summary>A statistic of splits of all values into two groups, one split after another.</summary>
internal sealed class ListedSplits
{
    private readonly double[] _values;
    private readonly double[] _first;
    private readonly double[] _second;
    private readonly TwoSampleStatistic _statistic;
    private readonly Alternative _alternative;
    private readonly double _slack;

    internal ListedSplits(Sample first, Sample second, TwoSampleStatistic statistic, Alternative alternative)
    {
        _values = [.. first.Values, .. second.Values];
        _first = new double[first.Count];
        _second = new double[second.Count];
        _statistic = statistic;
        _alternative = alternative;
        Observed = Checked(statistic.Value(first.Values, second.Values));
        // Orders of summation change the last digits.
        _slack = 1e-12 * Math.Abs(Observed);
    }

    /// <summary>The statistic of the data as they are.</summary>
    internal double Observed { get; }

    /// <summary>The share of all splits that is at least as far out.</summary>
    internal double ExactShare()
    {
        int taken = _first.Length;
        int count = _values.Length;
        int[] chosen = [.. Enumerable.Range(0, taken)];
        long all = 0;
        long farOut = 0;
        while (true)
        {
            Split(chosen);
            all++;
            farOut += IsFarOut(Checked(_statistic.Value(_first, _second))) ? 1 : 0;

            // The next choice in lexicographic order.
            int place = taken - 1;
            while (place >= 0 && chosen[place] == count - taken + place)
            {
                place--;
            }

            if (place < 0)
            {
                return (double)farOut / all;
            }

            chosen[place]++;
            for (int i = place + 1; i < taken; i++)
            {
                chosen[i] = chosen[i - 1] + 1;
            }
        }
    }

    /// <summary>The share of random splits that is at least as far out, the one seen among them.</summary>
    internal double RandomShare(ulong seed, int resamples)
    {
        var random = RandomStream.Of(seed);
        int farOut = 0;
        double[] values = [.. _values];
        for (int split = 0; split < resamples; split++)
        {
            for (int i = 0; i < _first.Length; i++)
            {
                int other = i + random.Index(values.Length - i);
                (values[i], values[other]) = (values[other], values[i]);
            }

            values.AsSpan(0, _first.Length).CopyTo(_first);
            values.AsSpan(_first.Length).CopyTo(_second);
            farOut += IsFarOut(Checked(_statistic.Value(_first, _second))) ? 1 : 0;
        }

        return (farOut + 1.0) / (resamples + 1.0);
    }

    private static double Checked(double value) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Statistic of every split must be a finite number; was {value}."
                ),
                "statistic"
            );

    private bool IsFarOut(double value) =>
        _alternative switch
        {
            Alternative.TwoSided => Math.Abs(value) >= Math.Abs(Observed) - _slack,
            Alternative.Less => value <= Observed + _slack,
            _ => value >= Observed - _slack,
        };

    private void Split(int[] chosen)
    {
        int next = 0;
        int other = 0;
        for (int i = 0; i < _values.Length; i++)
        {
            if (next < chosen.Length && chosen[next] == i)
            {
                _first[next++] = _values[i];
            }
            else
            {
                _second[other++] = _values[i];
            }
        }
    }
}
