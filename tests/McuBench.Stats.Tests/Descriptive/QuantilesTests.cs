using FsCheck.Xunit;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Tests.Descriptive;

public sealed class QuantilesTests
{
    [Theory]
    [InlineData("0.05")]
    [InlineData("0.25")]
    [InlineData("0.40")]
    [InlineData("0.50")]
    [InlineData("0.90")]
    public void Of_NineDefinitions_AgreesWithTheReference(string probability)
    {
        var reference = ReferenceCase.Of("classic-data", "cl-quantile-types");
        double p = double.Parse(probability, System.Globalization.CultureInfo.InvariantCulture);
        double[] values = reference.Numbers("input", "y");
        double[] expected = reference.Numbers("recomputed", $"p_{probability}_types_1_to_9");
        foreach (QuantileDefinition definition in Enum.GetValues<QuantileDefinition>())
        {
            // The reference is kept to nine digits.
            Agree.Relative(expected[(int)definition - 1], Quantiles.Of(values, p, definition), 2e-9);
            Agree.Relative(expected[(int)definition - 1], Quantiles.Of(Sample.Of(values), p, definition), 2e-9);
        }
    }

    [Fact]
    public void Of_TwelveGaugeReadings_AgreesWithTheHandbook()
    {
        var reference = ReferenceCase.Of("nist-handbook", "hb-percentile-12");
        double[] values = reference.Numbers("input", "y");

        Agree.Relative(
            reference.Number("recomputed", "type6"),
            Quantiles.Of(values, 0.9, QuantileDefinition.HyndmanFan6),
            1e-14
        );
        Agree.Relative(
            reference.Number("recomputed", "type7"),
            Quantiles.Of(values, 0.9, QuantileDefinition.HyndmanFan7),
            1e-14
        );
    }

    [Fact]
    public void Of_CountTimesProbabilityRoundedUp_TakesTheWholeRank()
    {
        // 100 * 0.07 is 7.000000000000001 in binary64.
        double[] values = [.. Enumerable.Range(1, 100).Select(i => (double)i)];

        Assert.Equal(7, Quantiles.Of(values, 0.07, QuantileDefinition.HyndmanFan1));
        Assert.Equal(7.5, Quantiles.Of(values, 0.07, QuantileDefinition.HyndmanFan2));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Of_AnyDefinition_RisesWithTheProbabilityWithinTheData(Dyadic data)
    {
        foreach (QuantileDefinition definition in Enum.GetValues<QuantileDefinition>())
        {
            double before = data.Values.Min();
            for (int step = 0; step <= 40; step++)
            {
                double now = Quantiles.Of(data.Values, step / 40.0, definition);

                Assert.True(now >= before);
                before = now;
            }

            Assert.True(before <= data.Values.Max());
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Of_SymmetricDefinition_MirrorsWithTheData(Dyadic data)
    {
        double[] mirrored = data.Map(value => -value);
        foreach (int number in (int[])[2, 5, 6, 7, 8, 9])
        {
            var definition = (QuantileDefinition)number;

            Assert.Equal(-Quantiles.Of(data.Values, 0.75, definition), Quantiles.Of(mirrored, 0.25, definition), 1e-12);
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Of_SpanAndSample_Agree(Dyadic data)
    {
        foreach (QuantileDefinition definition in Enum.GetValues<QuantileDefinition>())
        {
            Assert.Equal(
                Quantiles.Of(Sample.Of(data.Values), 0.3, definition),
                Quantiles.Of(data.Values, 0.3, definition)
            );
        }
    }

    [Fact]
    public void Of_EndsFarApart_DoesNotOverflow() => Assert.Equal(0, Quantiles.Of([-1.7e308, 1.7e308], 0.5));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(1.1)]
    [InlineData(double.NaN)]
    public void Of_NotAProbability_IsRefused(double probability)
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => Quantiles.Of([1, 2], probability));

        Assert.Equal("probability", refusal.ParamName);
        Assert.StartsWith(
            "Probability must be between 0 and 1, ends included; was ",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_UnknownDefinition_IsRefused() =>
        Assert.Equal(
            "definition",
            Assert
                .Throws<ArgumentOutOfRangeException>(() => Quantiles.Of([1, 2], 0.5, (QuantileDefinition)10))
                .ParamName
        );

    [Theory]
    [MemberData(nameof(RobustReference.Sets), MemberType = typeof(RobustReference))]
    public void Of_SevenProbabilitiesAtOnce_AgreesWithRAndNumPy(string set)
    {
        double[] probabilities = [0, 0.1, 0.25, 1.0 / 3, 0.5, 0.9, 1];
        double[] r = RobustReference.R(set).Numbers("quantiles");
        double[] numpy = RobustReference.SciPy(set).Numbers("quantiles");
        double[] values = Datasets.Values(set);
        double[] actual = new double[7];
        foreach (QuantileDefinition definition in Enum.GetValues<QuantileDefinition>())
        {
            int from = 7 * ((int)definition - 1);
            Quantiles.Of(values, probabilities, actual, definition);

            // Rounding of count times probability, some 14 times 1e-16, comes back times a step between values.
            Agree.Relative(r.AsSpan(from, 7), actual, 4e-15);
            // NumPy 1.24 rounds the ties of definition 3 to the odd rank; the paper and R take the even one.
            if (definition != QuantileDefinition.HyndmanFan3)
            {
                Agree.Relative(numpy.AsSpan(from, 7), actual, 4e-15);
            }
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Of_ManyAtOnceInAnyOrder_IsEachAlone(Dyadic data)
    {
        double[] probabilities = [0.9, 0, 0.5, 0.5, 1, 0.123];
        double[] results = new double[probabilities.Length];
        Quantiles.Of(data.Values, probabilities, results);

        for (int i = 0; i < probabilities.Length; i++)
        {
            Assert.Equal(Quantiles.Of(data.Values, probabilities[i]), results[i]);
        }
    }

    [Fact]
    public void Of_ResultsOfAnotherCount_AreRefused() =>
        Assert.Equal(
            "results",
            Assert.Throws<ArgumentException>(() => Quantiles.Of([1, 2], [0.5], new double[2])).ParamName
        );
}
