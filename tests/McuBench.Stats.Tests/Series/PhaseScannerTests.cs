using FsCheck.Xunit;
using McuBench.Stats.Series;

namespace McuBench.Stats.Tests.Series;

public sealed class PhaseScannerTests
{
    [Fact]
    public void Phases_BetweenTheThresholds_StayWhatTheyWere()
    {
        var scanner = new PhaseScanner(2, 5);
        scanner.Add([1, 3, 4.9, 5, 3, 2, 1.9, 3, 7]);

        Assert.Equal(
            [
                new SeriesPhase(false, 0, 3, 1 + 3 + 4.9, 0, 0),
                new SeriesPhase(true, 3, 3, 10, 0, 0),
                new SeriesPhase(false, 6, 2, 1.9 + 3, 0, 0),
                new SeriesPhase(true, 8, 1, 7, 0, 0),
            ],
            scanner.Phases()
        );
    }

    [Fact]
    public void Phases_ShortChanges_BelongToWhatTheyInterrupt()
    {
        var scanner = new PhaseScanner(1, 1, leastLength: 3);
        scanner.Add([2, 0, 0, 0, 2, 2, 0, 0, 0, 0, 2, 2, 2, 0, 0]);

        Assert.Equal([new SeriesPhase(false, 0, 10, 6, 0, 0), new SeriesPhase(true, 10, 5, 6, 0, 0)], scanner.Phases());
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Phases_AnyPieces_AreThoseFoundOneByOne(Dyadic data, int seed, byte leastLength)
    {
        var random = new Random(seed);
        double[] signal =
        [
            .. Enumerable
                .Range(0, 20)
                .SelectMany(_ => Enumerable.Repeat(data.Values[random.Next(data.Values.Length)], random.Next(1, 90)))
                .Select(value => random.Next(50) == 0 ? double.NaN : value),
        ];
        double[] amounts = [.. signal.Select(value => double.IsNaN(value) ? 1 : value)];
        double[] ones = [.. signal.Select(_ => 1.0)];
        var scanner = new PhaseScanner(-5, 10, 1 + leastLength % 40);
        int at = 0;
        while (at < signal.Length)
        {
            int count = Math.Min(random.Next(1, 200), signal.Length - at);
            scanner.Add(
                signal.AsSpan(at, count),
                amounts.AsSpan(at, count),
                ones.AsSpan(at, count),
                amounts.AsSpan(at, count)
            );
            at += count;
        }

        Assert.Equal(OneByOne(signal, amounts, -5, 10, 1 + leastLength % 40), scanner.Phases());
    }

    [Fact]
    public void Phases_NothingAdded_AreNone()
    {
        var scanner = new PhaseScanner(1, 2);
        scanner.Add([]);

        Assert.Empty(scanner.Phases());
    }

    [Theory]
    [InlineData(double.NaN, 1, 1, "low", "Lower threshold must be a finite number; was NaN.")]
    [InlineData(1, 0.5, 1, "high", "Upper threshold must be at least the lower one of 1; was 0.5.")]
    [InlineData(1, 2, 0, "leastLength", "Least length must be 1 or more; was 0.")]
    public void Constructor_OutOfRange_IsRefused(double low, double high, long length, string name, string message)
    {
        ArgumentException refused = Assert.Throws<ArgumentOutOfRangeException>(
            name,
            () => new PhaseScanner(low, high, length)
        );
        Assert.StartsWith(message, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Add_AmountsThatDoNotFit_AreRefused()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(
            "second",
            () => new PhaseScanner(1, 2).Add([1, 2], [1, 2], [1])
        );
        Assert.StartsWith(
            "Count of amounts must be 2, one for each sample; was 1.",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>The states sample by sample, then the runs, then the short ones given to their neighbours.</summary>
    private static List<SeriesPhase> OneByOne(double[] signal, double[] amounts, double low, double high, int least)
    {
        var runs = new List<SeriesPhase>();
        bool isHigh = signal[0] >= high;
        for (int i = 0; i < signal.Length; i++)
        {
            isHigh = isHigh ? !(signal[i] < low) : signal[i] >= high;
            var one = new SeriesPhase(isHigh, i, 1, amounts[i], 1, amounts[i]);
            if (runs.Count > 0 && runs[^1].IsHigh == isHigh)
            {
                runs[^1] = Joined(runs[^1], one);
            }
            else
            {
                runs.Add(one);
            }
        }

        var phases = new List<SeriesPhase>();
        SeriesPhase? first = null;
        foreach (SeriesPhase run in runs)
        {
            if (phases.Count == 0)
            {
                SeriesPhase joined = first is { } before ? Joined(before, run) with { IsHigh = run.IsHigh } : run;
                first = joined;
                if (joined.Count >= least)
                {
                    phases.Add(joined);
                }
            }
            else if (run.IsHigh == phases[^1].IsHigh || run.Count < least)
            {
                phases[^1] = Joined(phases[^1], run);
            }
            else
            {
                phases.Add(run);
            }
        }

        return phases.Count == 0 ? [first!.Value] : phases;
    }

    private static SeriesPhase Joined(SeriesPhase phase, SeriesPhase more) =>
        phase with
        {
            Count = phase.Count + more.Count,
            FirstSum = phase.FirstSum + more.FirstSum,
            SecondSum = phase.SecondSum + more.SecondSum,
            ThirdSum = phase.ThirdSum + more.ThirdSum,
        };
}
