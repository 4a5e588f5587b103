using FsCheck.Xunit;
using McuBench.Core.Boards;
using McuBench.Core.Planning;
using McuBench.Core.Reporting;
using McuBench.Core.Studies;
using McuBench.Core.Tests.Conclusions;
using UnitsNet;

namespace McuBench.Core.Tests.Planning;

public class BenchOrderTests
{
    private static readonly Setup[] Setups =
    [
        Bench.At(Bench.Marl, 100),
        Bench.At(Bench.Marl, 200),
        Bench.At(Bench.Tuff, 100),
    ];

    [Property]
    public bool RandomisedBlocks_EachBlock_HoldsEachSetupOnce(byte trials, byte sessions, ulong seed)
    {
        var order = Order(1 + trials % 6, 1 + sessions % 4, seed);

        return order
                .Steps.GroupBy(s => (s.Session, s.Block))
                .All(b => b.Select(s => s.Setup.Name).Distinct().Count() == 3 && b.Count() == 3)
            && order.Steps.Select(s => s.Order).SequenceEqual(Enumerable.Range(1, order.Steps.Count))
            && order == Order(1 + trials % 6, 1 + sessions % 4, seed);
    }

    [Fact]
    public void RandomisedBlocks_OtherSeed_IsAnotherOrder() =>
        Assert.NotEqual(Order(10, 1, 1).Steps, Order(10, 1, 2).Steps);

    [Fact]
    public void ExpectedTime_AddsRunsPausesChangesAndStarts()
    {
        var order = Order(2, 2, 7);
        var changes = order.Steps.Zip(order.Steps.Skip(1)).Count(p => p.First.Setup.Name != p.Second.Setup.Name);
        var time = order.ExpectedTime(
            _ => Duration.FromSeconds(10),
            new BenchTimes
            {
                Pause = Duration.FromSeconds(1),
                Change = Duration.FromSeconds(100),
                Start = Duration.FromSeconds(600),
            }
        );

        Assert.Equal(12 * 11 + 100 * changes + 2 * 600, time.Seconds, 1e-9);
        Assert.Equal(120, order.ExpectedTime(_ => Duration.FromSeconds(10)).Seconds, 1e-9);
    }

    [Fact]
    public void WriteCsv_FilledIn_ReadsAsTheTrials()
    {
        var order = Order(2, 1, 3);
        using var writer = new StringWriter();
        BenchChecklist.WriteCsv(writer, order);
        var lines = writer.ToString().TrimEnd('\n').Split('\n');
        var filled = lines.Skip(1).Select(l => l.Replace(",,,,", ",1.5,no. 1,,21", StringComparison.Ordinal));
        var study = new Study(
            "study",
            Setups.Select(s => s.Board).Distinct(),
            Setups,
            [Bench.Frames],
            [Bench.Fine],
            [],
            [],
            []
        );

        var trials = TrialCsv.Read(new StringReader(string.Join('\n', filled.Prepend(lines[0]))), "list.csv", study);

        Assert.Equal("order,session,setup,workload,timer,run time [s],specimen,build,temperature [°C]", lines[0]);
        Assert.Equal(order.Steps.Select(s => s.Setup), trials.Select(t => t.Setup));
        Assert.Equal(order.Steps.Select(s => (int?)s.Order), trials.Select(t => t.Order));
        Assert.All(trials, t => Assert.Equal(1.5, t.RunTime.Seconds));
    }

    [Fact]
    public void WriteText_OneLineATrial_EndsWithTheSeed()
    {
        var order = Order(1, 2, 3);
        using var writer = new StringWriter();
        BenchChecklist.WriteText(writer, order);
        var lines = writer.ToString().TrimEnd('\n').Split('\n');

        Assert.Equal(2 + 6 + 1, lines.Length);
        Assert.Equal("session 1, frame checksum, fine timer", lines[0]);
        Assert.Equal($"[ ] 1  block 1  {order.Steps[0].Setup.Name}  ________", lines[1]);
        Assert.Equal("Order drawn in randomised blocks, seed 3.", lines[^1]);
    }

    [Fact]
    public void WriteMarkdown_HasATableASession()
    {
        using var writer = new StringWriter();
        BenchChecklist.WriteMarkdown(writer, Order(1, 2, 3));
        var text = writer.ToString();

        Assert.Contains("Session 1, timed with fine timer.", text, StringComparison.Ordinal);
        Assert.Contains("Session 2, timed with fine timer.", text, StringComparison.Ordinal);
        Assert.Contains("Marl 200", text, StringComparison.Ordinal);
    }

    [Fact]
    public void RandomisedBlocks_OneSetup_Refuses() =>
        Refusal.Is<ArgumentException>(
            () => BenchOrder.RandomisedBlocks([Setups[0]], Bench.Frames, Bench.Fine, 2, 1, 1),
            "setups",
            "Setups must be at least two with distinct names; were Marl 100."
        );

    [Fact]
    public void RandomisedBlocks_NoTrial_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => Order(0, 1, 1),
            "trialsPerSession",
            "Trials a session must be at least 1; was 0."
        );

    [Fact]
    public void RandomisedBlocks_TooMany_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => Order(1000, 1000, 1),
            "sessions",
            "Trials must be at most 1000000 in all; were 3000000."
        );

    [Fact]
    public void BenchTimes_Negative_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = new BenchTimes { Pause = Duration.FromSeconds(-1) },
            "Pause",
            "Pause must not be negative; was -1 s."
        );

    private static BenchOrder Order(int trials, int sessions, ulong seed) =>
        BenchOrder.RandomisedBlocks(Setups, Bench.Frames, Bench.Fine, trials, sessions, seed);
}
