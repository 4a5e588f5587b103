using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Regression;

/// <summary>Straight lines by medians of slopes.</summary>
/// <remarks>O(n log n) on average in time, O(n) in memory, though the slopes behind them number n². Pairs of points at
/// one x have no slope and are left out.</remarks>
public static class RobustLine
{
    /// <summary>The line of Theil and Sen: the median slope of all pairs of points, with the interval of Kendall's test
    /// (theil-1950; sen-1968). Up to 29 % of the points may be wild.</summary>
    /// <remarks>The interval's ranks use the normal approximation with corrections for ties, which is close from about ten
    /// points on. Where the points are too few for the confidence there is none, and a note says so.</remarks>
    /// <param name="x">The abscissas: two or more, not all equal.</param>
    /// <param name="y">The ordinates, one for each x.</param>
    /// <param name="confidence">The confidence of the slope's interval, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There are fewer than two points, the counts differ, or all x are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, the confidence lies outside (0, 1), or two x
    /// are so close that a slope is above the greatest number.</exception>
    public static RobustLineFit TheilSen(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double confidence = 0.95)
    {
        StraightLine.CheckPoints(x, y);
        Check.Confidence(confidence);
        var points = new SlopeOrder(x, y);
        double slope = SlopeSelection.Median(points);
        var estimate = new Estimate(slope, x.Length, "slope, Theil-Sen");
        double reach = Normal.Standard.UpperQuantile((1 - confidence) / 2) * Math.Sqrt(VarianceOfKendall(x, y));
        // sen-1968, section 5: the M₁-th slope from either end.
        long rank = (long)Math.Round((points.Slopes - reach) / 2);
        if (rank < 1)
        {
            estimate = estimate with { Notes = ["Too few points for the confidence: no interval."] };
        }
        else
        {
            double lower = SlopeSelection.Select(points, rank - 1);
            double upper = SlopeSelection.Select(points, points.Slopes - rank);
            estimate =
                lower < upper
                    ? estimate with
                    {
                        Interval = new Interval(lower, upper, confidence),
                    }
                    : estimate with
                    {
                        Notes = ["Both ends are equal: the spread is not resolved, so no interval."],
                    };
        }

        return new RobustLineFit(estimate, MedianIntercept(x, y, slope));
    }

    /// <summary>Siegel's repeated medians: the median over points of the median slope to all other points (siegel-1982). Half of
    /// the points may be wild. It has no interval of its own.</summary>
    /// <param name="x">The abscissas: two or more, not all equal.</param>
    /// <param name="y">The ordinates, one for each x.</param>
    /// <exception cref="ArgumentException">There are fewer than two points, the counts differ, or all x are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or two x are so close that a slope is above
    /// the greatest number.</exception>
    public static RobustLineFit Siegel(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        StraightLine.CheckPoints(x, y);
        double slope = RepeatedMedian.Of(new SlopeOrder(x, y));
        return new RobustLineFit(
            new Estimate(slope, x.Length, "slope, repeated medians"),
            MedianIntercept(x, y, slope)
        );
    }

    private static double MedianIntercept(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double slope)
    {
        double[] intercepts = new double[x.Length];
        for (int i = 0; i < intercepts.Length; i++)
        {
            intercepts[i] = y[i] - slope * x[i];
        }

        return Location.Median(intercepts);
    }

    /// <summary>The variance of Kendall's S, with ties in both (sen-1968, eq. 2.6).</summary>
    private static double VarianceOfKendall(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double n = x.Length;
        return (n * (n - 1) * (2 * n + 5) - OfTies(x) - OfTies(y)) / 18;
    }

    private static double OfTies(ReadOnlySpan<double> values)
    {
        double[] sorted = values.ToArray();
        Array.Sort(sorted);
        double sum = 0;
        double run = 1;
        for (int i = 1; i <= sorted.Length; i++)
        {
            if (i < sorted.Length && sorted[i] == sorted[i - 1])
            {
                run++;
                continue;
            }

            sum += run * (run - 1) * (2 * run + 5);
            run = 1;
        }

        return sum;
    }
}
