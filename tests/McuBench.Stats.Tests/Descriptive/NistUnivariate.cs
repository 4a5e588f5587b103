using System.Globalization;
using System.Numerics;
using System.Security.Cryptography;
using System.Text;

namespace McuBench.Stats.Tests.Descriptive;

/// <summary>The nine univariate data sets of the NIST StRD, three of them rebuilt from their formulas.</summary>
internal static class NistUnivariate
{
    internal static double[] Values(string set) =>
        set switch
        {
            "NumAcc2" or "NumAcc3" or "NumAcc4" => NumAcc(set),
            "PiDigits" => PiDigits(),
            _ => Case(set).Numbers("input", "y"),
        };

    internal static (double Mean, double StandardDeviation) Certified(string set) =>
        set is "NumAcc2" or "NumAcc3" or "NumAcc4"
            ? (Case(set).Number("expected", set, "mean"), Case(set).Number("expected", set, "sd_n_minus_1"))
            : (Case(set).Number("expected", "mean"), Case(set).Number("expected", "sd_n_minus_1"));

    internal static double CertifiedAutocorrelation(string set) =>
        set is "NumAcc2" or "NumAcc3" or "NumAcc4"
            ? Case(set).Number("expected", set, "autocorrelation_lag1")
            : Case(set).Number("expected", "autocorrelation_lag1");

    private static ReferenceCase Case(string set) =>
        ReferenceCase.Of(
            "nist-strd",
            set switch
            {
                "NumAcc2" or "NumAcc3" or "NumAcc4" => "strd-uni-numacc2-4",
                _ => "strd-uni-" + set.ToLowerInvariant(),
            }
        );

    private static double[] NumAcc(string set)
    {
        // Parsed from decimal digits, since the certified values belong to these and B + 0.1 rounds twice.
        string whole = Case(set).Number("input", "B", set).ToString(CultureInfo.InvariantCulture);
        double Value(int tenths) => double.Parse($"{whole}.{tenths}", CultureInfo.InvariantCulture);
        return [Value(2), .. Enumerable.Range(0, 1000).Select(i => Value(i % 2 == 0 ? 1 : 3))];
    }

    private static double[] PiDigits()
    {
        char[] digits = Pi(5000).ToCharArray();
        digits[956] = '3';
        Assert.Equal(
            Case("PiDigits").Text("input", "sha256_of_the_5000_ascii_digits"),
            Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(digits)))
        );
        return [.. digits.Select(digit => (double)(digit - '0'))];
    }

    /// <summary>Digits of π by Machin's formula, π/4 = 4 arctan(1/5) − arctan(1/239).</summary>
    private static string Pi(int count)
    {
        BigInteger one = BigInteger.Pow(10, count + 10);
        BigInteger pi = 4 * (4 * Arctangent(5, one) - Arctangent(239, one));
        return pi.ToString(CultureInfo.InvariantCulture)[..count];
    }

    private static BigInteger Arctangent(int inverse, BigInteger one)
    {
        BigInteger power = one / inverse;
        BigInteger sum = power;
        for (int k = 3; !power.IsZero; k += 2)
        {
            power /= -inverse * inverse;
            sum += power / k;
        }

        return sum;
    }
}
