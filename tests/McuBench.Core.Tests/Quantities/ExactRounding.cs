using System.Numerics;

namespace McuBench.Core.Tests.Quantities;

/// <summary>Rounding by integer arithmetic alone, to judge code that goes through decimal text.</summary>
internal static class ExactRounding
{
    /// <summary>The double nearest to numerator / denominator, ties to even.</summary>
    public static double Nearest(BigInteger numerator, BigInteger denominator)
    {
        if (numerator.IsZero)
        {
            return 0;
        }

        var negative = numerator.Sign < 0;
        numerator = BigInteger.Abs(numerator);

        // The last place of the result is 2^shift; 53 bits in the quotient, fewer where the result is denormal.
        var shift = Math.Max((int)(numerator.GetBitLength() - denominator.GetBitLength()) - 53, -1074);
        var (quotient, remainder) = DivideShifted(numerator, denominator, shift);
        while (quotient.GetBitLength() > 53)
        {
            shift++;
            (quotient, remainder) = DivideShifted(numerator, denominator, shift);
        }

        var divisor = shift > 0 ? denominator << shift : denominator;
        var half = (remainder * 2).CompareTo(divisor);
        if (half > 0 || (half == 0 && !quotient.IsEven))
        {
            quotient++;
        }

        var result = Math.ScaleB((double)quotient, shift);
        return negative ? -result : result;
    }

    /// <summary>The double nearest to magnitude · 10^power.</summary>
    public static double Nearest(BigInteger magnitude, int power) =>
        power < 0
            ? Nearest(magnitude, BigInteger.Pow(10, -power))
            : Nearest(magnitude * BigInteger.Pow(10, power), BigInteger.One);

    private static (BigInteger Quotient, BigInteger Remainder) DivideShifted(BigInteger n, BigInteger d, int shift)
    {
        var quotient = BigInteger.DivRem(shift < 0 ? n << -shift : n, shift > 0 ? d << shift : d, out var remainder);
        return (quotient, remainder);
    }
}
