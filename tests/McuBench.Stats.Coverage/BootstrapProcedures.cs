using McuBench.Stats.Resampling;
using static McuBench.Stats.Coverage.Procedure;

namespace McuBench.Stats.Coverage;

/// <summary>The kinds of bootstrap interval, each of 999 resamples.</summary>
internal static class BootstrapProcedures
{
    private const int Resamples = 999;

    private static readonly TwoSampleStatistic RatioOfMedians = TwoSampleStatistic.RatioOf(Statistic.Median);
    private static readonly TwoSampleStatistic RatioOfMeans = TwoSampleStatistic.RatioOf(Statistic.Mean);

    private static readonly Promise None = new(Shapes.None, Elsewhere: "held less often than said at any count");

    private static readonly Promise OfManyValues = new(
        Shapes.Normal,
        From: 30,
        Elsewhere: "fewer than 30 values, and skew: held less often than said"
    );

    private static readonly Promise OfMedian = new(
        Shapes.Continuous | Shapes.Tied,
        From: 10,
        Elsewhere: "fewer than 10 values: held less often than said"
    );

    private static readonly Promise OfMeans = new(
        Shapes.Normal,
        From: 5,
        Elsewhere: "fewer than 5 values, and strong skew: held less often than said"
    );

    /// <summary>All of them.</summary>
    public static IReadOnlyList<Procedure> All { get; } =
    [
        .. Kinds(BootstrapMethod.BiasCorrectedAccelerated, "BCa", OfManyValues, OfMedian),
        .. Kinds(BootstrapMethod.Percentile, "percentile", OfManyValues, OfMedian),
        .. Kinds(BootstrapMethod.Basic, "basic", OfManyValues, None),
        .. Kinds(BootstrapMethod.Studentized, "studentized", OfMeans, None),
    ];

    private static IEnumerable<Procedure> Kinds(
        BootstrapMethod method,
        string kind,
        Promise ofMeans,
        Promise ofMedians
    ) =>
        [
            Interval(
                $"Bootstrap.Of, mean, {kind}",
                "mean",
                s => Bootstrap.Of(s.First, Statistic.Mean, Options(s, method)).Estimate,
                s => s.Population.Mean,
                ofMeans
            ) with
            {
                OneIn = 10,
            },
            Interval(
                $"Bootstrap.Of, median, {kind}",
                "median",
                s => Bootstrap.Of(s.First, Statistic.Median, Options(s, method)).Estimate,
                s => s.Population.Median,
                ofMedians
            ) with
            {
                OneIn = OneInOfMedians(method),
            },
            Interval(
                $"Bootstrap.Of, ratio of means, {kind}",
                "ratio of means",
                s => Bootstrap.Of(s.Scaled, s.Second, RatioOfMeans, Options(s, method)).Estimate,
                _ => Scene.Factor,
                ofMeans
            ) with
            {
                OneIn = 10,
            },
            Interval(
                $"Bootstrap.Of, ratio of medians, {kind}",
                "ratio of medians",
                s => Bootstrap.Of(s.Scaled, s.Second, RatioOfMedians, Options(s, method)).Estimate,
                _ => Scene.Factor,
                ofMedians
            ) with
            {
                OneIn = OneInOfMedians(method),
            },
        ];

    /// <summary>A median has no formula for its standard error, so each resample is resampled for it.</summary>
    private static int OneInOfMedians(BootstrapMethod method) => method == BootstrapMethod.Studentized ? 100 : 10;

    private static BootstrapOptions Options(Scene scene, BootstrapMethod method) =>
        new()
        {
            Method = method,
            Resamples = Resamples,
            Seed = scene.Seed,
        };
}
