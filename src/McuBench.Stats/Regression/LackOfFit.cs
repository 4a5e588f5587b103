using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Regression;

/// <summary>Whether a straight line is the right shape, judged by repeated readings at the same abscissas.</summary>
public static class LackOfFit
{
    /// <summary>The F test of lack of fit against pure error (draper-smith-1998, section 2.1). O(n log n).</summary>
    /// <param name="x">The abscissas: three different ones or more, at least one of them repeated.</param>
    /// <param name="y">The ordinates, one for each x.</param>
    /// <exception cref="ArgumentException">The counts differ, there are fewer than three different abscissas, none is
    /// repeated, or repeated readings are all equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite.</exception>
    public static LackOfFitResult OfStraightLine(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        LineFit line = StraightLine.Fit(x, y);
        double[] keys = x.ToArray();
        double[] readings = y.ToArray();
        Array.Sort(keys, readings);
        int groups = 0;
        var within = new CompensatedSum();
        var between = new CompensatedSum();
        int first = 0;
        while (first < keys.Length)
        {
            int next = first + 1;
            while (next < keys.Length && keys[next] == keys[first])
            {
                next++;
            }

            groups++;
            var deviations = SquaredDeviations.Of(readings.AsSpan(first, next - first));
            double spread = deviations.RootOver(1);
            double off = deviations.UnscaledMean - line.ValueAt(keys[first]);
            within.Add(spread * spread);
            between.Add((next - first) * off * off);
            first = next;
        }

        int pure = keys.Length - groups;
        int lack = groups - 2;
        if (lack < 1)
        {
            throw Refusal(FormattableString.Invariant($"Count of different x must be at least 3; was {groups}."));
        }

        if (pure < 1)
        {
            throw Refusal("Values of x must repeat at least once; all were different.");
        }

        if (!(within.Value > 0))
        {
            throw Refusal("Repeated readings must differ at one x at least; all were equal, which leaves F undefined.");
        }

        double f = between.Value / lack / (within.Value / pure);
        return new LackOfFitResult(f, lack, pure, FisherF.Of(lack, pure).UpperTail(f), Math.Sqrt(within.Value / pure));
    }

    private static ArgumentException Refusal(string message) => new(message, "x");
}
