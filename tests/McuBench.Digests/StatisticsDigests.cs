using McuBench.Stats;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;
using McuBench.Stats.Hypotheses;
using McuBench.Stats.Intervals;
using McuBench.Stats.Resampling;
using McuBench.Stats.Series;
using McuBench.Stats.Uncertainty;

namespace McuBench.Digests;

/// <summary>Results of every kind of computation in Stats, on values that a seed draws.</summary>
public static class StatisticsDigests
{
    private static readonly Sample First = Drawn(25, 1, 412);
    private static readonly Sample Second = Drawn(31, 2, 413);

    /// <summary>Computes and prints them.</summary>
    public static void Write(DigestWriter digests)
    {
        ArgumentNullException.ThrowIfNull(digests);
        Describe(digests);
        Distribute(digests);
        Compare(digests);
        Resample(digests);
    }

    private static void Describe(DigestWriter digests)
    {
        // Long and of an odd length: the selection by sampling, vector loops and their remainders all run.
        double[] many = Drawn(100_003, 3, 412).Values.ToArray();
        digests.Numbers("drawn values", many);
        digests.Numbers(
            "location",
            Location.Mean(many),
            Location.GeometricMean(many),
            Location.HarmonicMean(many),
            Location.TrimmedMean(many, 0.2),
            Location.Median(many)
        );
        digests.Numbers(
            "scale",
            Scale.StandardDeviation(many),
            Scale.MedianAbsoluteDeviation(many),
            Scale.Sn(many),
            Scale.Qn(many),
            Shape.Skewness(many),
            Shape.ExcessKurtosis(many)
        );
        var sum = new ExactSum();
        sum.Add(many);
        var integral = new UniformIntegral(1e-5);
        integral.Add(many);
        digests.Numbers("exact sum", sum.Value);
        digests.Text("integral", $"{integral.Figures()}");
    }

    private static void Distribute(DigestWriter digests)
    {
        foreach (double p in (double[])[1e-12, 0.025, 0.3, 0.95])
        {
            digests.Numbers(
                FormattableString.Invariant($"quantiles at {p}"),
                Normal.Standard.Quantile(p),
                StudentT.Of(4.5).Quantile(p),
                BetaDistribution.Of(2.5, 7).Quantile(p),
                NoncentralT.Of(9, 1.5).Quantile(p)
            );
        }

        digests.Numbers("studentized range", StudentizedRange.Of(5, 20).UpperTail(3.7));
    }

    private static void Compare(DigestWriter digests)
    {
        Number("Student's interval", MeanInterval.StudentT(First));
        digests.Text("Welch", $"{TwoSample.Welch(First, Second)}");
        digests.Text("Mann-Whitney", $"{TwoSample.MannWhitney(First, Second)}");
        digests.Text("Brunner-Munzel", $"{TwoSample.BrunnerMunzel(First, Second)}");

        void Number(string name, Estimate estimate) =>
            digests.Numbers(
                name,
                estimate.Value,
                estimate.StandardError ?? double.NaN,
                estimate.Interval?.Lower ?? double.NaN,
                estimate.Interval?.Upper ?? double.NaN
            );
    }

    private static void Resample(DigestWriter digests)
    {
        foreach (int threads in (int[])[1, 2, 8])
        {
            foreach (var statistic in (Statistic[])[Statistic.Mean, Statistic.Median])
            {
                var options = new BootstrapOptions { Seed = 7, Threads = threads };
                var estimate = Bootstrap.Of(First, statistic, options).Estimate;
                digests.Numbers(
                    FormattableString.Invariant($"bootstrap of the {statistic.Name}, {threads} threads"),
                    estimate.Value,
                    estimate.StandardError ?? double.NaN,
                    estimate.Interval?.Lower ?? double.NaN,
                    estimate.Interval?.Upper ?? double.NaN
                );
            }
        }

        digests.Numbers("permutation", PermutationTest.MeanDifference(First.Values, Second.Values).PValue);
        InputQuantity[] inputs =
        [
            InputQuantity.FromReadings("run time", First),
            InputQuantity.FromRectangular("current", 30, 32),
        ];
        foreach (int? threads in (int?[])[null, 1, 8])
        {
            var options = new MonteCarloOptions
            {
                Seed = 11,
                Draws = 50_000,
                Threads = threads,
            };
            var result = MonteCarlo.Run(inputs, values => values[0] * values[1], options: options);
            digests.Numbers(FormattableString.Invariant($"Monte Carlo, {threads ?? 0} threads"), result.Sorted);
        }
    }

    private static Sample Drawn(int count, ulong stream, double centre)
    {
        var random = RandomStream.Of(2026, stream);
        double[] values = new double[count];
        for (int i = 0; i < count; i++)
        {
            values[i] = centre + random.Normal();
        }

        return Sample.Of(values);
    }
}
