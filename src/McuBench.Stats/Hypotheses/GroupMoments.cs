using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Hypotheses;

/// <summary>
/// The count, mean and spread of each of several groups, the means as distances from one value of the data, so that an
/// offset common to all costs their differences no digits.
/// </summary>
internal sealed class GroupMoments
{
    private readonly double[] _offsets;
    private readonly SquaredDeviations[] _deviations;
    private readonly int[] _counts;

    private GroupMoments(double[] offsets, SquaredDeviations[] deviations, int[] counts, int exponent)
    {
        _offsets = offsets;
        _deviations = deviations;
        _counts = counts;
        Exponent = exponent;
        Count = counts.Sum();
    }

    /// <summary>The power of two by which the values had to be scaled to keep their squares in range; 0 for all but
    /// extreme data.</summary>
    internal int Exponent { get; }

    /// <summary>The number of groups.</summary>
    internal int Groups => _counts.Length;

    /// <summary>The number of values in all groups together.</summary>
    internal int Count { get; }

    /// <summary>The moments of groups that were checked. O(n).</summary>
    internal static GroupMoments Of(ReadOnlySpan<Sample> groups)
    {
        double largest = 0;
        foreach (Sample group in groups)
        {
            foreach (double value in group.Values)
            {
                largest = Math.Max(largest, Math.Abs(value));
            }
        }

        // Only values whose squares could leave the range are scaled: all others keep every bit.
        int exponent = largest is not 0 and (> 1e140 or < 1e-140) ? Math.ILogB(largest) + 1 : 0;
        double origin = Math.ScaleB(groups[0].Values[0], -exponent);
        double[] offsets = new double[groups.Length];
        var deviations = new SquaredDeviations[groups.Length];
        int[] counts = new int[groups.Length];
        for (int i = 0; i < groups.Length; i++)
        {
            counts[i] = groups[i].Count;
            deviations[i] = SquaredDeviations.Of(groups[i].Values);
            var sum = new CompensatedSum();
            foreach (double value in groups[i].Values)
            {
                sum.Add((exponent == 0 ? value : Math.ScaleB(value, -exponent)) - origin);
            }

            offsets[i] = sum.Value / counts[i];
        }

        return new GroupMoments(offsets, deviations, counts, exponent);
    }

    /// <summary>The number of values of a group.</summary>
    internal int CountOf(int group) => _counts[group];

    /// <summary>The mean of a group less a value common to all, divided by 2^<see cref="Exponent"/>.</summary>
    internal double Offset(int group) => _offsets[group];

    /// <summary>The mean of one group less that of another, in the unit of the data.</summary>
    internal double Difference(int first, int second) => Math.ScaleB(_offsets[first] - _offsets[second], Exponent);

    /// <summary>The sum of squared deviations from the mean of a group, divided by 4^<see cref="Exponent"/>.</summary>
    internal double SumOfSquares(int group) =>
        Math.ScaleB(_deviations[group].Sum, 2 * (_deviations[group].Exponent - Exponent));

    /// <summary>The standard error of the mean of a group of two values or more, in the unit of the data.</summary>
    internal double ErrorOfMean(int group) =>
        _deviations[group].RootOver(_counts[group] - 1) / Math.Sqrt(_counts[group]);
}
