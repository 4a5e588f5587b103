using McuBench.Stats.Distributions;

namespace McuBench.Core.Conclusions;

/// <summary>A straight line through points that carry their sources of uncertainty; the two coefficients carry them on,
/// and so their correlation.</summary>
/// <param name="Intercept">In the unit of y.</param>
/// <param name="Slope">In the unit of y divided by that of x.</param>
/// <param name="LackOfFit">The test of the line; null with two points, where there is nothing to test.</param>
internal sealed record UncertainLine(UncertainValue Intercept, UncertainValue Slope, LackOfFit? LackOfFit)
{
    /// <summary>The line's y at an x, with its uncertainty.</summary>
    public UncertainValue At(double x) => Intercept.Plus(Slope.Times(x));

    /// <summary>
    /// The weighted least-squares line. Each coefficient is a sum of the points with fixed factors, so whatever moves the
    /// points moves it by the same factors (GUM 5.1.2): a scale error that all points share scales both coefficients,
    /// and each point's scatter enters with its own degrees of freedom.
    /// </summary>
    /// <param name="x">The abscissas, not all equal, one for each point.</param>
    /// <param name="y">The points.</param>
    /// <param name="variances">The variance that each point is weighted with, above zero.</param>
    /// <param name="degreesOfFreedom">Those behind the variances, for the test; positive infinity where they are known.</param>
    public static UncertainLine Through(
        double[] x,
        IReadOnlyList<UncertainValue> y,
        double[] variances,
        double degreesOfFreedom
    )
    {
        // Relative to the smallest, so that no weight overflows whatever the unit.
        var least = variances.Min();
        double[] weights = [.. variances.Select(v => least / v)];
        var sum = weights.Sum();
        var centre = weights.Zip(x, (w, xi) => w * xi).Sum() / sum;
        var spread = weights.Zip(x, (w, xi) => w * (xi - centre) * (xi - centre)).Sum();

        double[] ofSlope = [.. weights.Zip(x, (w, xi) => w * (xi - centre) / spread)];
        double[] ofIntercept = [.. weights.Zip(ofSlope, (w, s) => w / sum - centre * s)];
        var slope = Sum(y, ofSlope);
        var intercept = Sum(y, ofIntercept);
        return new UncertainLine(intercept, slope, Test(x, y, variances, degreesOfFreedom, intercept, slope));
    }

    private static UncertainValue Sum(IReadOnlyList<UncertainValue> points, double[] factors) =>
        points.Zip(factors, (point, factor) => point.Times(factor)).Aggregate((a, b) => a.Plus(b));

    private static LackOfFit? Test(
        double[] x,
        IReadOnlyList<UncertainValue> y,
        double[] variances,
        double degreesOfFreedom,
        UncertainValue intercept,
        UncertainValue slope
    )
    {
        var toSpare = y.Count - 2;
        if (toSpare < 1)
        {
            return null;
        }

        double squares = 0;
        for (var i = 0; i < y.Count; i++)
        {
            var residual = y[i].Value - intercept.Value - slope.Value * x[i];
            squares += residual * residual / variances[i];
        }

        var pValue = double.IsInfinity(degreesOfFreedom)
            ? ChiSquared.Of(toSpare).UpperTail(squares)
            : FisherF.Of(toSpare, degreesOfFreedom).UpperTail(squares / toSpare);
        return new LackOfFit(
            squares / toSpare,
            toSpare,
            double.IsFinite(degreesOfFreedom) ? degreesOfFreedom : null,
            pValue
        );
    }
}
