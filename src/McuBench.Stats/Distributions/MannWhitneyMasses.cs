using System.Globalization;

namespace McuBench.Stats.Distributions;

/// <summary>The masses of Mann and Whitney's U, by the values from the smallest up.</summary>
internal static class MannWhitneyMasses
{
    // Up to here the number of orders fits into a double, the work into a second and the table into memory.
    private const int MostPairs = 20_000;

    internal static void CheckSizes(int first, int second)
    {
        Refuse(first, nameof(first));
        Refuse(second, nameof(second));
        var pairs = (long)first * second;
        if (pairs > MostPairs)
        {
            throw new ArgumentOutOfRangeException(
                nameof(second),
                second,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Product of the sample sizes must be at most {MostPairs} for the exact distribution; was {pairs}."
                )
            );
        }

        static void Refuse(int size, string name)
        {
            if (size < 1)
            {
                throw Check.OutOfRange(name, "Sample size", "at least 1", size);
            }
        }
    }

    /// <summary>At index i the probability of U = i.</summary>
    internal static double[] WithoutTies(int first, int second)
    {
        var groups = new int[first + second];
        Array.Fill(groups, 1);
        return Of(first, second, groups, unit: 1);
    }

    /// <summary>At index i the probability of U = i/2.</summary>
    internal static double[] WithTies(int first, int second, ReadOnlySpan<int> groups) =>
        Of(first, second, groups, unit: 2);

    private static double[] Of(int first, int second, ReadOnlySpan<int> groups, int unit)
    {
        // Without loss the first sample is the smaller one: exchanging the samples turns U round.
        if (first > second)
        {
            var turned = Of(second, first, groups, unit);
            Array.Reverse(turned);
            return turned;
        }

        // ways[k][u]: among the values so far, in how many ways k can be the first sample's with this U, in units.
        var ways = new double[first + 1][];
        for (var k = 0; k <= first; k++)
        {
            ways[k] = new double[(unit * k * second) + 1];
        }

        ways[0][0] = 1;
        var seen = 0;
        foreach (var size in groups)
        {
            // Downwards, so that what a row is made of is still without this group.
            for (var k = Math.Min(first, seen + size); k >= Math.Max(1, seen + size - second); k--)
            {
                Enter(ways, k, seen, size, second, unit);
            }

            seen += size;
        }

        return Normalised(ways[first]);
    }

    /// <summary>Adds to the ways of k those with one or more of the next group of equal values.</summary>
    private static void Enter(double[][] ways, int k, int seen, int size, int second, int unit)
    {
        var choices = 1.0;
        for (var j = 1; j <= Math.Min(size, k); j++)
        {
            choices = choices * (size - j + 1) / j;
            var (before, others) = (k - j, seen - (k - j));
            if (before > seen || others > second || others + size - j > second)
            {
                continue;
            }

            // Each of the j is above all the second sample's so far, and level with those of its own group.
            var shift = j * ((unit * others) + (unit * (size - j) / 2));
            Accumulate.AddMultiple(
                ways[before].AsSpan(0, (unit * before * others) + 1),
                choices,
                ways[k].AsSpan(shift)
            );
        }
    }

    private static double[] Normalised(double[] ways)
    {
        var total = 0.0;
        foreach (var way in ways)
        {
            total += way;
        }

        for (var i = 0; i < ways.Length; i++)
        {
            ways[i] /= total;
        }

        return ways;
    }
}
