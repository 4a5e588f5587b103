using System.Buffers;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>Tests of whether the order in which values were taken is a random one.</summary>
public static class Randomness
{
    /// <summary>The runs test about the median (wald-wolfowitz-1940; swed-eisenhart-1943). O(n).</summary>
    /// <remarks>Finds any dependence that lasts over neighbours: drift, cycles, levels that change; no shape of the population is
    /// taken for granted. Automatic means exact for up to 1000 values. Reversing the order changes nothing, nor does turning the
    /// values round where those equal to the median are left out. Where only one number of runs is possible the p-value is
    /// 1.</remarks>
    /// <param name="sample">The values in the order in which they were taken.</param>
    /// <param name="options">What is asked; <see cref="RunsOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The exact distribution is wanted for more than 1000 values.</exception>
    public static RunsResult Runs(Sample sample, RunsOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sample);
        options ??= RunsOptions.Default;
        double median = Location.Median(sample);
        int runs = 0;
        int above = 0;
        int below = 0;
        bool? wasAbove = null;
        foreach (double value in sample.Values)
        {
            if (value == median && options.MedianTies == MedianTies.LeaveOut)
            {
                continue;
            }

            bool isAbove = value >= median;
            above += isAbove ? 1 : 0;
            below += isAbove ? 0 : 1;
            runs += isAbove == wasAbove ? 0 : 1;
            wasAbove = isAbove;
        }

        return RunsTest.Of(runs, above, below, sample.Count - above - below, options);
    }

    /// <summary>Von Neumann's ratio of the mean square of successive differences to the variance (von-neumann-1941). O(n).</summary>
    /// <remarks>The mean of 2 holds for any population; the standard deviation, and with it the p-value, for normal ones. A
    /// two-sided 5 % test by the normal distribution rejects 3.7 % of random orders of 5 values and 4.4 % of 10 (simulated).
    /// Strong against slow drift. One outlier moves both sums: use <see cref="Runs"/> where there may be some.</remarks>
    /// <param name="sample">The values in the order in which they were taken, two or more, not all equal.</param>
    /// <param name="alternative">Which departures count: less for neighbours alike, greater for values that alternate.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There is one value, or all are equal: the ratio is then undefined.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The alternative is not a named one.</exception>
    public static VonNeumannResult VonNeumann(Sample sample, Alternative alternative = Alternative.TwoSided)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.Named(alternative);
        Check.AtLeast(sample.Count, 2, nameof(sample));
        int n = sample.Count;
        double[] scratch = ArrayPool<double>.Shared.Rent(n);
        Span<double> deviations = scratch.AsSpan(0, n);
        double squares = Autocorrelation.FillDeviations(sample.Values, deviations, nameof(sample));
        double differences = 0;
        for (int i = 1; i < n; i++)
        {
            double difference = deviations[i] - deviations[i - 1];
            differences += difference * difference;
        }

        ArrayPool<double>.Shared.Return(scratch);
        double ratio = differences / squares;
        if (n == 2)
        {
            return new VonNeumannResult(ratio, null, 1, n, alternative);
        }

        // The variance of von-neumann-1941, for the sums as they are here.
        double z = (ratio - 2) / (2 * Math.Sqrt((n - 2) / (((double)n * n) - 1)));
        return new VonNeumannResult(ratio, z, RankTest.PValue(z, alternative), n, alternative);
    }

    /// <summary>The test of Ljung and Box that the autocorrelations up to some lag are all 0 (ljung-box-1978). O(n) for each
    /// lag.</summary>
    /// <remarks>The chi-square distribution is close where the count is well above the number of lags. Where the values are
    /// residuals of a fitted series model, its parameters come off the degrees of freedom. Reversing the order changes
    /// nothing.</remarks>
    /// <param name="sample">The values in the order in which they were taken, more than lags, not all equal.</param>
    /// <param name="lags">The greatest lag, 1 or more.</param>
    /// <param name="fitted">How many autoregressive and moving-average parameters were fitted before; 0 for plain values.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentException">There are too few values for the lags, or all are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The lags are not above the number of fitted parameters, or that is below
    /// 0.</exception>
    public static ChiSquaredTestResult LjungBox(Sample sample, int lags, int fitted = 0)
    {
        ArgumentNullException.ThrowIfNull(sample);
        if (fitted < 0)
        {
            throw Check.OutOfRange(nameof(fitted), "Number of fitted parameters", "0 or more", fitted);
        }

        if (lags <= fitted)
        {
            throw Check.OutOfRange(
                nameof(lags),
                "Greatest lag",
                FormattableString.Invariant($"above the number of fitted parameters, {fitted}"),
                lags
            );
        }

        Check.AtLeast(sample.Count, lags + 1, nameof(sample));
        double n = sample.Count;
        double[] correlations = new double[lags];
        Autocorrelation.Fill(sample.Values, correlations, nameof(sample));
        double sum = 0;
        for (int lag = 1; lag <= lags; lag++)
        {
            sum += correlations[lag - 1] * correlations[lag - 1] / (n - lag);
        }

        double statistic = n * (n + 2) * sum;
        int df = lags - fitted;
        return new ChiSquaredTestResult(
            statistic,
            df,
            ChiSquared.Of(df).UpperTail(statistic),
            sample.Count,
            "Ljung-Box"
        );
    }
}
