using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>The p-value of a number of runs.</summary>
internal static class RunsTest
{
    internal static RunsResult Of(int runs, int above, int below, int leftOut, RunsOptions options)
    {
        double n = (double)above + below;
        double product = 2.0 * above * below;
        double expected = n == 0 ? 0 : product / n + 1;
        // wald-wolfowitz-1940, eq. 10; 0 where all values lie on one side.
        double variance = n < 2 ? 0 : product / n * ((product - n) / n) / (n - 1);
        double? z = variance > 0 ? (runs - expected) / Math.Sqrt(variance) : null;
        bool isExact =
            options.Distribution == NullDistribution.Exact
            || (options.Distribution == NullDistribution.Automatic && n <= RunsMasses.MostValues);
        if (isExact && n > RunsMasses.MostValues)
        {
            throw Check.OutOfRange(
                "sample",
                "Count of values for the exact distribution",
                FormattableString.Invariant($"at most {RunsMasses.MostValues}"),
                n
            );
        }

        double pValue =
            z is null ? 1
            : isExact ? RankTest.PValue(runs, RankDistribution.Runs(above, below), options.Alternative)
            : RankTest.PValue(z.Value, options.Alternative);
        return new RunsResult(
            runs,
            above,
            below,
            leftOut,
            expected,
            z,
            pValue,
            isExact ? "runs about the median, exact" : "runs about the median, normal approximation",
            options
        );
    }
}
