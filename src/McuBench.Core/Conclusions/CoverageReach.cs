using McuBench.Stats.Distributions;

namespace McuBench.Core.Conclusions;

/// <summary>How far from a value the truth may lie at a stated chance.</summary>
/// <remarks>
/// Student's t at the effective degrees of freedom (Welch–Satterthwaite, gum-2008 G.4.1) unless a limit (a tolerance, a
/// step that all readings share) makes up a fair part of the uncertainty: the largest limit is then taken for what it is,
/// a uniform distribution, and added to a Student's t of all the rest as jcgm-101 5.3 propagates distributions. GUM's own
/// rule is up to a sixth too wide where a limit dominates, and too narrow where three trials stand beside it.
/// </remarks>
internal static class CoverageReach
{
    /// <summary>The share of the variance from which a limit is propagated as a distribution.</summary>
    private const double FairPart = 0.05;

    /// <summary>At one degree of freedom the tail has no integral; its differences hardly change just above.</summary>
    private const double LeastFreedom = 1 + 1e-5;

    /// <summary>The distance that is exceeded on either side with a chance, at least 0.</summary>
    /// <param name="value">The value.</param>
    /// <param name="tail">The chance, above 0 and below 0.5.</param>
    public static double Of(UncertainValue value, double tail)
    {
        var all = value.StandardUncertainty;
        if (all == 0)
        {
            return 0;
        }

        var limit = value
            .Contributions.Where(c => c.Source.IsLimit)
            .OrderByDescending(c => Math.Abs(c.Amount))
            .FirstOrDefault();
        var half = limit.Source is null ? 0 : Math.Sqrt(3) * Math.Abs(limit.Amount);
        if (half * half / 3 < FairPart * all * all)
        {
            return StudentT.Of(value.DegreesOfFreedom).UpperQuantile(tail) * all;
        }

        var rest = value.Without(new HashSet<string>([limit.Source!.Key], StringComparer.Ordinal));
        var uncertainty = rest.StandardUncertainty;
        return uncertainty < 1e-9 * half
            ? half * (1 - 2 * tail)
            : Sum(half, uncertainty, StudentT.Of(Math.Max(rest.DegreesOfFreedom, LeastFreedom)), tail);
    }

    /// <summary>The distance that a uniform value within ±half and a Student's t together exceed with a chance: where
    /// u/2a·(H((x − a)/u) − H((x + a)/u)) comes to it, H being the integral of the t's upper tail.</summary>
    private static double Sum(double half, double uncertainty, StudentT student, double tail)
    {
        double from = 0;
        var to = half + student.UpperQuantile(tail) * uncertainty;
        var distance = Math.Min(to, Math.Sqrt(half * half + to * to) / Math.Sqrt(2));
        const int most = 60;
        for (var i = 0; i < most; i++)
        {
            var (near, far) = ((distance - half) / uncertainty, (distance + half) / uncertainty);
            var excess =
                uncertainty / (2 * half) * (IntegratedTail(student, near) - IntegratedTail(student, far)) - tail;
            (from, to) = excess > 0 ? (distance, to) : (from, distance);
            var slope = (student.UpperTail(near) - student.UpperTail(far)) / (2 * half);
            var next = distance + excess / slope;

            // Newton's step where it stays inside the bracket.
            next = next > from && next < to ? next : 0.5 * (from + to);
            if (Math.Abs(next - distance) <= 1e-12 * next)
            {
                return next;
            }

            distance = next;
        }

        return distance;
    }

    /// <summary>∫ P(T > t) dt from z on: f(z)(ν + z²)/(ν − 1) − z·P(T > z), and φ(z) − z·Q(z) for the normal distribution.</summary>
    private static double IntegratedTail(StudentT student, double z)
    {
        var freedom = student.DegreesOfFreedom;
        var mean = double.IsPositiveInfinity(freedom)
            ? student.Density(z)
            : student.Density(z) * (freedom + z * z) / (freedom - 1);
        return mean - z * student.UpperTail(z);
    }
}
