namespace McuBench.Stats.Hypotheses;

/// <summary>Symmetric systems of a few equations, by Cholesky's method.</summary>
internal static class SmallSystem
{
    /// <summary>Solves the part of a system that belongs to some indices, each diagonal element raised by a share of its
    /// size; null where it is not positive definite.</summary>
    internal static double[]? Solve(double[,] matrix, double[] right, int[] indices, double damping)
    {
        int n = indices.Length;
        double[,] root = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k <= i; k++)
            {
                double sum = matrix[indices[i], indices[k]];
                sum += i == k ? damping * Math.Abs(sum) : 0;
                for (int m = 0; m < k; m++)
                {
                    sum -= root[i, m] * root[k, m];
                }

                if (i != k)
                {
                    root[i, k] = sum / root[k, k];
                }
                else if (sum > 0)
                {
                    root[i, i] = Math.Sqrt(sum);
                }
                else
                {
                    return null;
                }
            }
        }

        double[] solution = [.. indices.Select(index => right[index])];
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < i; k++)
            {
                solution[i] -= root[i, k] * solution[k];
            }

            solution[i] /= root[i, i];
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++)
            {
                solution[i] -= root[k, i] * solution[k];
            }

            solution[i] /= root[i, i];
        }

        return solution;
    }
}
