namespace McuBench.Stats.Regression;

/// <summary>Least-squares polynomials.</summary>
public static class Polynomial
{
    /// <summary>The highest degree that makes sense in double precision.</summary>
    private const int HighestDegree = 20;

    /// <summary>Fits y = b₀ + b₁·x + … + b_d·x^d by QR on Chebyshev polynomials of x brought to [−1, 1], which holds about as
    /// many digits as the coefficients themselves allow. O(n·d²).</summary>
    /// <param name="x">The abscissas: at least degree + 1 different ones.</param>
    /// <param name="y">The ordinates, one for each x.</param>
    /// <param name="degree">The degree, from 1 to 20.</param>
    /// <exception cref="ArgumentException">The counts differ, there are fewer points than coefficients, or too few different x.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, or the degree is out of range.</exception>
    public static PolynomialFit Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y, int degree)
    {
        Check.Finite(x);
        Check.Finite(y);
        Check.SameCount(y.Length, x.Length, "Count of y", "x", nameof(y));
        if (degree is < 1 or > HighestDegree)
        {
            throw Check.OutOfRange(nameof(degree), "Degree", "from 1 to 20", degree);
        }

        Check.AtLeast(x.Length, degree + 1, nameof(x));
        int different = new HashSet<double>(x.ToArray()).Count;
        if (different <= degree)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Count of different x must be at least {degree + 1} for degree {degree}; was {different}."
                ),
                nameof(x)
            );
        }

        double least = x[0];
        double greatest = x[0];
        foreach (double value in x)
        {
            least = Math.Min(least, value);
            greatest = Math.Max(greatest, value);
        }

        var scaling = new PolynomialFit.Scaling(
            least / 2 + greatest / 2,
            Check.Representable(greatest / 2 - least / 2, "Half the range of x", nameof(x))
        );
        double[][] terms = new double[degree][];
        double[] row = new double[degree];
        for (int j = 0; j < degree; j++)
        {
            terms[j] = new double[x.Length];
        }

        for (int i = 0; i < x.Length; i++)
        {
            scaling.Terms(x[i], row);
            for (int j = 0; j < degree; j++)
            {
                terms[j][i] = row[j];
            }
        }

        return new PolynomialFit(LinearModel.Fit(terms, y), scaling, degree);
    }
}
