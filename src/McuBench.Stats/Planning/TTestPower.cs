using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Planning;

/// <summary>The power of any test whose statistic is noncentral t.</summary>
internal static class TTestPower
{
    // From here on, in roots of the degrees of freedom, the numerator's own spread hardly counts, and the noncentral t
    // distribution soon refuses.
    private const double Far = 60;

    /// <summary>The probability of a rejection.</summary>
    internal static double Of(double degreesOfFreedom, double noncentrality, PowerOptions options) =>
        Beyond(
            StudentT.Of(degreesOfFreedom).UpperQuantile(options.PerSide),
            degreesOfFreedom,
            options.Upward(noncentrality),
            options.Alternative == Alternative.TwoSided
        );

    /// <summary>The probability of a statistic above a critical value, or below its negative too.</summary>
    internal static double Beyond(double critical, double degreesOfFreedom, double noncentrality, bool onBothSides)
    {
        if (noncentrality < -Far * Math.Sqrt(degreesOfFreedom))
        {
            return onBothSides ? Beyond(critical, degreesOfFreedom, -noncentrality, onBothSides) : 0;
        }

        if (noncentrality > Far * Math.Sqrt(degreesOfFreedom))
        {
            // t is then the noncentrality over s/σ, but for some ν/7200 of the probability that s is too large for it.
            double spread = noncentrality / critical;
            return ChiSquared.Of(degreesOfFreedom).Cdf(Math.Min(degreesOfFreedom * spread * spread, 1e300));
        }

        var t = NoncentralT.Of(degreesOfFreedom, noncentrality);
        return onBothSides ? t.UpperTail(critical) + t.Cdf(-critical) : t.UpperTail(critical);
    }
}
