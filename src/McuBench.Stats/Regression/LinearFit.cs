using System.Collections.Immutable;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Regression;

/// <summary>A least-squares fit that is linear in its coefficients. Made by <see cref="LinearModel"/>.</summary>
/// <remarks>
/// Immutable. Two fits are equal only when they are the same object. With as many points as coefficients nothing is left to
/// judge the scatter by: standard errors and intervals are then null. On points that the model meets to within rounding
/// the standard errors are 0 and the intervals null, since none has a width of 0.
/// </remarks>
public sealed class LinearFit
{
    private readonly HouseholderQr _qr;
    private readonly double[] _means;
    private readonly double[] _slopes;
    private readonly double _meanY;

    internal LinearFit(
        HouseholderQr qr,
        bool hasIntercept,
        double[] means,
        double meanY,
        double[] slopes,
        int count,
        double sumOfSquaredResiduals,
        double sumOfSquares
    )
    {
        (_qr, _means, _meanY, _slopes) = (qr, means, meanY, slopes);
        HasIntercept = hasIntercept;
        Count = count;
        SumOfSquaredResiduals = Check.Representable(sumOfSquaredResiduals, "Sum of squared residuals", "y");
        Check.Representable(sumOfSquares, "Sum of squares", "y");
        double start = meanY;
        for (int j = 0; j < slopes.Length; j++)
        {
            start -= slopes[j] * means[j];
        }

        Coefficients = hasIntercept ? [start, .. slopes] : [.. slopes];
        foreach (double coefficient in Coefficients)
        {
            Check.Representable(coefficient, "Coefficient of the fit", "y");
        }

        RSquared = sumOfSquares > 0 ? 1 - SumOfSquaredResiduals / sumOfSquares : null;
        int df = count - Coefficients.Length;
        if (df > 0)
        {
            DegreesOfFreedom = df;
            ResidualStandardDeviation = Math.Sqrt(SumOfSquaredResiduals / df);
            if (SumOfSquaredResiduals > 0)
            {
                FStatistic = (sumOfSquares - SumOfSquaredResiduals) / slopes.Length / (SumOfSquaredResiduals / df);
            }
        }
    }

    /// <summary>Whether the first coefficient is an intercept.</summary>
    public bool HasIntercept { get; }

    /// <summary>The number of points.</summary>
    public int Count { get; }

    /// <summary>The intercept, where there is one, then a coefficient for each regressor.</summary>
    public ImmutableArray<double> Coefficients { get; }

    /// <summary>Points less coefficients; null where that is 0.</summary>
    public int? DegreesOfFreedom { get; }

    /// <summary>The sum of the squared residuals, in the square of the unit of y.</summary>
    public double SumOfSquaredResiduals { get; }

    /// <summary>The residual standard deviation, in the unit of y; null without degrees of freedom.</summary>
    public double? ResidualStandardDeviation { get; }

    /// <summary>The share of the variation of y that the fit takes up: about the mean with an intercept, about 0 without;
    /// null where y does not vary.</summary>
    public double? RSquared { get; }

    /// <summary>F: the mean square that the regressors take up over the residual one; null where that is 0 or can't be
    /// had.</summary>
    public double? FStatistic { get; }

    /// <summary>The standard error of a coefficient; null without degrees of freedom.</summary>
    /// <param name="index">The coefficient's index in <see cref="Coefficients"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such coefficient.</exception>
    public double? StandardErrorOf(int index) => CovarianceOf(index, index) is { } square ? Math.Sqrt(square) : null;

    /// <summary>The covariance of two coefficients; null without degrees of freedom.</summary>
    /// <param name="first">The first coefficient's index in <see cref="Coefficients"/>.</param>
    /// <param name="second">The second one's.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such coefficient.</exception>
    public double? CovarianceOf(int first, int second)
    {
        double a = ShareOfIntercept(first, nameof(first));
        double b = ShareOfIntercept(second, nameof(second));
        if (ResidualStandardDeviation is not { } s)
        {
            return null;
        }

        // The intercept is the height of the surface at 0; each other coefficient a direction from there.
        double product = a * b / Count;
        double[] one = _qr.Outlying(Direction(first));
        double[] other = _qr.Outlying(Direction(second));
        for (int j = 0; j < one.Length; j++)
        {
            product += one[j] * other[j];
        }

        return s * s * product;
    }

    /// <summary>The t interval of a coefficient; null where it can't be had.</summary>
    /// <param name="index">The coefficient's index in <see cref="Coefficients"/>.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such coefficient, or the confidence lies outside (0, 1).</exception>
    public Interval? IntervalOf(int index, double confidence = 0.95)
    {
        Check.Confidence(confidence);
        double? error = StandardErrorOf(index);
        return Around(Coefficients[index], error, confidence);
    }

    /// <summary>The surface at a row of regressors, in the unit of y.</summary>
    /// <param name="row">One value for each regressor, without a 1 for the intercept.</param>
    /// <exception cref="ArgumentException">The row has another length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite.</exception>
    public double ValueAt(ReadOnlySpan<double> row)
    {
        CheckRow(row);
        var sum = new CompensatedSum();
        sum.Add(_meanY);
        for (int j = 0; j < _slopes.Length; j++)
        {
            sum.Add(_slopes[j] * (row[j] - _means[j]));
        }

        return Check.Representable(sum.Value, "Value of the fit", nameof(row));
    }

    /// <summary>The surface at a row of regressors with its confidence interval: where the mean of many further y would lie.</summary>
    /// <param name="row">One value for each regressor, without a 1 for the intercept.</param>
    /// <param name="confidence">The confidence, above 0 and below 1, for this one row.</param>
    /// <exception cref="ArgumentException">The row has another length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the confidence lies outside (0, 1).</exception>
    public Estimate MeanAt(ReadOnlySpan<double> row, double confidence = 0.95) =>
        At(ValueAt(row), ErrorAt(row, 0), confidence, "value of a linear fit");

    /// <summary>The surface at a row of regressors with its prediction interval: where one further y would lie.</summary>
    /// <param name="row">One value for each regressor, without a 1 for the intercept.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">The row has another length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the confidence lies outside (0, 1).</exception>
    public Estimate PredictionAt(ReadOnlySpan<double> row, double confidence = 0.95) =>
        At(ValueAt(row), ErrorAt(row, 1), confidence, "prediction from a linear fit");

    /// <summary>The standard error of a sum of coefficients with weights, one for each of them.</summary>
    internal double? ErrorOfSum(ReadOnlySpan<double> weights)
    {
        double ofIntercept = HasIntercept ? weights[0] : 0;
        ReadOnlySpan<double> ofSlopes = HasIntercept ? weights[1..] : weights;
        double[] direction = new double[_means.Length];
        for (int j = 0; j < direction.Length; j++)
        {
            direction[j] = ofSlopes[j] - ofIntercept * _means[j];
        }

        double square = ofIntercept * ofIntercept / Count;
        foreach (double part in _qr.Outlying(direction))
        {
            square += part * part;
        }

        return ResidualStandardDeviation * Math.Sqrt(square);
    }

    private void CheckRow(ReadOnlySpan<double> row)
    {
        Check.Finite(row);
        Check.SameCount(row.Length, _slopes.Length, "Count of values in a row", "regressor", nameof(row));
    }

    private double? ErrorAt(ReadOnlySpan<double> row, double further)
    {
        if (ResidualStandardDeviation is not { } s)
        {
            return null;
        }

        double[] away = new double[_means.Length];
        for (int j = 0; j < away.Length; j++)
        {
            away[j] = row[j] - _means[j];
        }

        double square = further + (HasIntercept ? 1.0 / Count : 0);
        foreach (double part in _qr.Outlying(away))
        {
            square += part * part;
        }

        return s * Math.Sqrt(square);
    }

    /// <summary>1 for the intercept and 0 for other coefficients, once the index is known to be one of them.</summary>
    private double ShareOfIntercept(int index, string name)
    {
        if (index < 0 || index >= Coefficients.Length)
        {
            string rule = FormattableString.Invariant($"from 0 to {Coefficients.Length - 1}");
            throw Check.OutOfRange(name, "Index of a coefficient", rule, index);
        }

        return HasIntercept && index == 0 ? 1 : 0;
    }

    private double[] Direction(int index)
    {
        double[] direction = new double[_means.Length];
        if (HasIntercept && index == 0)
        {
            for (int j = 0; j < direction.Length; j++)
            {
                direction[j] = -_means[j];
            }
        }
        else
        {
            direction[HasIntercept ? index - 1 : index] = 1;
        }

        return direction;
    }

    private Estimate At(double value, double? error, double confidence, string method)
    {
        Check.Confidence(confidence);
        Interval? interval = Around(value, error, confidence);
        return new Estimate(value, Count, method)
        {
            StandardError = error > 0 ? error : null,
            DegreesOfFreedom = error > 0 ? DegreesOfFreedom : null,
            Interval = interval,
            Notes = interval is null
                ?
                [
                    DegreesOfFreedom is null
                        ? "As many coefficients as points show no scatter: no interval."
                        : "The points lie on the fit: no interval.",
                ]
                : [],
        };
    }

    private Interval? Around(double value, double? error, double confidence)
    {
        if (error is not > 0 || DegreesOfFreedom is not { } df)
        {
            return null;
        }

        double reach = StudentT.Of(df).UpperQuantile((1 - confidence) / 2) * error.Value;
        return new Interval(value - reach, value + reach, confidence);
    }
}
