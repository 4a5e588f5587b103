using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>The joint confidence region of two estimates that are normal about the truth: the ellipse that holds both
/// true values at once with the stated confidence.</summary>
/// <remarks>
/// <para>(p − p̂)ᵀ V⁻¹ (p − p̂) ≤ c, where c depends on how V was come by: <see cref="OfScaled"/> and <see
/// cref="OfEstimated"/>. Two intervals of the same confidence side by side don't hold both truths that often, and their
/// rectangle shows nothing of the correlation.</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record ConfidenceEllipse
{
    // Beyond this the two estimates are one, within what doubles tell apart.
    private const double LargestSquaredCorrelation = 1 - 1e-12;

    private ConfidenceEllipse(
        double x,
        double y,
        (double X, double Y) standardErrors,
        double correlation,
        double degreesOfFreedom,
        double ofQuantile,
        double confidence
    )
    {
        Check.Finite(x, "First estimate");
        Check.Finite(y, "Second estimate");
        Check.Positive(standardErrors.X, "Standard error of the first", nameof(standardErrors));
        Check.Positive(standardErrors.Y, "Standard error of the second", nameof(standardErrors));
        if (!IsTwoDimensional(correlation))
        {
            throw Check.OutOfRange(
                nameof(correlation),
                "Correlation",
                "between -1 and 1, ends excluded, and not within 5E-13 of them",
                correlation
            );
        }

        Check.Confidence(confidence);
        X = x;
        Y = y;
        StandardErrors = standardErrors;
        Correlation = correlation;
        DegreesOfFreedom = degreesOfFreedom;
        Confidence = confidence;

        // With 2 degrees of freedom above, the quantile of F is closed: F = ν/2 ((1 − confidence)^(−2/ν) − 1).
        double twice = -2 * Math.Log(1 - confidence);
        SquaredRadius = double.IsInfinity(degreesOfFreedom)
            ? twice
            : degreesOfFreedom * Elementary.Expm1(twice / ofQuantile);
    }

    /// <summary>The region where the covariance is known up to one factor, which the degrees of freedom estimate, as in a
    /// line with a common variance: c = 2·F of 2 and ν degrees of freedom (draper-smith-1998, 5.4).</summary>
    /// <param name="x">The first estimate, finite.</param>
    /// <param name="y">The second estimate, finite.</param>
    /// <param name="standardErrors">The standard error of each, above 0.</param>
    /// <param name="correlation">Their correlation, between −1 and 1, ends excluded.</param>
    /// <param name="degreesOfFreedom">Those of the factor, above 0; infinite where it is known.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static ConfidenceEllipse OfScaled(
        double x,
        double y,
        (double X, double Y) standardErrors,
        double correlation,
        double degreesOfFreedom,
        double confidence = 0.95
    )
    {
        Check.DegreesOfFreedom(degreesOfFreedom);
        return new(x, y, standardErrors, correlation, degreesOfFreedom, degreesOfFreedom, confidence);
    }

    /// <summary>The region where the whole covariance is estimated: Hotelling's c = 2ν/(ν − 1)·F of 2 and ν − 1 degrees
    /// of freedom (hotelling-1931), for a sum of sources with degrees of freedom of their own at the effective ν of
    /// krishnamoorthy-yu-2004.</summary>
    /// <param name="x">The first estimate, finite.</param>
    /// <param name="y">The second estimate, finite.</param>
    /// <param name="standardErrors">The standard error of each, above 0.</param>
    /// <param name="correlation">Their correlation, between −1 and 1, ends excluded.</param>
    /// <param name="degreesOfFreedom">Those of the covariance, above 1; infinite where it is known.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static ConfidenceEllipse OfEstimated(
        double x,
        double y,
        (double X, double Y) standardErrors,
        double correlation,
        double degreesOfFreedom,
        double confidence = 0.95
    ) =>
        degreesOfFreedom > 1
            ? new(x, y, standardErrors, correlation, degreesOfFreedom, degreesOfFreedom - 1, confidence)
            : throw Check.OutOfRange(
                nameof(degreesOfFreedom),
                "Degrees of freedom of a covariance",
                "above 1",
                degreesOfFreedom
            );

    /// <summary>The first estimate.</summary>
    public double X { get; }

    /// <summary>The second estimate.</summary>
    public double Y { get; }

    /// <summary>The standard error of each.</summary>
    public (double X, double Y) StandardErrors { get; }

    /// <summary>Their correlation.</summary>
    public double Correlation { get; }

    /// <summary>Those behind the standard errors, possibly infinite.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The confidence that both truths lie inside.</summary>
    public double Confidence { get; }

    /// <summary>The squared distance from the centre, in units of the covariance, that is the region's edge.</summary>
    public double SquaredRadius { get; }

    /// <summary>Whether two estimates of a correlation span a region at all, within what doubles tell apart.</summary>
    public static bool IsTwoDimensional(double correlation) => correlation * correlation < LargestSquaredCorrelation;

    /// <summary>Whether a pair of values lies in the region, its edge included.</summary>
    public bool Contains(double x, double y) => SquaredDistance(x, y) <= SquaredRadius;

    /// <summary>The squared distance of a pair from the centre in units of the covariance (Mahalanobis).</summary>
    public double SquaredDistance(double x, double y)
    {
        double first = (x - X) / StandardErrors.X;
        double second = (((y - Y) / StandardErrors.Y) - (Correlation * first)) / Rest;
        return (first * first) + (second * second);
    }

    /// <summary>Points on the region's edge, in order around it, for drawing. O(n).</summary>
    /// <param name="count">How many, 3 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is below 3.</exception>
    public IReadOnlyList<(double X, double Y)> Edge(int count)
    {
        if (count < 3)
        {
            throw Check.OutOfRange(nameof(count), "Count of points", "at least 3", count);
        }

        double radius = Math.Sqrt(SquaredRadius);
        var points = new (double, double)[count];
        for (int i = 0; i < count; i++)
        {
            var (sine, cosine) = Math.SinCos(2 * Math.PI * i / count);
            points[i] = (
                X + (radius * StandardErrors.X * cosine),
                Y + (radius * StandardErrors.Y * ((Correlation * cosine) + (Rest * sine)))
            );
        }

        return points;
    }

    private double Rest => Math.Sqrt((1 - Correlation) * (1 + Correlation));
}
