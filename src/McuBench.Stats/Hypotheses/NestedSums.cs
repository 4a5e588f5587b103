namespace McuBench.Stats.Hypotheses;

/// <summary>The sums of squares of a nested layout.</summary>
/// <param name="SumsOfSquares">One for each factor and one within, divided by 4^<paramref name="Exponent"/>.</param>
/// <param name="Mean">The mean of all values, in the unit of the data.</param>
/// <param name="Exponent">The power of two by which the values had to be scaled to keep their squares in range; 0 for all but
/// extreme data.</param>
/// <param name="GroupMeans">The means of the innermost groups less <paramref name="Origin"/>, divided by
/// 2^<paramref name="Exponent"/>.</param>
/// <param name="Origin">A value of the data, likewise divided.</param>
internal sealed record NestedSums(double[] SumsOfSquares, double Mean, int Exponent, double[] GroupMeans, double Origin)
{
    /// <summary>The sums of data. O(n).</summary>
    internal static NestedSums Of(NestedData data)
    {
        double largest = 0;
        foreach (double value in data.Ordered)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        int exponent = largest is not 0 and (> 1e140 or < 1e-140) ? Math.ILogB(largest) + 1 : 0;
        double origin = Math.ScaleB(data.Ordered[0], -exponent);
        double[] values = new double[data.Count];
        for (int i = 0; i < values.Length; i++)
        {
            // From a value of the data, so that a large offset costs no digits.
            values[i] = (exponent == 0 ? data.Ordered[i] : Math.ScaleB(data.Ordered[i], -exponent)) - origin;
        }

        double[][] means = new double[data.Factors][];
        double[] sums = SumsOf(values, data);
        for (int j = data.Factors - 1; j >= 0; j--)
        {
            means[j] = [.. sums];
            ReadOnlySpan<int> sizes = data.Sizes(j);
            for (int u = 0; u < sums.Length; u++)
            {
                means[j][u] /= sizes[u];
            }

            sums = Outer(sums, data.Parents(j), j == 0 ? 1 : data.GroupCount(j - 1));
        }

        double mean = sums[0] / data.Count;
        double[] squares = new double[data.Factors + 1];
        for (int j = 0; j < data.Factors; j++)
        {
            squares[j] = About(means[j], data.Sizes(j), data.Parents(j), j == 0 ? [mean] : means[j - 1]);
        }

        squares[^1] = Within(values, data.Sizes(data.Factors - 1), means[^1]);
        return new NestedSums(squares, Math.ScaleB(origin + mean, exponent), exponent, means[^1], origin);
    }

    private static double[] SumsOf(double[] values, NestedData data)
    {
        ReadOnlySpan<int> sizes = data.Sizes(data.Factors - 1);
        double[] sums = new double[sizes.Length];
        int start = 0;
        for (int u = 0; u < sums.Length; u++)
        {
            sums[u] = CompensatedSum.Of(values.AsSpan(start, sizes[u]));
            start += sizes[u];
        }

        return sums;
    }

    private static double[] Outer(double[] sums, ReadOnlySpan<int> parents, int groups)
    {
        var outer = new CompensatedSum[groups];
        for (int u = 0; u < sums.Length; u++)
        {
            outer[parents[u]].Add(sums[u]);
        }

        return [.. outer.Select(sum => sum.Value)];
    }

    private static double About(double[] means, ReadOnlySpan<int> sizes, ReadOnlySpan<int> parents, double[] outer)
    {
        var sum = new CompensatedSum();
        for (int u = 0; u < means.Length; u++)
        {
            double deviation = means[u] - outer[parents[u]];
            sum.Add(sizes[u] * deviation * deviation);
        }

        return sum.Value;
    }

    private static double Within(double[] values, ReadOnlySpan<int> sizes, double[] means)
    {
        var sum = new CompensatedSum();
        int start = 0;
        for (int u = 0; u < means.Length; u++)
        {
            ReadOnlySpan<double> group = values.AsSpan(start, sizes[u]);
            start += sizes[u];
            if (group.IndexOfAnyExcept(group[0]) < 0)
            {
                // Rounding in the mean must not make a spread where there is none.
                continue;
            }

            double squares = 0;
            double rest = 0;
            foreach (double value in group)
            {
                double deviation = value - means[u];
                squares += deviation * deviation;
                rest += deviation;
            }

            // Deviations from the exact mean add up to 0; what they do add up to corrects for the rounded one.
            sum.Add(Math.Max(0, squares - rest * rest / group.Length));
        }

        return sum.Value;
    }
}
