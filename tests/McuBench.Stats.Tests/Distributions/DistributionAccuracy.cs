using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

/// <summary>Measures every density, tail and quantile against every reference value.</summary>
internal static class DistributionAccuracy
{
    // Below this a double has fewer digits.
    private const double Smallest = 1e-300;

    /// <summary>One row for each distribution and quantity: how many values, and the largest relative error.</summary>
    internal static IReadOnlyList<(string Name, int Count, double LargestError, string Worst)> Measure() =>
        [
            .. Errors()
                .GroupBy(e => e.Name, StringComparer.Ordinal)
                .Select(g => (g.Key, g.Count(), g.Max(e => e.Error), g.MaxBy(e => e.Error).Place)),
        ];

    private static IEnumerable<(string Name, double Error, string Place)> Errors() =>
        Normals()
            .Concat(StudentTs())
            .Concat(GammaFamily())
            .Concat(BetaFamily())
            .Concat(Binomials())
            .Concat(Integrals())
            .SelectMany(e => e);

    private static IEnumerable<IEnumerable<(string Name, double Error, string Place)>> Normals()
    {
        var law = Normal.Standard;
        foreach (var c in Cases("distributions-t.json", "normal"))
        {
            var (z, p) = (c.Number("z"), c.Number("probability"));
            yield return
            [
                Row("Normal density", c.Number("density"), law.Density(z), $"{z}"),
                Row("Normal tails", c.Number("upperTail"), law.UpperTail(z), $"{z}"),
                Row("Normal tails", c.Number("upperTail"), law.Cdf(-z), $"{z}"),
                Row("Normal quantiles", c.Number("quantile"), law.UpperQuantile(p), $"{p}"),
                Row("Normal quantiles", -c.Number("quantile"), law.Quantile(p), $"{p}"),
            ];
        }
    }

    private static IEnumerable<IEnumerable<(string Name, double Error, string Place)>> StudentTs()
    {
        foreach (var c in Cases("distributions-t.json", "studentT"))
        {
            var law = StudentT.Of(c.Number("df"));
            var (t, p) = (c.Number("t"), c.Number("probability"));
            yield return
            [
                Row("StudentT density", c.Number("density"), law.Density(t), $"{law} {t}"),
                Row("StudentT tails", c.Number("upperTail"), law.UpperTail(t), $"{law} {t}"),
                Row("StudentT tails", c.Number("upperTail"), law.Cdf(-t), $"{law} {t}"),
                Row("StudentT quantiles", c.Number("quantile"), law.UpperQuantile(p), $"{law} {p}"),
                Row("StudentT quantiles", -c.Number("quantile"), law.Quantile(p), $"{law} {p}"),
            ];
        }
    }

    private static IEnumerable<IEnumerable<(string Name, double Error, string Place)>> GammaFamily()
    {
        foreach (var c in Cases("distributions-beta-gamma.json", "gamma"))
        {
            // Three thirds of a scale: neither the quotient nor the product is exact.
            const double scale = 0.3;
            var gamma = GammaDistribution.Of(c.Number("shape"), 1);
            var scaled = GammaDistribution.Of(c.Number("shape"), scale);
            var chi = ChiSquared.Of(2 * c.Number("shape"));
            var (x, p) = (c.Number("x"), c.Number("probability"));
            var (density, lower, upper) = (c.Number("density"), c.Number("lowerTail"), c.Number("upperTail"));
            var quantile = c.Number("quantile");
            var isUpper = c.GetProperty("isUpper").GetBoolean();
            yield return
            [
                Row("GammaDistribution density", density, gamma.Density(x), $"{gamma} {x}"),
                Row("GammaDistribution tails", lower, gamma.Cdf(x), $"{gamma} {x}"),
                Row("GammaDistribution tails", upper, gamma.UpperTail(x), $"{gamma} {x}"),
                Row(
                    "GammaDistribution quantiles",
                    quantile,
                    isUpper ? gamma.UpperQuantile(p) : gamma.Quantile(p),
                    $"{gamma} {p} {isUpper}"
                ),
                Row(
                    "GammaDistribution quantiles",
                    quantile * scale,
                    isUpper ? scaled.UpperQuantile(p) : scaled.Quantile(p),
                    $"{scaled} {p} {isUpper}"
                ),
                Row("ChiSquared density", density / 2, chi.Density(2 * x), $"{chi} {2 * x}"),
                Row("ChiSquared tails", lower, chi.Cdf(2 * x), $"{chi} {2 * x}"),
                Row("ChiSquared tails", upper, chi.UpperTail(2 * x), $"{chi} {2 * x}"),
                Row(
                    "ChiSquared quantiles",
                    quantile * 2,
                    isUpper ? chi.UpperQuantile(p) : chi.Quantile(p),
                    $"{chi} {p} {isUpper}"
                ),
            ];
        }
    }

    private static IEnumerable<IEnumerable<(string Name, double Error, string Place)>> BetaFamily()
    {
        foreach (var c in Cases("distributions-beta-gamma.json", "beta"))
        {
            var f = FisherF.Of(2 * c.Number("a"), 2 * c.Number("b"));
            var beta = BetaDistribution.Of(c.Number("a"), c.Number("b"));
            var (x, p) = (c.Number("f"), c.Number("probability"));
            var isUpper = c.GetProperty("isUpper").GetBoolean();
            yield return
            [
                Row("FisherF density", c.Number("density"), f.Density(x), $"{f} {x}"),
                Row("FisherF tails", c.Number("lowerTail"), f.Cdf(x), $"{f} {x}"),
                Row("FisherF tails", c.Number("upperTail"), f.UpperTail(x), $"{f} {x}"),
                Row(
                    "FisherF quantiles",
                    c.Number("quantile"),
                    isUpper ? f.UpperQuantile(p) : f.Quantile(p),
                    $"{f} {p} {isUpper}"
                ),
                Row(
                    "BetaDistribution quantiles",
                    c.Number("betaQuantile"),
                    isUpper ? beta.UpperQuantile(p) : beta.Quantile(p),
                    $"{beta} {p} {isUpper}"
                ),
            ];

            // Quantiles closer to 1 than a double can show have no density or tail of their own.
            if (c.TryGetProperty("x", out var value))
            {
                x = value.GetDouble();
                yield return
                [
                    Row("BetaDistribution density", c.Number("betaDensity"), beta.Density(x), $"{beta} {x}"),
                    Row("BetaDistribution tails", c.Number("betaLowerTail"), beta.Cdf(x), $"{beta} {x}"),
                    Row("BetaDistribution tails", c.Number("betaUpperTail"), beta.UpperTail(x), $"{beta} {x}"),
                ];
            }
        }
    }

    private static IEnumerable<IEnumerable<(string Name, double Error, string Place)>> Binomials()
    {
        foreach (var c in Cases("distributions-beta-gamma.json", "binomial"))
        {
            var law = Binomial.Of(c.GetProperty("trials").GetInt64(), c.Number("probability"));
            var k = c.GetProperty("successes").GetInt64();
            yield return
            [
                Row("Binomial mass", c.Number("mass"), law.Mass(k), $"{law} {k}"),
                Row("Binomial tails", c.Number("lowerTail"), law.Cdf(k), $"{law} {k}"),
                Row("Binomial tails", c.Number("upperTail"), law.UpperTail(k), $"{law} {k}"),
            ];
        }
    }

    private static IEnumerable<IEnumerable<(string Name, double Error, string Place)>> Integrals()
    {
        foreach (var c in Cases("distributions-integrals.json", "noncentralT"))
        {
            var law = NoncentralT.Of(c.Number("df"), c.Number("delta"));
            var t = c.Number("t");
            yield return
            [
                Row("NoncentralT tails", c.Number("lowerTail"), law.Cdf(t), $"{law} {t}"),
                Row("NoncentralT tails", c.Number("upperTail"), law.UpperTail(t), $"{law} {t}"),
            ];
        }

        foreach (var c in Cases("distributions-integrals.json", "studentizedRange"))
        {
            var law = StudentizedRange.Of(c.GetProperty("means").GetInt32(), c.Number("df"));
            var q = c.Number("q");
            yield return
            [
                Row("StudentizedRange tails", c.Number("lowerTail"), law.Cdf(q), $"{law} {q}"),
                Row("StudentizedRange tails", c.Number("upperTail"), law.UpperTail(q), $"{law} {q}"),
                Row("StudentizedRange quantiles", q, law.UpperQuantile(c.Number("upperTail")), $"{law} {q} upper"),
            ];

            // A probability next to 1 has lost the digits of the quantile before it is asked for.
            if (c.Number("lowerTail") < 0.99)
            {
                yield return
                [
                    Row("StudentizedRange quantiles", q, law.Quantile(c.Number("lowerTail")), $"{law} {q} lower"),
                ];
            }
        }
    }

    private static (string Name, double Error, string Place) Row(
        string name,
        double expected,
        double actual,
        FormattableString place
    ) =>
        (
            name,
            Math.Abs(expected) < Smallest
                ? Math.Abs(actual) < 2 * Smallest
                    ? 0
                    : double.PositiveInfinity
                : expected == actual
                    ? 0
                    : Math.Abs((actual / expected) - 1),
            FormattableString.Invariant(place)
        );
}
