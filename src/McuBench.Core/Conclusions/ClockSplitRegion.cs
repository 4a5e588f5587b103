using McuBench.Core.Quantities;
using McuBench.Stats.Intervals;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Fixed time and cycles together: the ellipse that holds both at once with the stated confidence.</summary>
/// <remarks>
/// <para>The two are strongly opposed: a run whose fixed part is overestimated has too few cycles. Each one's own interval
/// leaves that out, and the rectangle of both holds pairs that the data refute. Hotelling's region, with effective degrees
/// of freedom of the sum of all sources (krishnamoorthy-yu-2004).</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record ClockSplitRegion
{
    private readonly ConfidenceEllipse ellipse;

    private ClockSplitRegion(ConfidenceEllipse ellipse) => this.ellipse = ellipse;

    /// <summary>The correlation of the errors of fixed time and cycles.</summary>
    public double Correlation => ellipse.Correlation;

    /// <summary>The covariance of fixed time and cycles, in second-cycles.</summary>
    public double Covariance => ellipse.Correlation * ellipse.StandardErrors.X * ellipse.StandardErrors.Y;

    /// <summary>The effective degrees of freedom of the covariance; positive infinity where no scatter was estimated.</summary>
    public double DegreesOfFreedom => ellipse.DegreesOfFreedom;

    /// <summary>The confidence that both true values lie inside.</summary>
    public double Confidence => ellipse.Confidence;

    /// <summary>Whether a pair lies in the region.</summary>
    /// <param name="fixedTime">The time of a run that doesn't follow the clock.</param>
    /// <param name="cycles">The cycles of a run.</param>
    public bool Contains(Duration fixedTime, double cycles) =>
        ellipse.Contains(
            Si.Seconds(fixedTime, nameof(fixedTime)),
            Si.Finite(cycles, "Number of cycles", nameof(cycles))
        );

    /// <summary>Points on the region's edge, in order around it, for drawing.</summary>
    /// <param name="count">How many, 3 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The count is below 3.</exception>
    public IReadOnlyList<(Duration FixedTime, double Cycles)> Edge(int count) =>
        [.. ellipse.Edge(count).Select(point => (Si.Duration(point.X), point.Y))];

    /// <summary>The region, or null where the two can't be told apart from one or have no interval.</summary>
    internal static ClockSplitRegion? Of(UncertainLine line, double confidence)
    {
        var (intercept, slope) = (line.Intercept, line.Slope);
        var errors = (X: intercept.StandardUncertainty, Y: slope.StandardUncertainty);
        if (intercept.Missing is not null || slope.Missing is not null || !(errors.X > 0 && errors.Y > 0))
        {
            return null;
        }

        var correlation = Math.Clamp(intercept.CovarianceWith(slope) / errors.X / errors.Y, -1, 1);
        return ConfidenceEllipse.IsTwoDimensional(correlation)
            ? new ClockSplitRegion(
                ConfidenceEllipse.OfEstimated(
                    intercept.Value,
                    slope.Value,
                    errors,
                    correlation,
                    Freedom(line, errors, correlation),
                    confidence
                )
            )
            : null;
    }

    /// <summary>Each source moves the pair along a line of its own, so its covariance has rank one, and the formula
    /// (p + p²)/Σ [tr(A²) + tr(A)²]/ν with A = Vᵢ V⁻¹ and p = 2 comes down to 3/Σ q²/ν with q = vᵢᵀ V⁻¹ vᵢ.</summary>
    private static double Freedom(UncertainLine line, (double X, double Y) errors, double correlation)
    {
        var onSlope = line.Slope.Contributions.ToDictionary(c => c.Source.Key, c => c.Amount, StringComparer.Ordinal);
        var onIntercept = line.Intercept.Contributions.ToDictionary(
            c => c.Source.Key,
            c => c.Amount,
            StringComparer.Ordinal
        );
        double sum = 0;
        foreach (
            var source in line
                .Intercept.Contributions.Concat(line.Slope.Contributions)
                .Select(c => c.Source)
                .DistinctBy(source => source.Key, StringComparer.Ordinal)
        )
        {
            var x = onIntercept.GetValueOrDefault(source.Key) / errors.X;
            var y = onSlope.GetValueOrDefault(source.Key) / errors.Y;
            var q = (x * x - 2 * correlation * x * y + y * y) / (1 - correlation * correlation);
            sum += q * q / source.DegreesOfFreedom;
        }

        return sum > 0 ? 3 / sum : double.PositiveInfinity;
    }
}
