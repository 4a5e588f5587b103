using McuBench.Core.Conclusions;
using McuBench.Core.Trials;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

/// <summary>Each pattern once where there is one, and not in clean series.</summary>
public class PatternReviewTests
{
    private static readonly double[] Calm = [2.003, 1.998, 2.001, 1.997, 2.002, 1.999, 2.000, 2.001];

    [Fact]
    public void WarmUp_SlowFirstTrial_IsNamedAndKept()
    {
        var series = Series([2.05, .. Calm]);
        var finding = Only(FindingKind.WarmUp, series);

        Assert.Equal(series.Trials[0], Assert.Single(finding.Trials));
        Assert.Equal(2.05 - Calm.Average(), Figure(finding, "first trial less the mean of the others"), 1e-9);
        Assert.Contains("longer than those after it", finding.Evidence, StringComparison.Ordinal);
    }

    [Fact]
    public void WarmUp_SlowStartOfEachSession_IsPooled()
    {
        var trials = Series([2.01, 2.000, 2.001, 1.999, 2.012, 2.001, 1.999, 2.000])
            .Trials.Select((t, i) => t with { Session = i < 4 ? "a" : "b" });
        var finding = Only(FindingKind.WarmUp, new TrialSeries(trials));

        Assert.Equal(2, finding.Trials.Count);
        Assert.Contains("of each of 2 sessions", finding.Evidence, StringComparison.Ordinal);
    }

    [Fact]
    public void WarmUp_OneStepOfTheTimer_IsNone() =>
        None(FindingKind.WarmUp, Series([2.1, 2.0, 2.0, 2.0, 2.0, 2.0], Bench.Tenths));

    [Fact]
    public void TwoClusters_TwoLevels_AreToldWithTheFewer()
    {
        var finding = Only(
            FindingKind.TwoClusters,
            Series([2.00, 2.10, 2.001, 2.101, 1.999, 2.002, 2.099, 2.001, 1.998, 2.1])
        );

        Assert.Equal(6, Figure(finding, "trials in the lower cluster"));
        Assert.Equal(4, Figure(finding, "trials in the upper cluster"));
        Assert.Equal(12.001 / 6, Figure(finding, "mean of the lower"), 1e-9);
        Assert.Equal([2, 4, 7, 10], finding.Trials.Select(t => t.Order!.Value));
    }

    [Fact]
    public void TwoClusters_TwoNeighbouringSteps_AreNone() =>
        None(FindingKind.TwoClusters, Series([2.0, 2.1, 2.0, 2.1, 2.0, 2.1, 2.0, 2.1, 2.0, 2.1], Bench.Tenths));

    [Fact]
    public void Throttling_StepUp_SaysFromWhereAndHowWarm()
    {
        double[] seconds = [.. Calm, .. Calm.Select(s => s * 1.05)];
        var trials = Series(seconds)
            .Trials.Select((t, i) => t with { Temperature = Temperature.FromKelvins(i < Calm.Length ? 300 : 320) });
        var finding = Only(FindingKind.Throttling, new TrialSeries(trials));

        Assert.Equal(Calm.Length, finding.Trials.Count);
        Assert.Equal(9, finding.Trials[0].Order);

        // Pettitt's U: every pair across the step, 8 × 8.
        Assert.Equal(64, Figure(finding, "Pettitt's U"));
        Assert.Contains("take 5 % longer", finding.Evidence, StringComparison.Ordinal);
        Assert.Contains("The mean temperature is 20 K above that before.", finding.Evidence, StringComparison.Ordinal);
    }

    [Fact]
    public void Throttling_StepDown_IsNone() =>
        None(FindingKind.Throttling, Series([.. Calm.Select(s => s * 1.05), .. Calm]));

    [Fact]
    public void TemperatureDrift_Rising_SaysByHowMuch()
    {
        var trials = Series(Calm).Trials.Select((t, i) => t with { Temperature = Temperature.FromKelvins(295 + i) });
        var finding = Only(FindingKind.TemperatureDrift, new TrialSeries(trials));

        Assert.Equal(7, Figure(finding, "change over the trials"), 1e-9);
        Assert.Equal(28, Figure(finding, "Mann–Kendall S"));
    }

    [Fact]
    public void TemperatureDrift_ATenthOfAKelvin_IsNone()
    {
        var trials = Series(Calm)
            .Trials.Select((t, i) => t with { Temperature = Temperature.FromKelvins(295 + 0.1 * i) });

        None(FindingKind.TemperatureDrift, new TrialSeries(trials));
    }

    /// <summary>By hand: means 2 and 2.1, three each with a variance of 1e-4 inside; F = 3 · 2 · 0.05² / 1e-4 = 150.</summary>
    [Theory]
    [InlineData(FindingKind.SessionsDiffer)]
    [InlineData(FindingKind.SpecimensDiffer)]
    [InlineData(FindingKind.BuildsDiffer)]
    public void Levels_ThatDiffer_AreFoundByF(FindingKind kind)
    {
        var finding = Only(kind, new TrialSeries(Level(kind, [1.99, 2.00, 2.01, 2.09, 2.10, 2.11])));

        Assert.Equal(150, Figure(finding, "F"), 1e-6);
        Assert.Contains("from 2 s (", finding.Evidence, StringComparison.Ordinal);
        Assert.Contains("to 2.1 s (", finding.Evidence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(FindingKind.SessionsDiffer)]
    [InlineData(FindingKind.SpecimensDiffer)]
    [InlineData(FindingKind.BuildsDiffer)]
    public void Levels_Alike_AreNotFound(FindingKind kind) =>
        None(kind, new TrialSeries(Level(kind, [1.99, 2.00, 2.01, 2.00, 2.01, 1.99])));

    /// <summary>Each pattern is to show in about 1 % of clean series, at most; three simulation errors allowed.</summary>
    [Theory]
    [InlineData(8, false)]
    [InlineData(12, true)]
    [InlineData(30, false)]
    public void Of_CleanSeries_FindsHardlyAnything(int n, bool even)
    {
        const int studies = 1000;
        var found = new Dictionary<FindingKind, int>();
        for (var i = 0; i < studies; i++)
        {
            var random = RandomStream.Of(19, (ulong)i);
            double[] seconds =
            [
                .. Enumerable.Range(0, n).Select(_ => 1 + 0.01 * (even ? random.Uniform() : random.Normal())),
            ];
            foreach (var finding in PatternReview.Of(Series(seconds)))
            {
                found[finding.Kind] = found.GetValueOrDefault(finding.Kind) + 1;
            }
        }

        Assert.All(found, f => Assert.True(f.Value <= 10 + 3 * Math.Sqrt(10), $"{f.Key}: {f.Value}"));
    }

    private static IEnumerable<Trial> Level(FindingKind kind, double[] seconds) =>
        Series(seconds)
            .Trials.Select(
                (t, i) =>
                {
                    var name = i < 3 ? "a" : "b";
                    var plain = t with { Order = null };
                    return kind switch
                    {
                        FindingKind.SessionsDiffer => plain with { Session = name },
                        FindingKind.SpecimensDiffer => plain with { Specimen = name },
                        _ => plain with { Build = name },
                    };
                }
            );

    private static TrialSeries Series(double[] seconds, TrialTimer? timer = null) =>
        Bench.Series(Bench.At(Bench.Marl, 100), timer ?? Bench.Fine, seconds);

    private static Finding Only(FindingKind kind, TrialSeries series) =>
        Assert.Single(PatternReview.Of(series), f => f.Kind == kind);

    private static void None(FindingKind kind, TrialSeries series) =>
        Assert.DoesNotContain(PatternReview.Of(series), f => f.Kind == kind);

    private static double Figure(Finding finding, string name) => finding.Figures.Single(f => f.Name == name).Value;
}
