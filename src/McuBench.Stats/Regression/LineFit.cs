using System.Globalization;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Regression;

/// <summary>
/// A fitted straight line, y = intercept + slope · x, with what is known of its uncertainty. Made by
/// <see cref="StraightLine"/>.
/// </summary>
/// <remarks>
/// Immutable; equal when all parts are equal. With two points and no known uncertainties nothing is left to judge the
/// scatter by: standard errors, covariance and intervals are then null. On points that lie on a line to within the
/// rounding of y the standard errors are 0 and the intervals null, since none has a width of 0. Intervals are exact for normal
/// scatter; with skewed or contaminated scatter those of slope and intercept hold less often than they say where points are few,
/// and predictions at any count.
/// </remarks>
public sealed record LineFit
{
    private readonly Centre _centre;

    // The variance by which the inverse sums are multiplied: 1 for known uncertainties, null without scatter.
    private readonly double? _variance;

    internal LineFit(
        Centre centre,
        double slope,
        int count,
        double sumOfSquaredResiduals,
        double sumOfSquaresOfY,
        WeightMeaning meaning
    )
    {
        _centre = centre;
        Slope = Check.Representable(slope, "Slope of the line", "y");
        Intercept = Check.Representable(centre.Y - slope * centre.X, "Intercept of the line", "y");
        Count = count;
        SumOfSquaredResiduals = Check.Representable(sumOfSquaredResiduals, "Sum of squared residuals", "y");
        if (count > 2)
        {
            ResidualStandardDeviation = Math.Sqrt(SumOfSquaredResiduals / (count - 2));
        }

        if (sumOfSquaresOfY > 0)
        {
            RSquared = 1 - SumOfSquaredResiduals / Check.Representable(sumOfSquaresOfY, "Sum of squares", "y");
        }

        Meaning = meaning;
        if (meaning == WeightMeaning.Absolute)
        {
            _variance = 1;
            DegreesOfFreedom = double.PositiveInfinity;
        }
        else if (count > 2)
        {
            _variance = SumOfSquaredResiduals / (count - 2);
            DegreesOfFreedom = count - 2;
        }
    }

    /// <summary>The value of the line at x = 0, in the unit of y.</summary>
    public double Intercept { get; }

    /// <summary>The rise of the line for each unit of x.</summary>
    public double Slope { get; }

    /// <summary>The number of points, 2 or more.</summary>
    public int Count { get; }

    /// <summary>What the weights stood for; <see cref="WeightMeaning.Relative"/> for a fit without any.</summary>
    public WeightMeaning Meaning { get; }

    /// <summary>The degrees of freedom: n − 2, positive infinity for known uncertainties, null for two points without
    /// them.</summary>
    public double? DegreesOfFreedom { get; }

    /// <summary>The standard error of the intercept, in the unit of y.</summary>
    public double? InterceptStandardError => ErrorAt(0);

    /// <summary>The standard error of the slope.</summary>
    public double? SlopeStandardError => _variance is { } s2 ? Math.Sqrt(s2 / _centre.SumOfSquares) : null;

    /// <summary>The covariance of intercept and slope.</summary>
    public double? Covariance => _variance is { } s2 ? -_centre.X * s2 / _centre.SumOfSquares : null;

    /// <summary>The sum of the (weighted) squared residuals; with known uncertainties this is chi-squared at n − 2
    /// degrees of freedom, so a value far above that says the line does not fit.</summary>
    public double SumOfSquaredResiduals { get; }

    /// <summary>The residual standard deviation with divisor n − 2, in the unit of y (for a weighted fit a pure number:
    /// by how much the scatter exceeds the given uncertainties, the Birge ratio); null for two points.</summary>
    public double? ResidualStandardDeviation { get; }

    /// <summary>The share of the (weighted) variation of y that the line takes up, from 0 to 1; null where all y are
    /// equal.</summary>
    public double? RSquared { get; }

    /// <summary>The value of the line at x, in the unit of y.</summary>
    /// <param name="x">The abscissa, finite; outside the data this is an extrapolation.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite.</exception>
    public double ValueAt(double x)
    {
        Check.Finite(x, "Abscissa");
        return Check.Representable(_centre.Y + Slope * (x - _centre.X), "Value of the line", nameof(x));
    }

    /// <summary>The t interval of the slope; null where it can't be had.</summary>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1).</exception>
    public Interval? IntervalOfSlope(double confidence = 0.95) => Around(Slope, SlopeStandardError, confidence);

    /// <summary>The t interval of the intercept; null where it can't be had.</summary>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1).</exception>
    public Interval? IntervalOfIntercept(double confidence = 0.95) =>
        Around(Intercept, InterceptStandardError, confidence);

    /// <summary>The line at x with its confidence interval: where the mean of many further y at this x would lie.</summary>
    /// <param name="x">The abscissa, finite.</param>
    /// <param name="confidence">The confidence, above 0 and below 1, for this one x (not for the whole line at once).</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite, or the confidence lies outside
    /// (0, 1).</exception>
    public Estimate MeanAt(double x, double confidence = 0.95) =>
        At(x, ErrorAt(x), confidence, "value of a straight line");

    /// <summary>The line at x with its part of the band that holds the whole line at once with the confidence
    /// (working-hotelling-1929): wider than <see cref="MeanAt"/>, and good for any number of x looked at.</summary>
    /// <param name="x">The abscissa, finite.</param>
    /// <param name="confidence">The confidence for the whole line, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite, or the confidence lies outside
    /// (0, 1).</exception>
    public Estimate BandAt(double x, double confidence = 0.95)
    {
        Check.Confidence(confidence);
        return At(x, ErrorAt(x), confidence, "value of a straight line, whole band", BandFactor(1 - confidence));
    }

    /// <summary>The line at x with its prediction interval: where one further y at this x would lie.</summary>
    /// <param name="x">The abscissa, finite.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite, or the confidence lies outside
    /// (0, 1).</exception>
    /// <exception cref="InvalidOperationException">The fit is weighted: the uncertainty of the further y is needed.</exception>
    public Estimate PredictionAt(double x, double confidence = 0.95)
    {
        if (_centre.Weighted)
        {
            throw new InvalidOperationException(
                "Prediction from a weighted fit must be given the uncertainty of the further y: use WeightedPredictionAt."
            );
        }

        return PredictionOf(x, 1, confidence);
    }

    /// <summary>The line at x with its prediction interval for one further y of a stated uncertainty.</summary>
    /// <param name="x">The abscissa, finite.</param>
    /// <param name="standardUncertainty">The standard uncertainty of the further y, on the scale of those that the fit
    /// was given, above 0.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The fit is not weighted: it has a scatter of its own.</exception>
    public Estimate WeightedPredictionAt(double x, double standardUncertainty, double confidence = 0.95)
    {
        Check.Positive(standardUncertainty, "Standard uncertainty");
        if (!_centre.Weighted)
        {
            throw new InvalidOperationException(
                "Prediction with a standard uncertainty must come from a weighted fit; this one is not: use PredictionAt."
            );
        }

        return PredictionOf(x, standardUncertainty, confidence);
    }

    /// <summary>The line as <c>y = 1.5 + 0.2 x, n = 12</c>, in the invariant culture.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"y = {Intercept:R} + {Slope:R} x, n = {Count}");

    private Estimate PredictionOf(double x, double standardUncertainty, double confidence)
    {
        double? further = _variance is { } s2 ? Math.Sqrt(s2) * standardUncertainty : null;
        double? error = ErrorAt(x) is { } line && further is { } one ? double.Hypot(line, one) : null;
        return At(x, error, confidence, "prediction from a straight line");
    }

    /// <summary>√(2·F) at the upper quantile of F with 2 and the fit's degrees of freedom, which has a closed form.</summary>
    private double BandFactor(double tail)
    {
        double share = -2 * Math.Log(tail) / (DegreesOfFreedom ?? 1);
        // df (e^share − 1), which nears −2 ln(tail) as the degrees of freedom grow.
        double growth = share < 1e-5 ? 1 + share / 2 * (1 + share / 3) : (Math.Exp(share) - 1) / share;
        return Math.Sqrt(-2 * Math.Log(tail) * growth);
    }

    private Estimate At(double x, double? error, double confidence, string method, double? factor = null)
    {
        double value = ValueAt(x);
        Interval? interval = Around(value, error, confidence, factor);
        return new Estimate(value, Count, method)
        {
            StandardError = error > 0 ? error : null,
            DegreesOfFreedom = error > 0 ? DegreesOfFreedom : null,
            Interval = interval,
            Notes = interval is null
                ? [Count == 2 ? "Two points show no scatter: no interval." : "The points lie on the line: no interval."]
                : [],
        };
    }

    /// <summary>The standard error of the line at x (draper-smith-1998, eq. 1.4.6, with weights).</summary>
    private double? ErrorAt(double x)
    {
        if (_variance is not { } s2)
        {
            return null;
        }

        double away = (x - _centre.X) / Math.Sqrt(_centre.SumOfSquares);
        return Math.Sqrt(s2) * double.Hypot(1 / Math.Sqrt(_centre.Weight), away);
    }

    private Interval? Around(double value, double? error, double confidence, double? factor = null)
    {
        Check.Confidence(confidence);
        if (error is not > 0 || DegreesOfFreedom is not { } df)
        {
            return null;
        }

        double reach = (factor ?? FactorOf(confidence, df)) * error.Value;
        return new Interval(value - reach, value + reach, confidence);
    }

    /// <summary>The two-sided t factor, or the normal one for infinite degrees of freedom.</summary>
    internal static double FactorOf(double confidence, double df)
    {
        double tail = (1 - confidence) / 2;
        return double.IsInfinity(df) ? Normal.Standard.UpperQuantile(tail) : StudentT.Of(df).UpperQuantile(tail);
    }

    /// <summary>What inverse prediction needs of the fit.</summary>
    internal Centre Middle => _centre;

    /// <summary>The centroid of the points, their total weight, and the weighted sum of squares of x about it.</summary>
    internal sealed record Centre(double X, double Y, double Weight, double SumOfSquares, bool Weighted);
}
