namespace McuBench.Stats.Uncertainty;

/// <summary>The limit of a central difference quotient for ever smaller steps, by extrapolation (ridders-1982).</summary>
internal static class RiddersLimit
{
    private const double Shrinkage = 1.4;
    private const int Rows = 10;

    // Steps spent in search of a place where the model is finite, down to 1e-9 of the first.
    private const int MaximumSteps = 60;

    /// <summary>The limit, or null where the quotient is not finite at any step.</summary>
    /// <param name="quotient">The quotient for a step of so many times the natural one; its error has even powers of
    /// the step only.</param>
    internal static DerivativeEstimate? Of(Func<double, double> quotient)
    {
        Span<double> row = stackalloc double[Rows];
        Span<double> above = stackalloc double[Rows];
        DerivativeEstimate? best = null;
        int known = 0;
        double step = 1;
        for (int tried = 0; tried < MaximumSteps && known < Rows; tried++)
        {
            double first = quotient(step);
            step /= Shrinkage;
            if (!double.IsFinite(first))
            {
                // The model ends within the step: what was seen from outside is of no use.
                (known, best) = (0, null);
                continue;
            }

            row[0] = first;
            best ??= new DerivativeEstimate(first, double.PositiveInfinity);
            double factor = Shrinkage * Shrinkage;
            for (int j = 1; j <= known; j++)
            {
                row[j] = ((row[j - 1] * factor) - above[j - 1]) / (factor - 1);
                factor *= Shrinkage * Shrinkage;
                double error = Math.Max(Math.Abs(row[j] - row[j - 1]), Math.Abs(row[j] - above[j - 1]));
                if (error <= best.Value.Error)
                {
                    best = new DerivativeEstimate(row[j], error);
                }
            }

            // Once higher orders disagree more than the best pair did, rounding has taken over.
            if (known > 0 && Math.Abs(row[known] - above[known - 1]) >= 2 * best.Value.Error && best.Value.Error > 0)
            {
                break;
            }

            row.CopyTo(above);
            known++;
        }

        return best;
    }
}
