using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>What every t test ends with: the statistic, its p-value and the interval that belongs to both.</summary>
internal static class TTest
{
    /// <summary>The outcome for an estimate with a standard error above 0.</summary>
    internal static TTestResult Of(
        double value,
        double error,
        double degreesOfFreedom,
        int count,
        string method,
        TTestOptions? options,
        string name = "first"
    )
    {
        options ??= TTestOptions.Default;
        var t = StudentT.Of(degreesOfFreedom);
        double statistic = (value - options.NullValue) / error;
        double pValue = options.Alternative switch
        {
            Alternative.Less => t.Cdf(statistic),
            Alternative.Greater => t.UpperTail(statistic),
            _ => Math.Min(1, 2 * t.UpperTail(Math.Abs(statistic))),
        };
        bool twoSided = options.Alternative == Alternative.TwoSided;
        double reach = error * t.UpperQuantile((1 - options.Confidence) / (twoSided ? 2 : 1));
        var estimate = new Estimate(value, count, method)
        {
            StandardError = error,
            DegreesOfFreedom = degreesOfFreedom,
            Interval = new Interval(
                options.Alternative == Alternative.Less
                    ? double.NegativeInfinity
                    : Check.Representable(value - reach, "Lower end", name),
                options.Alternative == Alternative.Greater
                    ? double.PositiveInfinity
                    : Check.Representable(value + reach, "Upper end", name),
                options.Confidence
            ),
        };
        return new TTestResult(estimate, statistic, pValue, options);
    }
}
