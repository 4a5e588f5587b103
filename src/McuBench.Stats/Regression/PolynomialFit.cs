using System.Collections.Immutable;

namespace McuBench.Stats.Regression;

/// <summary>A fitted polynomial. Made by <see cref="Polynomial"/>.</summary>
/// <remarks>Immutable. Two fits are equal only when they are the same object. Values and intervals come from the scaled
/// polynomials of the fit, not from the coefficients, whose powers of x cancel.</remarks>
public sealed class PolynomialFit
{
    private readonly LinearFit _scaled;
    private readonly Scaling _scaling;

    // Row k holds what each scaled coefficient adds to that of x^k.
    private readonly double[][] _toPowers;

    internal PolynomialFit(LinearFit scaled, Scaling scaling, int degree)
    {
        (_scaled, _scaling) = (scaled, scaling);
        _toPowers = scaling.ToPowers(degree);
        double[] coefficients = new double[degree + 1];
        for (int k = 0; k <= degree; k++)
        {
            var sum = new CompensatedSum();
            for (int j = 0; j <= degree; j++)
            {
                sum.Add(_toPowers[k][j] * scaled.Coefficients[j]);
            }

            coefficients[k] = Check.Representable(sum.Value, "Coefficient of the polynomial", "y");
        }

        Coefficients = [.. coefficients];
    }

    /// <summary>The coefficients of 1, x, x² and so on.</summary>
    public ImmutableArray<double> Coefficients { get; }

    /// <summary>The degree.</summary>
    public int Degree => Coefficients.Length - 1;

    /// <summary>The number of points.</summary>
    public int Count => _scaled.Count;

    /// <summary>Points less coefficients; null where that is 0.</summary>
    public int? DegreesOfFreedom => _scaled.DegreesOfFreedom;

    /// <summary>The sum of the squared residuals, in the square of the unit of y.</summary>
    public double SumOfSquaredResiduals => _scaled.SumOfSquaredResiduals;

    /// <summary>The residual standard deviation, in the unit of y; null without degrees of freedom.</summary>
    public double? ResidualStandardDeviation => _scaled.ResidualStandardDeviation;

    /// <summary>The share of the variation of y that the polynomial takes up; null where all y are equal.</summary>
    public double? RSquared => _scaled.RSquared;

    /// <summary>F of the polynomial against a constant; null where it can't be had.</summary>
    public double? FStatistic => _scaled.FStatistic;

    /// <summary>The standard error of a coefficient; null without degrees of freedom.</summary>
    /// <param name="power">Which coefficient, from 0 to the degree.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such coefficient.</exception>
    public double? StandardErrorOf(int power)
    {
        if (power < 0 || power > Degree)
        {
            string rule = FormattableString.Invariant($"from 0 to {Degree}");
            throw Check.OutOfRange(nameof(power), "Power", rule, power);
        }

        return _scaled.ErrorOfSum(_toPowers[power]);
    }

    /// <summary>The polynomial at x, in the unit of y.</summary>
    /// <param name="x">The abscissa, finite; outside the data this is an extrapolation, which polynomials do badly.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite.</exception>
    public double ValueAt(double x) => _scaled.ValueAt(RowOf(x));

    /// <summary>The polynomial at x with its confidence interval.</summary>
    /// <param name="x">The abscissa, finite.</param>
    /// <param name="confidence">The confidence, above 0 and below 1, for this one x.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite, or the confidence lies outside
    /// (0, 1).</exception>
    public Estimate MeanAt(double x, double confidence = 0.95) => _scaled.MeanAt(RowOf(x), confidence);

    /// <summary>The polynomial at x with its prediction interval: where one further y would lie.</summary>
    /// <param name="x">The abscissa, finite.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite, or the confidence lies outside
    /// (0, 1).</exception>
    public Estimate PredictionAt(double x, double confidence = 0.95) => _scaled.PredictionAt(RowOf(x), confidence);

    private double[] RowOf(double x)
    {
        Check.Finite(x, "Abscissa");
        double[] row = new double[Degree];
        _scaling.Terms(x, row);
        return row;
    }

    /// <summary>The map of x to [−1, 1], and the Chebyshev polynomials there.</summary>
    internal sealed record Scaling(double Centre, double HalfRange)
    {
        /// <summary>T₁ to T_d at x.</summary>
        internal void Terms(double x, Span<double> terms)
        {
            double u = (x - Centre) / HalfRange;
            double before = 1;
            double now = u;
            for (int j = 0; j < terms.Length; j++)
            {
                terms[j] = now;
                (before, now) = (now, 2 * u * now - before);
            }
        }

        /// <summary>The coefficients of T₀ to T_d in powers of x, a row a power.</summary>
        internal double[][] ToPowers(int degree)
        {
            double[][] powers = new double[degree + 1][];
            for (int k = 0; k <= degree; k++)
            {
                powers[k] = new double[degree + 1];
            }

            // T(j + 1) = 2 u T(j) − T(j − 1) with u = x/h − c/h, coefficient by coefficient.
            powers[0][0] = 1;
            powers[0][1] = -Centre / HalfRange;
            powers[1][1] = 1 / HalfRange;
            for (int j = 1; j < degree; j++)
            {
                for (int k = 0; k <= j + 1; k++)
                {
                    double raised = k > 0 ? powers[k - 1][j] / HalfRange : 0;
                    powers[k][j + 1] = 2 * (raised - powers[k][j] * (Centre / HalfRange)) - powers[k][j - 1];
                }
            }

            return powers;
        }
    }
}
