using System.Runtime.InteropServices;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>The sums of squares of a one-way layout, in the square of the data's unit times 4^<paramref name="Exponent"/>
/// so that nothing overflows.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct VarianceTable(
    double Between,
    double BetweenDegreesOfFreedom,
    double Within,
    double WithinDegreesOfFreedom,
    int Exponent,
    int Count
)
{
    /// <summary>The table of groups that were checked. O(n).</summary>
    internal static VarianceTable Of(ReadOnlySpan<Sample> groups)
    {
        int exponent = 0;
        int count = 0;
        double largest = 0;
        foreach (Sample group in groups)
        {
            count += group.Count;
            foreach (double value in group.Values)
            {
                largest = Math.Max(largest, Math.Abs(value));
            }
        }

        // Only values whose squares could leave the range are scaled: all others keep every bit.
        if (largest is not 0 and (> 1e140 or < 1e-140))
        {
            exponent = Math.ILogB(largest) + 1;
        }

        // Means are taken from a value of the data, so that a large offset costs their differences no digits.
        double origin = Math.ScaleB(groups[0].Values[0], -exponent);
        double[] means = new double[groups.Length];
        double within = 0;
        var total = new CompensatedSum();
        for (int i = 0; i < groups.Length; i++)
        {
            var deviations = SquaredDeviations.Of(groups[i].Values);
            within += Math.ScaleB(deviations.Sum, 2 * (deviations.Exponent - exponent));
            var sum = new CompensatedSum();
            foreach (double value in groups[i].Values)
            {
                sum.Add((exponent == 0 ? value : Math.ScaleB(value, -exponent)) - origin);
            }

            means[i] = sum.Value / groups[i].Count;
            total.Add(sum.Value);
        }

        double grand = total.Value / count;
        double between = 0;
        double rest = 0;
        for (int i = 0; i < groups.Length; i++)
        {
            double deviation = means[i] - grand;
            between += groups[i].Count * deviation * deviation;
            rest += groups[i].Count * deviation;
        }

        // Weighted deviations from the exact grand mean add up to 0; what they do add up to corrects for the rounded one.
        between = Math.Max(0, between - rest * rest / count);
        return new VarianceTable(between, groups.Length - 1, within, count - groups.Length, exponent, count);
    }

    /// <summary>The F test of the table; refuses groups that don't spread within.</summary>
    internal FTestResult Test(string method, string what, string name)
    {
        if (Within == 0)
        {
            throw new ArgumentException(
                $"{what} must differ within at least one group; all were equal in each, which leaves F undefined.",
                name
            );
        }

        double f = Between / BetweenDegreesOfFreedom / (Within / WithinDegreesOfFreedom);
        var distribution = FisherF.Of(BetweenDegreesOfFreedom, WithinDegreesOfFreedom);
        return new FTestResult(
            Check.Representable(f, "F", name),
            BetweenDegreesOfFreedom,
            WithinDegreesOfFreedom,
            distribution.UpperTail(f),
            Count,
            method
        );
    }
}
