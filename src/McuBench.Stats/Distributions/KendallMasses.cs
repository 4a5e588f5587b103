namespace McuBench.Stats.Distributions;

/// <summary>The masses of the concordant pairs of two orders, by their count from 0 up.</summary>
internal static class KendallMasses
{
    internal const int MostValues = 200;

    /// <summary>At index i the probability of i concordant pairs among those not tied.</summary>
    internal static double[] WithTies(ReadOnlySpan<int> groups)
    {
        // Each group against all before it is a Mann–Whitney count, independent of the order among those before.
        double[] mass = [1];
        var seen = 0;
        foreach (var size in groups)
        {
            if (seen > 0)
            {
                mass = Sum(mass, MannWhitneyMasses.WithoutTies(seen, size));
            }

            seen += size;
        }

        return mass;
    }

    /// <summary>The masses of the sum of two independent counts.</summary>
    private static double[] Sum(double[] first, double[] second)
    {
        var sum = new double[first.Length + second.Length - 1];
        for (var i = 0; i < second.Length; i++)
        {
            Accumulate.AddMultiple(first, second[i], sum.AsSpan(i));
        }

        return sum;
    }
}
