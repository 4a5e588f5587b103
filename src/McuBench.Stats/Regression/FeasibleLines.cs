using System.Collections.Immutable;

namespace McuBench.Stats.Regression;

/// <summary>All straight lines y = intercept + slope · x that pass through every one of some upright bars, each from a
/// lower to an upper limit at its x: a convex polygon in the plane of intercept and slope.</summary>
/// <remarks>
/// <para>Limits are certain, not probable: what the bars hold for sure, the polygon holds for sure, so its extremes are
/// bounds and no confidence intervals. No line passes through all bars where the polygon is empty.</para>
/// <para>Computed in the plane of the line's heights at the outermost two x, where the bars there cut out a rectangle
/// and every bar between them a strip across it: no digits are lost to the units of x.</para>
/// <para>Immutable; safe to use from many threads. Two are equal only when they are the same object.</para>
/// </remarks>
public sealed class FeasibleLines
{
    // A bar that just touches the others is decided by the rounding of its limits: what lies within a few units of the
    // last place counts as touching.
    private const double RoundingError = 1e-14;

    private readonly (double AtLeft, double AtRight)[] _corners;
    private readonly double _left;
    private readonly double _right;

    private FeasibleLines((double AtLeft, double AtRight)[] corners, double left, double right)
    {
        _corners = corners;
        _left = left;
        _right = right;
        Vertices = [.. corners.Select(corner => Coefficients(corner.AtLeft, corner.AtRight))];
    }

    /// <summary>The corners of the polygon, in order around it: four for bars at two x, fewer where bars only touch;
    /// none where no line passes through all bars.</summary>
    public ImmutableArray<(double Intercept, double Slope)> Vertices { get; }

    /// <summary>Whether no line passes through all bars.</summary>
    public bool IsEmpty => _corners.Length == 0;

    /// <summary>The least and the greatest intercept.</summary>
    /// <exception cref="InvalidOperationException">No line passes through all bars.</exception>
    public (double Lower, double Upper) Intercept => At(0);

    /// <summary>The least and the greatest slope.</summary>
    /// <exception cref="InvalidOperationException">No line passes through all bars.</exception>
    public (double Lower, double Upper) Slope => Extremes(vertex => vertex.Slope);

    /// <summary>The least and the greatest height of the lines at an x. O(n) in the corners.</summary>
    /// <param name="x">Where, finite; outside the bars too.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="x"/> is not finite.</exception>
    /// <exception cref="InvalidOperationException">No line passes through all bars.</exception>
    public (double Lower, double Upper) At(double x)
    {
        Check.Finite(x, "Place");
        double share = (x - _left) / (_right - _left);
        double[] heights = [.. _corners.Select(c => ((1 - share) * c.AtLeft) + (share * c.AtRight))];
        return heights.Length > 0 ? (heights.Min(), heights.Max()) : throw NoLine();
    }

    /// <summary>Finds the lines. O(n²) in the bars.</summary>
    /// <param name="x">Where the bars stand, at two different places at least.</param>
    /// <param name="lower">The lower limit of each bar.</param>
    /// <param name="upper">The upper limit of each bar, not below the lower.</param>
    /// <exception cref="ArgumentException">There are fewer than two bars, the spans differ in length, or all bars stand at
    /// one place.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, or the limits of a bar are in the wrong
    /// order.</exception>
    public static FeasibleLines Of(ReadOnlySpan<double> x, ReadOnlySpan<double> lower, ReadOnlySpan<double> upper)
    {
        Check.AtLeast(x.Length, 2, nameof(x));
        Check.SameCount(lower.Length, x.Length, "Count of lower limits", "bar", nameof(lower));
        Check.SameCount(upper.Length, x.Length, "Count of upper limits", "bar", nameof(upper));
        Check.Finite(x);
        Check.Finite(lower);
        Check.Finite(upper);
        var (left, right, size) = (x[0], x[0], 0.0);
        for (int i = 0; i < x.Length; i++)
        {
            if (upper[i] < lower[i])
            {
                throw Check.OutOfRange(
                    nameof(upper),
                    FormattableString.Invariant($"Upper limit at index {i}"),
                    FormattableString.Invariant($"at or above the lower one, {lower[i]}"),
                    upper[i]
                );
            }

            left = Math.Min(left, x[i]);
            right = Math.Max(right, x[i]);
            size = Math.Max(size, Math.Max(Math.Abs(lower[i]), Math.Abs(upper[i])));
        }

        if (left == right)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"Bars must stand at two different places at least; all stood at {left}."),
                nameof(x)
            );
        }

        // Wider than every bar, so that each of its edges is cut away.
        double far = size > 0 ? 4 * size : 1;
        (double, double)[] corners = [(-far, -far), (far, -far), (far, far), (-far, far)];
        double slack = RoundingError * size;
        for (int i = 0; i < x.Length && corners.Length > 0; i++)
        {
            double share = (x[i] - left) / (right - left);
            corners = Above(corners, 1 - share, share, lower[i] - slack);
            corners = Above(corners, share - 1, -share, -upper[i] - slack);
        }

        return new FeasibleLines(corners, left, right);
    }

    /// <summary>The part of a polygon where p·x + q·y is at least a limit (sutherland-hodgman-1974).</summary>
    private static (double X, double Y)[] Above((double X, double Y)[] polygon, double p, double q, double limit)
    {
        var kept = new List<(double X, double Y)>(polygon.Length + 1);
        for (int i = 0; i < polygon.Length; i++)
        {
            var (from, to) = (polygon[i], polygon[(i + 1) % polygon.Length]);
            double before = (p * from.X) + (q * from.Y) - limit;
            double after = (p * to.X) + (q * to.Y) - limit;
            if (before >= 0)
            {
                kept.Add(from);
            }

            if (before >= 0 != after >= 0)
            {
                double way = before / (before - after);
                (double, double) crossing = (from.X + (way * (to.X - from.X)), from.Y + (way * (to.Y - from.Y)));
                if (kept.Count == 0 || kept[^1] != crossing)
                {
                    kept.Add(crossing);
                }
            }
        }

        return [.. kept];
    }

    private (double Intercept, double Slope) Coefficients(double atLeft, double atRight)
    {
        double slope = (atRight - atLeft) / (_right - _left);
        return (((_right * atLeft) - (_left * atRight)) / (_right - _left), slope);
    }

    private (double Lower, double Upper) Extremes(Func<(double Intercept, double Slope), double> of) =>
        IsEmpty ? throw NoLine() : (Vertices.Min(of), Vertices.Max(of));

    private static InvalidOperationException NoLine() => new("No line passes through all bars: there are no bounds.");
}
