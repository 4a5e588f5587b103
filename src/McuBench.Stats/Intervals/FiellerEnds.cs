namespace McuBench.Stats.Intervals;

/// <summary>The ends of Fieller's interval of a ratio of two estimates that may be correlated (fieller-1954).</summary>
public static class FiellerEnds
{
    /// <summary>The ends: the ratios r at which numerator − r·denominator is as many of its own standard errors from 0 as the
    /// coverage factor says.</summary>
    /// <param name="estimates">Numerator and denominator, finite.</param>
    /// <param name="standardErrors">Their standard errors, finite and not negative.</param>
    /// <param name="covariance">Their covariance, finite.</param>
    /// <param name="coverageFactor">Student's t or the like, finite and not negative.</param>
    /// <returns>The ends; null where the denominator isn't resolved from 0, so that the ratios that agree with the data have
    /// no bounds.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static (double Lower, double Upper)? Of(
        (double Numerator, double Denominator) estimates,
        (double Numerator, double Denominator) standardErrors,
        double covariance,
        double coverageFactor
    )
    {
        Check.Finite(estimates.Numerator, "Numerator", nameof(estimates));
        Check.Finite(estimates.Denominator, "Denominator", nameof(estimates));
        NotNegative(standardErrors.Numerator, "Standard error of the numerator", nameof(standardErrors));
        NotNegative(standardErrors.Denominator, "Standard error of the denominator", nameof(standardErrors));
        Check.Finite(covariance, "Covariance");
        NotNegative(coverageFactor, "Coverage factor", nameof(coverageFactor));

        // (n − r d)² = t² (u² − 2 r c + r² v²), relative to the denominator so that no square leaves the range.
        double scale = Math.Abs(estimates.Denominator);
        if (!(scale > coverageFactor * standardErrors.Denominator))
        {
            return null;
        }

        double ratio = estimates.Numerator / estimates.Denominator;
        double u = standardErrors.Numerator / scale;
        double v = standardErrors.Denominator / scale;
        double c = covariance / scale / scale;
        double square = coverageFactor * coverageFactor;
        double rest = 1 - (square * v * v);
        double centre = ratio - (square * c);
        double root = Math.Sqrt(Math.Max(0, (centre * centre) - (rest * ((ratio * ratio) - (square * u * u)))));
        return ((centre - root) / rest, (centre + root) / rest);
    }

    private static void NotNegative(double value, string what, string name)
    {
        if (!(value >= 0 && double.IsFinite(value)))
        {
            throw Check.OutOfRange(name, what, "a finite number, 0 or more", value);
        }
    }
}
