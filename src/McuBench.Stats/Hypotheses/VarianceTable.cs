using System.Runtime.InteropServices;
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
    internal static VarianceTable Of(ReadOnlySpan<Sample> groups) => Of(GroupMoments.Of(groups));

    /// <summary>The table of moments. O(groups).</summary>
    internal static VarianceTable Of(GroupMoments groups)
    {
        var within = new CompensatedSum();
        var total = new CompensatedSum();
        for (int i = 0; i < groups.Groups; i++)
        {
            within.Add(groups.SumOfSquares(i));
            total.Add(groups.CountOf(i) * groups.Offset(i));
        }

        double grand = total.Value / groups.Count;
        double between = 0;
        double rest = 0;
        for (int i = 0; i < groups.Groups; i++)
        {
            double deviation = groups.Offset(i) - grand;
            between += groups.CountOf(i) * deviation * deviation;
            rest += groups.CountOf(i) * deviation;
        }

        // Weighted deviations from the exact grand mean add up to 0; what they do add up to corrects for the rounded one.
        between = Math.Max(0, between - rest * rest / groups.Count);
        return new VarianceTable(
            between,
            groups.Groups - 1,
            within.Value,
            groups.Count - groups.Groups,
            groups.Exponent,
            groups.Count
        );
    }

    /// <summary>The F test of the table; refuses groups that don't spread within.</summary>
    internal FTestResult Test(string method, string what, string name)
    {
        RefuseNoSpread(what, "F", name);
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

    /// <summary>Refuses groups that don't spread within, which leaves a statistic undefined.</summary>
    internal void RefuseNoSpread(string what, string statistic, string name)
    {
        if (Within == 0)
        {
            throw new ArgumentException(
                $"{what} must differ within at least one group; all were equal in each, which leaves {statistic} undefined.",
                name
            );
        }
    }
}
