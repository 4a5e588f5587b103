using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Regression;

/// <summary>Least-squares fits that are linear in their coefficients.</summary>
public static class LinearModel
{
    /// <summary>Fits y = b₀ + b₁·x₁ + … by Householder QR of the regressors, centred where there is an intercept and scaled
    /// to one length (golub-van-loan-2013, section 5.3). O(n·p²).</summary>
    /// <param name="regressors">The regressors, each with one value for each y; none may be constant where there is an
    /// intercept, nor a combination of the others.</param>
    /// <param name="y">The responses; at least as many as coefficients.</param>
    /// <param name="intercept">Whether there is a b₀. Without one the surface passes through the origin, and R² is taken
    /// about 0 instead of the mean.</param>
    /// <exception cref="ArgumentNullException">The regressors or one of them are null.</exception>
    /// <exception cref="ArgumentException">There is nothing to fit, the counts differ, there are fewer responses than
    /// coefficients, or a regressor is a combination of the others.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or a result is above the greatest number.</exception>
    public static LinearFit Fit(IReadOnlyList<double[]> regressors, ReadOnlySpan<double> y, bool intercept = true)
    {
        ArgumentNullException.ThrowIfNull(regressors);
        Check.Finite(y);
        int n = y.Length;
        if (regressors.Count == 0)
        {
            throw new ArgumentException("Count of regressors must be at least 1; was 0.", nameof(regressors));
        }

        double[] means = new double[regressors.Count];
        double[][] columns = new double[regressors.Count][];
        for (int j = 0; j < columns.Length; j++)
        {
            ArgumentNullException.ThrowIfNull(regressors[j], nameof(regressors));
            Check.Finite(regressors[j], nameof(regressors));
            Check.SameCount(regressors[j].Length, n, "Count of values of a regressor", "y", nameof(regressors));
            means[j] = intercept ? SquaredDeviations.MeanAlone(regressors[j]) : 0;
            columns[j] = Less(regressors[j], means[j]);
        }

        Check.AtLeast(n, columns.Length + (intercept ? 1 : 0), nameof(y));
        double meanY = intercept ? SquaredDeviations.MeanAlone(y) : 0;
        var qr = HouseholderQr.Of(columns, out int dependent);
        if (dependent >= 0)
        {
            string others = intercept ? "those before it and a constant" : "those before it";
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Regressor at index {dependent} must not be a combination of {others}; was, to within rounding."
                ),
                nameof(regressors)
            );
        }

        double[] slopes = qr.Solve(Less(y, meanY));
        (double residual, double total) = Sums(regressors, y, means, meanY, slopes);
        return new LinearFit(qr, intercept, means, meanY, slopes, n, residual, total);
    }

    private static double[] Less(ReadOnlySpan<double> values, double mean)
    {
        double[] less = new double[values.Length];
        for (int i = 0; i < less.Length; i++)
        {
            less[i] = values[i] - mean;
        }

        return less;
    }

    /// <summary>The sums of squares of the residuals, 0 where they are but rounding, and of y.</summary>
    private static (double Residual, double Total) Sums(
        IReadOnlyList<double[]> regressors,
        ReadOnlySpan<double> y,
        double[] means,
        double meanY,
        double[] slopes
    )
    {
        double fewRoundings = (slopes.Length + 4) * 2.220446049250313e-16;
        var residuals = new CompensatedSum();
        var total = new CompensatedSum();
        bool onlyRounding = true;
        for (int i = 0; i < y.Length; i++)
        {
            double centred = y[i] - meanY;
            var rest = new CompensatedSum();
            rest.Add(centred);
            double terms = Math.Abs(y[i]) + Math.Abs(meanY);
            for (int j = 0; j < slopes.Length; j++)
            {
                double term = slopes[j] * (regressors[j][i] - means[j]);
                rest.Add(-term);
                terms += Math.Abs(term);
            }

            onlyRounding &= Math.Abs(rest.Value) <= fewRoundings * terms;
            residuals.Add(rest.Value * rest.Value);
            total.Add(centred * centred);
        }

        return (onlyRounding ? 0 : residuals.Value, total.Value);
    }
}
