namespace McuBench.Stats.Distributions;

/// <summary>The masses of Wilcoxon's signed-rank sum, by the values from 0 up.</summary>
internal static class SignedRankMasses
{
    // 2^−1000 is the smallest mass of so many, and still a double.
    internal const int MostValues = 1000;

    /// <summary>At index i the probability of the sum i.</summary>
    internal static double[] WithoutTies(int count)
    {
        var mass = Start(count * (count + 1) / 2);
        var largest = 0;
        for (var rank = 1; rank <= count; rank++)
        {
            Enter(mass, rank, ref largest);
        }

        return mass;
    }

    /// <summary>At index i the probability of the sum i/2.</summary>
    internal static double[] WithTies(ReadOnlySpan<int> groups, int ranksBefore)
    {
        var count = 0;
        foreach (var size in groups)
        {
            count += size;
        }

        var mass = Start(count * (count + 1 + (2 * ranksBefore)));
        var (largest, seen) = (0, ranksBefore);
        foreach (var size in groups)
        {
            for (var i = 0; i < size; i++)
            {
                // Twice the mean of the ranks seen + 1 to seen + size.
                Enter(mass, (2 * seen) + size + 1, ref largest);
            }

            seen += size;
        }

        return mass;
    }

    private static double[] Start(int largest)
    {
        var mass = new double[largest + 1];
        mass[0] = 1;
        return mass;
    }

    /// <summary>The sum with one more rank, which is in it or not with equal chance.</summary>
    private static void Enter(double[] mass, int rank, ref int largest)
    {
        largest += rank;
        // Downwards, so that what a place is made of is still without this rank.
        for (var i = largest; i >= rank; i--)
        {
            mass[i] = 0.5 * (mass[i] + mass[i - rank]);
        }

        for (var i = 0; i < rank; i++)
        {
            mass[i] *= 0.5;
        }
    }
}
