using System.Globalization;
using FsCheck.Xunit;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Resampling;

namespace McuBench.Stats.Tests.Resampling;

public sealed class BootstrapTests
{
    // An end of a 95 % interval from 99,999 resamples of a nearly normal statistic has a Monte Carlo error of
    // √(0.025·0.975/10⁵)/0.058 = 0.0085 of the standard deviation; twice that in variance for two programs, times √2 for the
    // steps of a BCa end and its own z₀, four of them make 0.07.
    private const double FourErrors = 0.07;

    // A standard deviation of 10⁵ resamples scatters by 0.22 % where they are nearly normal. The ratio of medians has heavier
    // tails: seven seeds of boot scatter by 0.5 %. Four errors of the difference of two programs.
    private const double FourErrorsOfSpread = 0.028;

    private static readonly TwoSampleStatistic s_correlation = TwoSampleStatistic.Of("correlation", Correlation);

    [Theory]
    [InlineData("mean_sd_percentile_basic_bca", "resampling-scipy")]
    [InlineData("ratio_of_means_sd_percentile_basic_bca", "resampling-scipy")]
    [InlineData("ratio_of_means_sd_percentile_basic_bca", "resampling-r")]
    [InlineData("ratio_of_medians_sd_percentile_basic_bca", "resampling-scipy")]
    [InlineData("ratio_of_medians_sd_percentile_basic_bca", "resampling-r")]
    [InlineData("correlation_sd_percentile_basic_bca", "resampling-scipy")]
    [InlineData("correlation_sd_percentile_basic_bca", "resampling-r")]
    public void Of_DataSets_AgreesWithOthersToMonteCarloError(string name, string file)
    {
        double[] expected = ReferenceCase.Of(file, name).Numbers();
        BootstrapMethod[] methods =
        [
            BootstrapMethod.Percentile,
            BootstrapMethod.Basic,
            BootstrapMethod.BiasCorrectedAccelerated,
        ];
        for (int i = 0; i < methods.Length; i++)
        {
            // boot leaves the samples' sizes out of the acceleration of two, and counts no tie as below the estimate.
            if (i == 2 && file == "resampling-r" && name.StartsWith("ratio", StringComparison.Ordinal))
            {
                continue;
            }

            BootstrapResult result = Run(
                name,
                new BootstrapOptions
                {
                    Method = methods[i],
                    Resamples = 99_999,
                    Seed = 3,
                }
            );

            double spread = expected[0];
            Agree.Relative(spread, result.Estimate.StandardError!.Value, FourErrorsOfSpread);
            Assert.Equal(expected[1 + 2 * i], result.Estimate.Interval!.Lower, FourErrors * spread);
            Assert.Equal(expected[2 + 2 * i], result.Estimate.Interval.Upper, FourErrors * spread);
        }
    }

    [Fact]
    public void Of_MedianPercentile_EndsWhereItsExactDistributionDoes()
    {
        // P(median of a resample ≤ x(j)) = P(Bin(15, j/15) ≥ 8): 0.0255 at 0.19, 0.0882 at 0.25; 0.9118 at 0.66, 0.9745 at
        // 0.88. The 5 % and 95 % points lie clear of the steps.
        Interval interval = Bootstrap
            .Of(
                Sample.Of(Datasets.Values("skewed")),
                Statistic.Median,
                new BootstrapOptions { Method = BootstrapMethod.Percentile, Confidence = 0.9 }
            )
            .Estimate.Interval!;

        Assert.Equal(0.25, interval.Lower);
        Assert.Equal(0.88, interval.Upper);
    }

    [Fact]
    public void Of_MeanStudentized_AgreesWithR()
    {
        double[] expected = ReferenceCase.Of("resampling-r", "mean_sd_percentile_basic_bca_studentized").Numbers();

        Interval interval = Bootstrap
            .Of(
                Sample.Of(Datasets.Values("skewed")),
                Statistic.Mean,
                new BootstrapOptions { Method = BootstrapMethod.Studentized, Resamples = 99_999 }
            )
            .Estimate.Interval!;

        // The long tail of the studentized mean: its density at the upper end is a fifth of a normal one's.
        Assert.Equal(expected[7], interval.Lower, FourErrors * expected[0]);
        Assert.Equal(expected[8], interval.Upper, 5 * FourErrors * expected[0]);
    }

    [Fact]
    public void Of_MouseData_GivesTheIdealStandardErrors()
    {
        var reference = ReferenceCase.Of("resampling-data", "cl-mouse");
        var options = new BootstrapOptions { Resamples = 200_000, Seed = 1 };
        foreach (string group in new[] { "treatment", "control" })
        {
            var sample = Sample.Of(reference.Numbers("input", group));
            // Four errors of the standard deviation of as many resamples, whose kurtosis is below 5.
            Agree.Relative(
                reference.Number("recomputed", $"ideal_bootstrap_se_mean_{group}"),
                Bootstrap.Of(sample, Statistic.Mean, options).Estimate.StandardError!.Value,
                0.009
            );
            Agree.Relative(
                reference.Number("recomputed", $"ideal_bootstrap_se_median_{group}"),
                Bootstrap.Of(sample, Statistic.Median, options).Estimate.StandardError!.Value,
                0.009
            );
        }
    }

    [Fact]
    public void Acceleration_LawSchool_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("resampling-data", "cl-law-school");

        Agree.Relative(
            reference.Number("recomputed", "bca_acceleration"),
            Acceleration.Of(reference.Numbers("recomputed", "leave_one_out_r"))!.Value,
            // The values left out are kept to ten digits.
            1e-8
        );
    }

    [Fact]
    public void BiasCorrected_GivenResamples_AgreesWithSciPy()
    {
        var reference = ReferenceCase.Of("resampling-scipy", "bca_of_given_resamples");
        foreach (string name in reference.Names())
        {
            double[] parts = [.. name.Split('_').Select(part => double.Parse(part, CultureInfo.InvariantCulture))];
            double[] values = [.. Enumerable.Range(1, 999).Select(i => i * i * 7919L % 1009 / 10.0)];

            Interval interval = BootstrapEnds.BiasCorrected(values, parts[2], parts[1], parts[0]).Interval!;

            Agree.Relative(reference.Numbers(name), [interval.Lower, interval.Upper], 1e-12);
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 30)]
    public void Of_AnyThreads_IsTheSame(Dyadic data, ulong seed)
    {
        var sample = Sample.Of([.. data.Values, 1, 2]);
        foreach (Statistic statistic in new[] { Statistic.Mean, Statistic.Median, Statistic.Of("last", v => v[^1]) })
        {
            foreach (BootstrapMethod method in Enum.GetValues<BootstrapMethod>())
            {
                var options = new BootstrapOptions
                {
                    Resamples = 199,
                    InnerResamples = 10,
                    Seed = seed,
                    Method = method,
                };

                BootstrapResult one = Bootstrap.Of(sample, statistic, options);
                BootstrapResult three = Bootstrap.Of(sample, statistic, options with { Threads = 3 });

                Assert.Equal(one.Estimate, three.Estimate);
                Assert.Equal(one.Bias, three.Bias);
            }
        }
    }

    [Property(Arbitrary = [typeof(Dyadic)], MaxTest = 50)]
    public void Of_ShiftedAndScaled_FollowsExactly(Dyadic data)
    {
        var options = new BootstrapOptions { Resamples = 199, Method = BootstrapMethod.Percentile };
        Estimate plain = Bootstrap.Of(Sample.Of([.. data.Values, 1, 2]), Statistic.Median, options).Estimate;
        Estimate moved = Bootstrap
            .Of(Sample.Of([.. data.Map(v => 4 * v + 8), 12, 16]), Statistic.Median, options)
            .Estimate;

        Assert.Equal(4 * plain.Value + 8, moved.Value);
        Assert.Equal(plain.Interval is null, moved.Interval is null);
        if (plain.Interval is { } interval)
        {
            Assert.Equal(4 * interval.Lower + 8, moved.Interval!.Lower, 1e-9);
            Assert.Equal(4 * interval.Upper + 8, moved.Interval.Upper, 1e-9);
        }
    }

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void MedianReplicator_AgainstEveryResample_HasTheSameDistribution(int n)
    {
        // Powers of 2, so that each middle pair has a median of its own.
        double[] values = [.. Enumerable.Range(0, n).Select(i => Math.ScaleB(1, i))];
        var exact = new Dictionary<double, int>();
        int all = (int)Math.Pow(n, n);
        for (int code = 0; code < all; code++)
        {
            double[] resample = new double[n];
            int rest = code;
            for (int i = 0; i < n; i++)
            {
                resample[i] = values[rest % n];
                rest /= n;
            }

            double median = Location.Median(resample);
            exact[median] = exact.GetValueOrDefault(median) + 1;
        }

        const int draws = 200_000;
        var replicator = new MedianReplicator(Sample.Of(values));
        var random = RandomStream.Of(5);
        var drawn = new Dictionary<double, int>();
        for (int i = 0; i < draws; i++)
        {
            double median = replicator.Draw(random);
            drawn[median] = drawn.GetValueOrDefault(median) + 1;
        }

        double chiSquare = exact.Sum(pair =>
        {
            double expected = (double)draws * pair.Value / all;
            double difference = drawn.GetValueOrDefault(pair.Key) - expected;
            return difference * difference / expected;
        });
        Assert.Empty(drawn.Keys.Except(exact.Keys));
        // The 0.001 upper quantile at up to 20 degrees of freedom is below 45.4.
        Assert.InRange(chiSquare, 0, 45.4);
    }

    [Fact]
    public void Of_AllEqual_HasNoInterval()
    {
        BootstrapResult result = Bootstrap.Of(Sample.Of(3, 3, 3), Statistic.Mean);

        Assert.Null(result.Estimate.Interval);
        Assert.Null(result.Estimate.StandardError);
        Assert.Equal(
            "All resamples give the same value: no standard error and no interval.",
            Assert.Single(result.Estimate.Notes)
        );
    }

    [Fact]
    public void Of_Greatest_LiesToOneSideOfItsResamplesAndSaysSo()
    {
        // No resample's greatest value is above the sample's, and few are below: half of those equal count, so that it
        // takes a statistic that no resample reaches.
        var order = new BootstrapOptions { Seed = 4 };
        BootstrapResult result = Bootstrap.Of(
            Sample.Of([.. Enumerable.Range(1, 60).Select(i => (double)i)]),
            Statistic.Of("distinct values", Distinct),
            order
        );

        Assert.Null(result.Estimate.Interval);
        Assert.Equal(60, result.Estimate.Value);
        Assert.StartsWith(
            "All resamples lie to one side of the estimate",
            Assert.Single(result.Estimate.Notes),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_TwoValuesStudentized_SaysThatResamplesDontSpread()
    {
        BootstrapResult result = Bootstrap.Of(
            Sample.Of(1, 2),
            Statistic.Mean,
            new BootstrapOptions { Method = BootstrapMethod.Studentized }
        );

        Assert.Null(result.Estimate.Interval);
        Assert.StartsWith(
            "Too many resamples show no spread",
            Assert.Single(result.Estimate.Notes),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_TooFewResamplesForTheConfidence_SaysHowManyWouldDo()
    {
        BootstrapResult result = Bootstrap.Of(
            Sample.Of(1, 2, 4, 8, 16),
            Statistic.Mean,
            new BootstrapOptions
            {
                Resamples = 99,
                Confidence = 0.999,
                Method = BootstrapMethod.Percentile,
            }
        );

        Assert.Contains("1999 resamples or more", Assert.Single(result.Estimate.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_RatioWithZeroBelow_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() =>
            Bootstrap.Of(
                Sample.Of(1, 2),
                Sample.Of(-1, 1, 1),
                TwoSampleStatistic.RatioOf(Statistic.Of("sum", v => Math.Round(3 * Location.Mean(v)) - 1)),
                new BootstrapOptions { Threads = 2 }
            )
        );

        Assert.Equal("statistic", refusal.ParamName);
        Assert.StartsWith("Statistic of ", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Options_OutOfRange_AreRefused()
    {
        Distributions.Refusal.Of(
            () => new BootstrapOptions { Resamples = 98 },
            "Resamples",
            "Count of resamples must be between 99 and 1E+07; was 98."
        );
        Distributions.Refusal.Of(
            () => new BootstrapOptions { Threads = 0 },
            "Threads",
            "Count of threads must be between 1 and 1024; was 0."
        );
        Distributions.Refusal.Of(
            () => new BootstrapOptions { InnerResamples = 1 },
            "InnerResamples",
            "Count of inner resamples must be between 10 and 10000; was 1."
        );
        Assert.Equal(
            "sample",
            Assert.Throws<ArgumentException>(() => Bootstrap.Of(Sample.Of(1), Statistic.Mean)).ParamName
        );
    }

    private static BootstrapResult Run(string name, BootstrapOptions options)
    {
        var x = Sample.Of(Datasets.Values("skewed"));
        var y = Sample.Of(Datasets.Values("outliers"));
        var law = ReferenceCase.Of("resampling-data", "cl-law-school");
        return name.Split("_sd_")[0] switch
        {
            "mean" => Bootstrap.Of(x, Statistic.Mean, options),
            "ratio_of_means" => Bootstrap.Of(x, y, TwoSampleStatistic.RatioOf(Statistic.Mean), options),
            "ratio_of_medians" => Bootstrap.Of(x, y, TwoSampleStatistic.RatioOf(Statistic.Median), options),
            _ => Bootstrap.OfPairs(
                Sample.Of(law.Numbers("input", "lsat")),
                Sample.Of(law.Numbers("input", "gpa")),
                s_correlation,
                options
            ),
        };
    }

    private static double Distinct(ReadOnlySpan<double> values) => values.ToArray().Distinct().Count();

    private static double Correlation(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double meanX = Location.Mean(x);
        double meanY = Location.Mean(y);
        (double xy, double xx, double yy) = (0, 0, 0);
        for (int i = 0; i < x.Length; i++)
        {
            xy += (x[i] - meanX) * (y[i] - meanY);
            xx += (x[i] - meanX) * (x[i] - meanX);
            yy += (y[i] - meanY) * (y[i] - meanY);
        }

        return xy / Math.Sqrt(xx * yy);
    }
}
