using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Resampling;

/// <summary>Standard errors and confidence intervals of any statistic by resampling the data (efron-1979;
/// davison-hinkley-1997, ch. 5).</summary>
/// <remarks>
/// <para>The target is the statistic's value in the population that the values are drawn from. Resamples can't show what
/// the data doesn't: below some 30 values the intervals of a mean, the studentized one apart, hold less often than they say,
/// and those of a median below 10; under strong skew more are needed. No standard deviation of resamples makes up for the
/// factor √((n − 1)/n) that a mean's is short of. For a few values of a mean, take its t interval. Basic and studentized
/// intervals of a median hold far less often than they say at any count: take BCa or percentile ones.</para>
/// <para>Where resamples all give one value, or all lie to one side of the estimate, there is no interval and a note says
/// why. Each resample draws from a random stream of its own number, so that results don't depend on the number of
/// threads.</para>
/// <para>Cost: a resample costs O(n) draws of some nanoseconds and the statistic; a median O(log n); BCa adds n statistics
/// for the jackknife, studentized intervals of other statistics than means the inner resamples of each resample.</para>
/// </remarks>
public static class Bootstrap
{
    /// <summary>A bootstrap of a statistic of independent values.</summary>
    /// <param name="sample">The sample, 2 values or more.</param>
    /// <param name="statistic">The statistic.</param>
    /// <param name="options">What is asked; <see cref="BootstrapOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException">Sample or statistic is null.</exception>
    /// <exception cref="ArgumentException">The sample has one value, or the statistic isn't finite for the data or a
    /// resample.</exception>
    public static BootstrapResult Of(Sample sample, Statistic statistic, BootstrapOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sample);
        ArgumentNullException.ThrowIfNull(statistic);
        Check.AtLeast(sample.Count, 2, nameof(sample));
        options ??= BootstrapOptions.Default;
        return BootstrapRun.Of(
            new BootstrapProblem(
                statistic.Value(sample.Values),
                sample.Count,
                statistic.Name,
                "",
                Replicators(sample, statistic, options),
                MeanError(sample, statistic),
                () => Acceleration.Of(Jackknife.Of(sample, statistic))
            ),
            options
        );
    }

    /// <summary>A bootstrap of a statistic of values that belong together in strata, in time, or in specimens and
    /// sessions.</summary>
    /// <param name="sample">The sample, 2 values or more.</param>
    /// <param name="scheme">What a resample keeps together.</param>
    /// <param name="statistic">The statistic.</param>
    /// <param name="options">What is asked; <see cref="BootstrapOptions.Default"/> where null. Not studentized, and for
    /// moving blocks not BCa either: their standard error and jackknife aren't those of independent values.</param>
    /// <exception cref="ArgumentNullException">Sample, scheme or statistic is null.</exception>
    /// <exception cref="ArgumentException">The sample has one value or doesn't fit the scheme, the method doesn't go with the
    /// scheme, or the statistic isn't finite for the data or a resample.</exception>
    public static BootstrapResult Of(
        Sample sample,
        ResamplingScheme scheme,
        Statistic statistic,
        BootstrapOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(sample);
        ArgumentNullException.ThrowIfNull(scheme);
        ArgumentNullException.ThrowIfNull(statistic);
        Check.AtLeast(sample.Count, 2, nameof(sample));
        options ??= BootstrapOptions.Default;
        if (ReferenceEquals(scheme, ResamplingScheme.Independent))
        {
            return Of(sample, statistic, options);
        }

        scheme.Accept(sample.Count);
        int[][][]? units = scheme.JackknifeUnits(sample.Count);
        if (
            options.Method == BootstrapMethod.Studentized
            || (options.Method == BootstrapMethod.BiasCorrectedAccelerated && units is null)
        )
        {
            throw new ArgumentException(
                $"Method must be Percentile or Basic{(units is null ? "" : " or BiasCorrectedAccelerated")}"
                    + $" for a {scheme.Name} bootstrap; was {options.Method}.",
                nameof(options)
            );
        }

        return BootstrapRun.Of(
            new BootstrapProblem(
                statistic.Value(sample.Values),
                sample.Count,
                statistic.Name,
                $", {scheme.Name}",
                () => new GatheringReplicator(sample, scheme, statistic, options.InnerResamples),
                null,
                () => Acceleration.Of(Jackknife.Of(sample, statistic, units!))
            ),
            options
        );
    }

    /// <summary>A bootstrap of a statistic of two independent samples.</summary>
    /// <param name="first">The first sample, 2 values or more.</param>
    /// <param name="second">The second sample, 2 values or more.</param>
    /// <param name="statistic">The statistic.</param>
    /// <param name="options">What is asked; <see cref="BootstrapOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException">A sample or the statistic is null.</exception>
    /// <exception cref="ArgumentException">A sample has one value, or the statistic isn't finite for the data or a
    /// resample.</exception>
    public static BootstrapResult Of(
        Sample first,
        Sample second,
        TwoSampleStatistic statistic,
        BootstrapOptions? options = null
    )
    {
        Accept(first, second, statistic);
        options ??= BootstrapOptions.Default;
        Func<Replicator> replicator = () =>
            new TwoSampleReplicator(first, second, statistic, inPairs: false, options.InnerResamples);
        double? error = null;
        if (statistic.Each is { } each)
        {
            error = RatioOrDifferenceError(first, second, statistic);
            if (options.Method != BootstrapMethod.Studentized || error is not null)
            {
                Func<Replicator> a = Replicators(first, each, options);
                Func<Replicator> b = Replicators(second, each, options);
                replicator = () => new CombinedReplicator(a(), b(), statistic);
            }
        }

        return BootstrapRun.Of(
            new BootstrapProblem(
                statistic.Value(first.Values, second.Values),
                first.Count + second.Count,
                statistic.Name,
                "",
                replicator,
                error,
                () => TwoSampleAcceleration(first, second, statistic)
            ),
            options
        );
    }

    /// <summary>A bootstrap of a statistic of pairs, such as a correlation: pairs are drawn whole.</summary>
    /// <param name="first">The first value of each pair, 2 pairs or more.</param>
    /// <param name="second">The second value of each pair, as many.</param>
    /// <param name="statistic">The statistic.</param>
    /// <param name="options">What is asked; <see cref="BootstrapOptions.Default"/> where null.</param>
    /// <exception cref="ArgumentNullException">A sample or the statistic is null.</exception>
    /// <exception cref="ArgumentException">There is one pair, the counts differ, or the statistic isn't finite for the data
    /// or a resample.</exception>
    public static BootstrapResult OfPairs(
        Sample first,
        Sample second,
        TwoSampleStatistic statistic,
        BootstrapOptions? options = null
    )
    {
        Accept(first, second, statistic);
        Check.SameCount(second.Count, first.Count, "Count of second values", "first value", nameof(second));
        options ??= BootstrapOptions.Default;
        return BootstrapRun.Of(
            new BootstrapProblem(
                statistic.Value(first.Values, second.Values),
                first.Count,
                statistic.Name,
                ", pairs",
                () => new TwoSampleReplicator(first, second, statistic, inPairs: true, options.InnerResamples),
                null,
                () => Acceleration.Of(PairsLeftOut(first.Values, second.Values, statistic))
            ),
            options
        );
    }

    private static void Accept(Sample first, Sample second, TwoSampleStatistic statistic)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentNullException.ThrowIfNull(statistic);
        Check.AtLeast(first.Count, 2, nameof(first));
        Check.AtLeast(second.Count, 2, nameof(second));
    }

    /// <summary>The quickest way to the resamples of independent values.</summary>
    private static Func<Replicator> Replicators(Sample sample, Statistic statistic, BootstrapOptions options)
    {
        bool studentized = options.Method == BootstrapMethod.Studentized;
        if (ReferenceEquals(statistic, Statistic.Mean))
        {
            // Holds no scratch space, so one will do for all threads; likewise below.
            var means = new MeanReplicator(sample);
            return () => means;
        }

        if (ReferenceEquals(statistic, Statistic.Median) && !studentized)
        {
            var medians = new MedianReplicator(sample);
            return () => medians;
        }

        return () => new GatheringReplicator(sample, ResamplingScheme.Independent, statistic, options.InnerResamples);
    }

    private static double? MeanError(Sample sample, Statistic statistic) =>
        ReferenceEquals(statistic, Statistic.Mean)
            ? SquaredDeviations.Of(sample.Values).RootOver(sample.Count - 1) / Math.Sqrt(sample.Count)
            : null;

    private static double? RatioOrDifferenceError(Sample first, Sample second, TwoSampleStatistic statistic)
    {
        if (MeanError(first, statistic.Each!) is not { } a || MeanError(second, statistic.Each!) is not { } b)
        {
            return null;
        }

        double denominator = SquaredDeviations.MeanAlone(second.Values);
        double ratio = SquaredDeviations.MeanAlone(first.Values) / denominator;
        return statistic.IsRatio ? double.Hypot(a, ratio * b) / Math.Abs(denominator) : double.Hypot(a, b);
    }

    private static double? TwoSampleAcceleration(Sample first, Sample second, TwoSampleStatistic statistic)
    {
        if (statistic.Each is { } each)
        {
            double a = each.Value(first.Values);
            double b = each.Value(second.Values);
            return Acceleration.Of(
                [.. Jackknife.Of(first, each).Select(left => statistic.Combine(left, b))],
                [.. Jackknife.Of(second, each).Select(left => statistic.Combine(a, left))]
            );
        }

        return Acceleration.Of(
            Jackknife.Each(first.Values, rest => statistic.Value(rest, second.Values)),
            Jackknife.Each(second.Values, rest => statistic.Value(first.Values, rest))
        );
    }

    private static double[] PairsLeftOut(
        ReadOnlySpan<double> first,
        ReadOnlySpan<double> second,
        TwoSampleStatistic statistic
    )
    {
        double[] found = new double[first.Length];
        double[] a = first[1..].ToArray();
        double[] b = second[1..].ToArray();
        for (int i = 0; i < found.Length; i++)
        {
            found[i] = statistic.Value(a, b);
            if (i < a.Length)
            {
                a[i] = first[i];
                b[i] = second[i];
            }
        }

        return found;
    }
}
