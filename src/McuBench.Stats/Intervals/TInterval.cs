using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>Estimates whose interval is symmetric, a t factor times a standard error each way.</summary>
internal static class TInterval
{
    /// <summary>An estimate with its interval; with a note in its place where the error is 0.</summary>
    internal static Estimate Of(
        double value,
        double error,
        double degreesOfFreedom,
        double confidence,
        int count,
        string method
    )
    {
        if (error == 0)
        {
            return new Estimate(value, count, method) { Notes = [SpreadNotes.AllEqual] };
        }

        double reach = Factor(degreesOfFreedom, confidence) * error;
        return new Estimate(value, count, method)
        {
            StandardError = error,
            DegreesOfFreedom = degreesOfFreedom,
            Interval = new Interval(
                Check.Representable(value - reach, "Lower end", "sample"),
                Check.Representable(value + reach, "Upper end", "sample"),
                confidence
            ),
        };
    }

    /// <summary>The t that a two-sided interval of some confidence reaches each way.</summary>
    internal static double Factor(double degreesOfFreedom, double confidence) =>
        StudentT.Of(degreesOfFreedom).UpperQuantile((1 - confidence) / 2);
}
