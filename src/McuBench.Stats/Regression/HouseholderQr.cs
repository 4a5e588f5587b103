namespace McuBench.Stats.Regression;

/// <summary>
/// The factors of a matrix with at least as many rows as columns, by Householder reflections (golub-van-loan-2013,
/// section 5.2), and the least-squares problems that they solve.
/// </summary>
internal sealed class HouseholderQr
{
    private readonly double[][] _columns;
    private readonly double[] _diagonal;
    private readonly double[] _norms;

    private HouseholderQr(double[][] columns, double[] diagonal, double[] norms)
    {
        _columns = columns;
        _diagonal = diagonal;
        _norms = norms;
    }

    /// <summary>Factors the columns, which are overwritten. O(n·p²).</summary>
    /// <param name="columns">The columns, all of one length.</param>
    /// <param name="dependent">The first column that is, to within rounding, a combination of those before it; −1 where
    /// there is none.</param>
    internal static HouseholderQr Of(double[][] columns, out int dependent)
    {
        int p = columns.Length;
        double[] diagonal = new double[p];
        double[] norms = new double[p];
        dependent = -1;
        for (int j = 0; j < p; j++)
        {
            // Columns of length 1, so that units don't decide what counts as dependent.
            norms[j] = Norm(columns[j]);
            double scale = norms[j] > 0 ? 1 / norms[j] : 0;
            for (int i = 0; i < columns[j].Length; i++)
            {
                columns[j][i] *= scale;
            }
        }

        for (int j = 0; j < p; j++)
        {
            Span<double> pivot = columns[j].AsSpan(j);
            double norm = Norm(pivot);
            if (!(norm > 1e-14) && dependent < 0)
            {
                dependent = j;
                break;
            }

            diagonal[j] = pivot[0] > 0 ? -norm : norm;
            pivot[0] -= diagonal[j];
            for (int k = j + 1; k < p; k++)
            {
                Reflect(pivot, diagonal[j], columns[k].AsSpan(j));
            }
        }

        return new HouseholderQr(columns, diagonal, norms);
    }

    /// <summary>The coefficients that bring the columns closest to the right side, which is overwritten.</summary>
    internal double[] Solve(Span<double> right)
    {
        int p = _columns.Length;
        for (int j = 0; j < p; j++)
        {
            Reflect(_columns[j].AsSpan(j), _diagonal[j], right[j..]);
        }

        double[] solution = right[..p].ToArray();
        for (int j = p - 1; j >= 0; j--)
        {
            solution[j] /= _diagonal[j];
            for (int i = 0; i < j; i++)
            {
                solution[i] -= _columns[j][i] * solution[j];
            }
        }

        for (int j = 0; j < p; j++)
        {
            solution[j] /= _norms[j];
        }

        return solution;
    }

    /// <summary>w with w·w = d·(XᵀX)⁻¹·d for a row d of the regressors: how far it lies out.</summary>
    internal double[] Outlying(ReadOnlySpan<double> row)
    {
        int p = _columns.Length;
        double[] w = new double[p];
        for (int j = 0; j < p; j++)
        {
            double rest = row[j] / _norms[j];
            for (int i = 0; i < j; i++)
            {
                rest -= _columns[j][i] * w[i];
            }

            w[j] = rest / _diagonal[j];
        }

        return w;
    }

    private static void Reflect(ReadOnlySpan<double> reflector, double diagonal, Span<double> target)
    {
        double product = 0;
        for (int i = 0; i < reflector.Length; i++)
        {
            product += reflector[i] * target[i];
        }

        // The reflector's first element holds v₀ = x₀ − d, and vᵀv = −2·d·v₀.
        double factor = product / (diagonal * reflector[0]);
        for (int i = 0; i < reflector.Length; i++)
        {
            target[i] += factor * reflector[i];
        }
    }

    private static double Norm(ReadOnlySpan<double> values)
    {
        double largest = 0;
        foreach (double value in values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        if (largest == 0)
        {
            return 0;
        }

        double sum = 0;
        foreach (double value in values)
        {
            sum += value / largest * (value / largest);
        }

        return largest * Math.Sqrt(sum);
    }
}
