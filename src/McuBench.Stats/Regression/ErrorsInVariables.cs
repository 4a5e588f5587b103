using McuBench.Stats.Descriptive;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Regression;

/// <summary>Straight lines through points that are uncertain in x as well as in y.</summary>
public static class ErrorsInVariables
{
    private const int MostIterations = 500;

    /// <summary>Deming's line: least squares with one known ratio of the variances of the errors in y and x (deming-1943), with
    /// jackknife standard errors (linnet-1993) and t intervals at n − 2 degrees of freedom. O(n).</summary>
    /// <param name="x">The abscissas: three or more, not all equal.</param>
    /// <param name="y">The ordinates, one for each x.</param>
    /// <param name="varianceRatio">The variance of the errors of y over that of x, above 0; 1 is orthogonal regression.</param>
    /// <param name="confidence">The confidence of both intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There are fewer than three points, the counts differ, all x are equal, or the line is
    /// vertical.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the ratio or the confidence is out of range.</exception>
    public static ErrorsInVariablesFit Deming(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        double varianceRatio = 1,
        double confidence = 0.95
    )
    {
        StraightLine.CheckPoints(x, y);
        Check.AtLeast(x.Length, 3, nameof(x));
        Check.Positive(varianceRatio, "Ratio of variances");
        Check.Confidence(confidence);
        int n = x.Length;
        var sums = new Sums(x, y);
        double slope = SlopeOf(sums.Xx, sums.Xy, sums.Yy, varianceRatio);
        double intercept = sums.MeanY - slope * sums.MeanX;
        double[] slopes = new double[n];
        double[] intercepts = new double[n];
        for (int i = 0; i < n; i++)
        {
            // Sums without a point, from those with it.
            double dx = x[i] - sums.MeanX;
            double dy = y[i] - sums.MeanY;
            double share = n / (n - 1.0);
            slopes[i] = SlopeOf(
                sums.Xx - share * dx * dx,
                sums.Xy - share * dx * dy,
                sums.Yy - share * dy * dy,
                varianceRatio
            );
            intercepts[i] = sums.MeanY - dy / (n - 1) - slopes[i] * (sums.MeanX - dx / (n - 1));
        }

        Estimate Of(double value, double[] leftOut, string what) =>
            TInterval.Of(
                value,
                // The spread of pseudo-values over √n is that of the leave-one-out values times (n − 1)/√n.
                SquaredDeviations.Of(leftOut).RootOver(n / (n - 1.0)),
                n - 2,
                confidence,
                n,
                what + ", Deming, jackknife t"
            );
        return new ErrorsInVariablesFit(
            Of(slope, slopes, "slope"),
            Of(intercept, intercepts, "intercept"),
            ChiSquared: null
        );
    }

    /// <summary>York's line: each point with known standard uncertainties in x and y, and their correlation (york-2004), with
    /// normal intervals. O(n) a round, some ten rounds.</summary>
    /// <param name="x">The abscissas: two or more, not all equal.</param>
    /// <param name="y">The ordinates, one for each x.</param>
    /// <param name="uncertaintiesOfX">The standard uncertainty of each x, above 0.</param>
    /// <param name="uncertaintiesOfY">The standard uncertainty of each y, above 0.</param>
    /// <param name="correlations">The correlation of each point's two errors, above −1 and below 1; empty where there is none.</param>
    /// <param name="confidence">The confidence of both intervals, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There are fewer than two points, the counts differ, or all x are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value, uncertainty, correlation or the confidence is out of range.</exception>
    /// <exception cref="InvalidOperationException">The iteration does not settle within 500 rounds.</exception>
    public static ErrorsInVariablesFit York(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> uncertaintiesOfX,
        ReadOnlySpan<double> uncertaintiesOfY,
        ReadOnlySpan<double> correlations = default,
        double confidence = 0.95
    )
    {
        int n = x.Length;
        LineFit start = StraightLine.FitWeighted(x, y, uncertaintiesOfY);
        Check.SameCount(uncertaintiesOfX.Length, n, "Count of uncertainties of x", "x", nameof(uncertaintiesOfX));
        Check.Positive(uncertaintiesOfX);
        Check.Confidence(confidence);
        for (int i = 0; i < correlations.Length; i++)
        {
            if (!(Math.Abs(correlations[i]) < 1))
            {
                string what = FormattableString.Invariant($"Correlation at index {i}");
                throw Check.OutOfRange(nameof(correlations), what, "above -1 and below 1", correlations[i]);
            }
        }

        if (!correlations.IsEmpty)
        {
            Check.SameCount(correlations.Length, n, "Count of correlations", "x", nameof(correlations));
        }

        double slope = start.Slope;
        for (int round = 0; round < MostIterations; round++)
        {
            YorkStep step = YorkStep.Of(x, y, uncertaintiesOfX, uncertaintiesOfY, correlations, slope);
            double change = Math.Abs(step.Slope - slope);
            slope = Check.Representable(step.Slope, "Slope of the line", nameof(y));
            if (change <= 1e-15 * Math.Abs(slope))
            {
                break;
            }

            if (round == MostIterations - 1)
            {
                throw new InvalidOperationException(
                    "Slope of the line must settle within 500 rounds; did not, so the points hardly make a line."
                );
            }
        }

        YorkStep last = YorkStep.Of(x, y, uncertaintiesOfX, uncertaintiesOfY, correlations, slope);
        double factor = LineFit.FactorOf(confidence, double.PositiveInfinity);
        Estimate Of(double value, double error, string what) =>
            new(value, n, what + ", York")
            {
                StandardError = error,
                DegreesOfFreedom = double.PositiveInfinity,
                Interval = new Interval(value - factor * error, value + factor * error, confidence),
            };
        return new ErrorsInVariablesFit(
            Of(slope, last.SlopeError, "slope"),
            Of(last.Intercept, last.InterceptError, "intercept"),
            last.ChiSquared
        );
    }

    private static double SlopeOf(double xx, double xy, double yy, double ratio)
    {
        double difference = yy - ratio * xx;
        double root = double.Hypot(difference, 2 * Math.Sqrt(ratio) * xy);
        // Of the two forms the one that adds numbers of one sign.
        double slope =
            difference <= 0
                ? xy == 0
                    ? 0
                    : 2 * ratio * xy / (root - difference)
                : (difference + root) / (2 * xy);
        return double.IsFinite(slope)
            ? slope
            : throw new ArgumentException("Points must not make a vertical line; they do.", "x");
    }

    /// <summary>Means, and sums of squares and products about them.</summary>
    private readonly ref struct Sums
    {
        internal readonly double MeanX;
        internal readonly double MeanY;
        internal readonly double Xx;
        internal readonly double Xy;
        internal readonly double Yy;

        internal Sums(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
        {
            MeanX = SquaredDeviations.MeanAlone(x);
            MeanY = SquaredDeviations.MeanAlone(y);
            var xx = new CompensatedSum();
            var xy = new CompensatedSum();
            var yy = new CompensatedSum();
            for (int i = 0; i < x.Length; i++)
            {
                xx.Add((x[i] - MeanX) * (x[i] - MeanX));
                xy.Add((x[i] - MeanX) * (y[i] - MeanY));
                yy.Add((y[i] - MeanY) * (y[i] - MeanY));
            }

            (Xx, Xy, Yy) = (xx.Value, xy.Value, yy.Value);
        }
    }
}
