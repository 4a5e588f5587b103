using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Regression;

/// <summary>Least-squares straight lines, y = intercept + slope · x.</summary>
/// <remarks>Sums are taken of deviations from the centroid, which holds 12 digits and more on certified data where sums
/// of raw products would lose half of them.</remarks>
public static class StraightLine
{
    /// <summary>The least-squares line through points of equal uncertainty in y (draper-smith-1998, sections 1.2 to
    /// 1.4). O(n).</summary>
    /// <param name="x">The abscissas, exactly known: two or more, not all equal.</param>
    /// <param name="y">The ordinates, one for each x.</param>
    /// <exception cref="ArgumentException">There are fewer than two points, the counts differ, or all x are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or so large or small that the squares of
    /// the deviations leave the range of numbers.</exception>
    public static LineFit Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        CheckPoints(x, y);
        double meanX = SquaredDeviations.MeanAlone(x);
        double meanY = SquaredDeviations.MeanAlone(y);
        return Solve(x, y, [], meanX, meanY, WeightMeaning.Relative);
    }

    /// <summary>The weighted least-squares line, each point weighted with 1/u² (draper-smith-1998, section 9.2). O(n).</summary>
    /// <param name="x">The abscissas, exactly known: two or more, not all equal.</param>
    /// <param name="y">The ordinates, one for each x.</param>
    /// <param name="standardUncertainties">The standard uncertainty u of each y, above 0, in the unit of y.</param>
    /// <param name="meaning">Whether the uncertainties are known as given or up to a common factor.</param>
    /// <exception cref="ArgumentException">There are fewer than two points, the counts differ, or all x are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, an uncertainty not above 0, a sum leaves
    /// the range of numbers, or the meaning is not one of the named ones.</exception>
    public static LineFit FitWeighted(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> standardUncertainties,
        WeightMeaning meaning = WeightMeaning.Absolute
    )
    {
        CheckPoints(x, y);
        Check.SameCount(
            standardUncertainties.Length,
            x.Length,
            "Count of standard uncertainties",
            "x",
            nameof(standardUncertainties)
        );
        Check.Positive(standardUncertainties);
        Check.Named(meaning);
        double[] weights = new double[x.Length];
        for (int i = 0; i < weights.Length; i++)
        {
            weights[i] = 1 / (standardUncertainties[i] * standardUncertainties[i]);
            if (!(weights[i] > 0 && double.IsFinite(weights[i])))
            {
                throw Check.OutOfRange(
                    nameof(standardUncertainties),
                    FormattableString.Invariant($"Value at index {i}"),
                    "between 1E-154 and 1E154",
                    standardUncertainties[i]
                );
            }
        }

        return Solve(x, y, weights, WeightedMean(x, weights), WeightedMean(y, weights), meaning);
    }

    internal static void CheckPoints(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Check.Finite(x);
        Check.Finite(y);
        Check.SameCount(y.Length, x.Length, "Count of y", "x", nameof(y));
        Check.AtLeast(x.Length, 2, nameof(x));
        if (x.IndexOfAnyExcept(x[0]) < 0)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"Values of x must not all be equal; all {x.Length} were {x[0]}."),
                nameof(x)
            );
        }
    }

    private static double WeightedMean(ReadOnlySpan<double> values, ReadOnlySpan<double> weights)
    {
        var sum = new CompensatedSum();
        var total = new CompensatedSum();
        for (int i = 0; i < values.Length; i++)
        {
            sum.Add(weights[i] * values[i]);
            total.Add(weights[i]);
        }

        return sum.Value / total.Value;
    }

    /// <summary>Solves about a centroid; no weights stand for weights of 1.</summary>
    private static LineFit Solve(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> weights,
        double meanX,
        double meanY,
        WeightMeaning meaning
    )
    {
        var total = new CompensatedSum();
        var sxx = new CompensatedSum();
        var sxy = new CompensatedSum();
        var syy = new CompensatedSum();
        for (int i = 0; i < x.Length; i++)
        {
            double w = weights.IsEmpty ? 1 : weights[i];
            double dx = x[i] - meanX;
            double dy = y[i] - meanY;
            total.Add(w);
            sxx.Add(w * dx * dx);
            sxy.Add(w * dx * dy);
            syy.Add(w * dy * dy);
        }

        if (!(sxx.Value > 0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(x),
                "Values of x must lie within a range whose square a number can hold; they did not."
            );
        }

        double slope = sxy.Value / sxx.Value;
        double residuals = SumOfSquaredResiduals(x, y, weights, meanX, meanY, slope);
        var centre = new LineFit.Centre(meanX, meanY, total.Value, sxx.Value, !weights.IsEmpty);
        return new LineFit(centre, slope, x.Length, residuals, syy.Value, meaning);
    }

    private static double SumOfSquaredResiduals(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> weights,
        double meanX,
        double meanY,
        double slope
    )
    {
        const double fewRoundings = 4 * 2.220446049250313e-16;
        var sum = new CompensatedSum();
        bool onlyRounding = true;
        for (int i = 0; i < x.Length; i++)
        {
            double rise = slope * (x[i] - meanX);
            double residual = y[i] - meanY - rise;
            onlyRounding &= Math.Abs(residual) <= fewRoundings * (Math.Abs(y[i]) + Math.Abs(meanY) + Math.Abs(rise));
            sum.Add((weights.IsEmpty ? 1 : weights[i]) * residual * residual);
        }

        // What arithmetic leaves of points on a line is not scatter to make intervals from.
        return onlyRounding ? 0 : sum.Value;
    }
}
