using System.Runtime.InteropServices;

namespace McuBench.Stats.Regression;

/// <summary>One round of york-2004: from a slope to the next one, and the errors if they are the same.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct YorkStep(
    double Slope,
    double Intercept,
    double SlopeError,
    double InterceptError,
    double ChiSquared
)
{
    internal static YorkStep Of(
        ReadOnlySpan<double> x,
        ReadOnlySpan<double> y,
        ReadOnlySpan<double> ux,
        ReadOnlySpan<double> uy,
        ReadOnlySpan<double> correlations,
        double slope
    )
    {
        int n = x.Length;
        double[] weights = new double[n];
        var total = new CompensatedSum();
        var sumX = new CompensatedSum();
        var sumY = new CompensatedSum();
        for (int i = 0; i < n; i++)
        {
            double r = correlations.IsEmpty ? 0 : correlations[i];
            // york-2004, eq. 13b's weight: the inverse variance of y − slope · x.
            weights[i] = 1 / (uy[i] * uy[i] + slope * ux[i] * (slope * ux[i] - 2 * r * uy[i]));
            total.Add(weights[i]);
            sumX.Add(weights[i] * x[i]);
            sumY.Add(weights[i] * y[i]);
        }

        double meanX = sumX.Value / total.Value;
        double meanY = sumY.Value / total.Value;
        double[] betas = new double[n];
        var above = new CompensatedSum();
        var below = new CompensatedSum();
        var sumBeta = new CompensatedSum();
        for (int i = 0; i < n; i++)
        {
            double r = correlations.IsEmpty ? 0 : correlations[i];
            double u = x[i] - meanX;
            double v = y[i] - meanY;
            betas[i] =
                weights[i] * (u * uy[i] * uy[i] + slope * v * ux[i] * ux[i] - (slope * u + v) * r * ux[i] * uy[i]);
            above.Add(weights[i] * betas[i] * v);
            below.Add(weights[i] * betas[i] * u);
            sumBeta.Add(weights[i] * betas[i]);
        }

        double next = above.Value / below.Value;
        double intercept = meanY - next * meanX;
        // Errors from the adjusted abscissas, meanX + beta.
        double meanBeta = sumBeta.Value / total.Value;
        var spread = new CompensatedSum();
        var chiSquared = new CompensatedSum();
        for (int i = 0; i < n; i++)
        {
            double away = betas[i] - meanBeta;
            double off = y[i] - meanY - next * (x[i] - meanX);
            spread.Add(weights[i] * away * away);
            chiSquared.Add(weights[i] * off * off);
        }

        double slopeError = 1 / Math.Sqrt(spread.Value);
        return new YorkStep(
            next,
            intercept,
            slopeError,
            double.Hypot(1 / Math.Sqrt(total.Value), (meanX + meanBeta) * slopeError),
            chiSquared.Value
        );
    }
}
