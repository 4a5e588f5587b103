namespace McuBench.Stats.Distributions;

/// <summary>The masses of the number of runs in a random order of values of two kinds.</summary>
internal static class RunsMasses
{
    // Up to here the number of orders fits into a double.
    internal const int MostValues = 1000;

    /// <summary>At index i the probability of i + 2 runs, of kinds that both occur (swed-eisenhart-1943).</summary>
    internal static double[] Of(int first, int second)
    {
        int fewer = Math.Min(first, second);
        // Where the kinds are equally many, or not, the most runs are even, or odd.
        double[] ways = new double[first == second ? (2 * fewer) - 1 : 2 * fewer];
        // Ways to cut each kind into k and k + 1 parts.
        var (a, b) = (1.0, 1.0);
        double total = 0;
        for (int k = 1; k <= fewer; k++)
        {
            double nextA = a * (first - k) / k;
            double nextB = b * (second - k) / k;
            ways[(2 * k) - 2] = 2 * a * b;
            total += ways[(2 * k) - 2];
            if ((2 * k) - 1 < ways.Length)
            {
                ways[(2 * k) - 1] = (nextA * b) + (a * nextB);
                total += ways[(2 * k) - 1];
            }

            (a, b) = (nextA, nextB);
        }

        for (int i = 0; i < ways.Length; i++)
        {
            ways[i] /= total;
        }

        return ways;
    }
}
