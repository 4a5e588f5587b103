using FsCheck.Xunit;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Regression;

namespace McuBench.Stats.Tests.Regression;

public sealed class RobustLineTests
{
    [Fact]
    public void TheilSen_SevenPoints_AgreesWithThePaper()
    {
        var reference = ReferenceCase.Of("classic-data", "cl-theil-sen");
        RobustLineFit line = RobustLine.TheilSen(
            reference.Numbers("input", "x"),
            reference.Numbers("input", "y"),
            0.93
        );

        Assert.Equal(4, line.Slope.Value);
        Assert.Equal(6, line.Intercept);
        Assert.Equal(26.0 / 7, line.Slope.Interval!.Lower, 1e-15);
        Assert.Equal(35.0 / 8, line.Slope.Interval.Upper, 1e-15);
    }

    [Theory]
    [InlineData("smooth")]
    [InlineData("ties")]
    [InlineData("wild")]
    [InlineData("offset")]
    public void TheilSenAndSiegel_DataSets_AgreeWithSciPy(string set)
    {
        var data = ReferenceCase.Of("slopes-scipy", "data");
        double[] x = data.Numbers(set, "x");
        double[] y = data.Numbers(set, "y");
        RobustLineFit line = RobustLine.TheilSen(x, y, 0.9);

        Agree.Relative(
            ReferenceCase.Of("slopes-scipy", "theil_sen_90").Numbers(set),
            [line.Slope.Value, line.Intercept, line.Slope.Interval!.Lower, line.Slope.Interval.Upper],
            1e-13
        );
        double siegel = RobustLine.Siegel(x, y).Slope.Value;
        Agree.Relative(ReferenceCase.Of("slopes-scipy", "siegel").Number(set), siegel, 1e-13);
        Agree.Relative(ReferenceCase.Of("slopes-scipy", "siegel_scipy").Number(set), siegel, 1e-13);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void TheilSenAndSiegel_AnyPoints_AreTheMediansOfAllSlopes(Dyadic data, int seed)
    {
        (double[] x, double[] y) = Points(data, seed);
        double[] all = Slopes(x, y);

        Agree.Relative(Location.Median(all), RobustLine.TheilSen(x, y).Slope.Value, 1e-14);
        Agree.Relative(RepeatedMedians(x, y), RobustLine.Siegel(x, y).Slope.Value, 1e-14);
    }

    public static TheoryData<string> Shapes => ["noisy", "grid", "exact line", "two levels", "wild", "few x"];

    [Theory]
    [MemberData(nameof(Shapes))]
    public void TheilSenAndSiegel_MorePairsThanAreListed_AreTheMediansOfAllSlopes(string shape)
    {
        var random = new Random(5);
        double[] x = [.. Enumerable.Range(0, 400).Select(i => shape is "few x" ? (double)(i % 7) : i)];
        double[] y =
        [
            .. x.Select(value =>
                shape switch
                {
                    "noisy" => value / 3 + random.NextDouble() * 20,
                    "grid" => Math.Round(value / 3 + random.NextDouble() * 20),
                    "exact line" => value / 4,
                    "two levels" => random.Next(2),
                    "wild" => random.Next(3) == 0 ? random.NextDouble() * 1e6 : value,
                    _ => value + random.Next(3),
                }
            ),
        ];
        double[] all = [.. Slopes(x, y).Order()];
        var order = new SlopeOrder(x, y);

        Assert.Equal(all.Length, order.Slopes);
        foreach (int rank in (int[])[0, 1, all.Length / 10, all.Length / 2, all.Length - 1])
        {
            Agree.Relative(all[rank], SlopeSelection.Select(order, rank), 1e-14);
        }

        Agree.Relative(RepeatedMedians(x, y), RobustLine.Siegel(x, y).Slope.Value, 1e-14);
    }

    [Fact]
    public void TheilSen_ThirdOfThePointsWild_FollowsTheRest()
    {
        double[] x = [.. Enumerable.Range(0, 40).Select(i => (double)i)];
        double[] y = [.. x.Select((value, i) => i % 4 == 0 ? 1e9 : 2 * value + 1)];

        Assert.Equal(2, RobustLine.TheilSen(x, y).Slope.Value, 1e-12);
        Assert.Equal(2, RobustLine.Siegel(x, y).Slope.Value, 1e-12);
        Assert.Equal(1, RobustLine.Siegel(x, y).Intercept, 1e-12);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void TheilSenAndSiegel_YTurnedShiftedAndScaled_FollowTheData(Dyadic data, int seed)
    {
        (double[] x, double[] y) = Points(data, seed);
        double[] moved = [.. y.Select(value => -4 * value + 16)];

        Assert.Equal(-4 * RobustLine.TheilSen(x, y).Slope.Value, RobustLine.TheilSen(x, moved).Slope.Value, 1e-12);
        Assert.Equal(-4 * RobustLine.Siegel(x, y).Slope.Value, RobustLine.Siegel(x, moved).Slope.Value, 1e-12);
    }

    [Fact]
    public void TheilSen_TooFewPointsForTheConfidence_HasNoIntervalAndSaysWhy()
    {
        RobustLineFit line = RobustLine.TheilSen([1, 2, 3], [1, 3, 4], 0.99);

        Assert.Null(line.Slope.Interval);
        Assert.Equal("Too few points for the confidence: no interval.", Assert.Single(line.Slope.Notes));
        Assert.Equal(1.5, line.Slope.Value);
    }

    [Fact]
    public void TheilSen_EqualAbscissasOrTooSteep_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => RobustLine.TheilSen([1, 1], [1, 2]));
        Assert.StartsWith(
            "Steepest slope between points of the values must be below 1.8E308",
            Assert.Throws<ArgumentOutOfRangeException>(() => RobustLine.Siegel([0, 1e-300], [0, 1e20])).Message,
            StringComparison.Ordinal
        );
    }

    private static (double[] X, double[] Y) Points(Dyadic data, int seed)
    {
        double[] y = [.. data.Values, 1, 5];
        double[] x = [.. data.Shuffled(seed).Select(value => Math.Round(value)), 60, 61];
        return (x, y);
    }

    private static double[] Slopes(double[] x, double[] y) =>
        [
            .. from i in Enumerable.Range(0, x.Length)
            from j in Enumerable.Range(i + 1, x.Length - i - 1)
            where x[i] != x[j]
            select (y[j] - y[i]) / (x[j] - x[i]),
        ];

    private static double RepeatedMedians(double[] x, double[] y)
    {
        double[][] each =
        [
            .. Enumerable
                .Range(0, x.Length)
                .Select(i =>
                    Enumerable
                        .Range(0, x.Length)
                        .Where(j => x[i] != x[j])
                        .Select(j => (y[j] - y[i]) / (x[j] - x[i]))
                        .ToArray()
                ),
        ];
        return Location.Median([.. each.Where(slopes => slopes.Length > 0).Select(slopes => Location.Median(slopes))]);
    }
}
