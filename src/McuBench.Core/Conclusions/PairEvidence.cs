using McuBench.Core.Quantities;
using McuBench.Stats.Distributions;

namespace McuBench.Core.Conclusions;

/// <summary>What one comparison has to show: the logarithm of its ratio, its standard uncertainty, and the p-values of no
/// difference and of a difference beyond the margin.</summary>
/// <remarks>Taken back from the interval, so that at one less its confidence the p-values say what the interval says.</remarks>
internal sealed record PairEvidence
{
    private PairEvidence(double logarithm, double uncertainty, StudentT student, double? margin)
    {
        Logarithm = logarithm;
        Uncertainty = uncertainty;
        Student = student;
        var distance = Math.Abs(logarithm);
        Difference = Math.Min(1, 2 * student.UpperTail(Within(distance / uncertainty)));
        Equality = margin is { } m ? student.UpperTail(Within((Math.Log(1 + m) - distance) / uncertainty)) : null;
    }

    public double Logarithm { get; }

    public double Uncertainty { get; }

    public StudentT Student { get; }

    /// <summary>Two-sided p-value of no difference.</summary>
    public double Difference { get; }

    /// <summary>The p-value of a difference of the margin or more, the larger of two one-sided tests (schuirmann-1987);
    /// absent without a margin.</summary>
    public double? Equality { get; }

    /// <summary>The evidence, or null where there is no interval or the verdict was withheld.</summary>
    public static PairEvidence? Of(QuantityComparison compared)
    {
        if (
            compared.Verdict == Verdict.NoVerdict
            || compared.Ratio is not { Lower: { } lower, Upper: { } upper, DegreesOfFreedom: { } degrees } ratio
        )
        {
            return null;
        }

        var student = StudentT.Of(degrees);
        var reach = (Math.Log(upper) - Math.Log(lower)) / 2;
        return new PairEvidence(
            Math.Log(ratio.Value),
            reach / student.UpperQuantile((1 - ratio.Confidence) / 2),
            student,
            compared.Margin is { } margin ? Si.Fraction(margin) : null
        );
    }

    /// <summary>Ends of the ratio's interval at one less a two-sided level.</summary>
    public (double Lower, double Upper) Ends(double level)
    {
        var reach = Student.UpperQuantile(level / 2) * Uncertainty;
        return (Math.Exp(Logarithm - reach), Math.Exp(Logarithm + reach));
    }

    /// <summary>A quotient of two finite numbers may leave the range of a double; its tail is then 0 or 1 all the same.</summary>
    private static double Within(double t) => Math.Clamp(t, -double.MaxValue, double.MaxValue);
}
