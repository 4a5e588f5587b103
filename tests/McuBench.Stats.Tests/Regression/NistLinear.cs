using System.Globalization;

namespace McuBench.Stats.Tests.Regression;

/// <summary>The linear regression data sets of the NIST StRD.</summary>
internal static class NistLinear
{
    internal static ReferenceCase Case(string set) => ReferenceCase.Of("nist-strd", "strd-lin-" + set);

    /// <summary>Abscissas and ordinates of one of the five Wampler sets, which are given by formulas.</summary>
    internal static (double[] X, double[] Y) Wampler(int number)
    {
        double[] e = Case("wampler1-5").Numbers("input", "e");
        double[] x = [.. Enumerable.Range(0, 21).Select(i => (double)i)];
        double scale = number switch
        {
            3 => 1,
            4 => 100,
            5 => 10_000,
            _ => 0,
        };
        double[] y =
        [
            .. x.Select(
                (value, i) =>
                    number == 2 ? Decimal(value) : Enumerable.Range(0, 6).Sum(k => Math.Pow(value, k)) + scale * e[i]
            ),
        ];
        return (x, y);
    }

    /// <summary>Σ (x/10)^k, rounded once from decimal digits as in the file.</summary>
    private static double Decimal(double x)
    {
        decimal sum = 0;
        decimal power = 1;
        for (int k = 0; k <= 5; k++)
        {
            sum += power;
            power *= (decimal)x / 10;
        }

        return double.Parse(sum.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
