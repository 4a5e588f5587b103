using System.IO.Pipelines;
using System.Text;
using FsCheck.Xunit;
using McuBench.Core.Boards;
using McuBench.Core.Capture;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Tests.Capture;

public sealed class BoardLinesTests
{
    private static readonly LinePattern Run = new(
        @"run (?<sequence>\d+): (?<items>\d+) items in (?<time>[\d.]+) (?<unit>[a-z]+)( sum (?<checksum>\w+))?"
    );

    private static readonly LinePattern Counter = new(@"t=(?<ticks>\d+)") { TickRate = Frequency.FromMegahertz(1) };

    [Fact]
    public void Read_LinesOfARun_GivesTheirFigures()
    {
        var line = Only("run 7: 1000 items in 412.1 ms sum 9c3a\n", Run);

        Assert.Equal(BoardLineKind.Reading, line.Kind);
        Assert.Equal(1, line.Number);
        Assert.Equal(0.4121, Si.Seconds(line.Reading!.RunTime!.Value));
        Assert.Equal(7, line.Reading.Sequence);
        Assert.Equal(1000, line.Reading.Items);
        Assert.Equal("9c3a", line.Reading.Checksum);
        Assert.Null(line.Reading.Ticks);
        Assert.Null(line.Reading.Marker);
    }

    [Fact]
    public void Read_Ticks_AreDividedByTheirRate()
    {
        var reading = Only("t=2400317\n", Counter).Reading!;

        Assert.Equal(2400317ul, reading.Ticks);
        Assert.Equal(2.400317, Si.Seconds(reading.RunTime!.Value));
    }

    [Fact]
    public void Read_TicksWithoutRate_GiveNoRunTime()
    {
        var reading = Only("t=12\n", new LinePattern(@"t=(?<ticks>\d+)")).Reading!;

        Assert.Equal(12ul, reading.Ticks);
        Assert.Null(reading.RunTime);
    }

    [Theory]
    [InlineData("a\nt=1\n", 2)]
    [InlineData("a\r\nt=1\r\n", 2)]
    [InlineData("a\rt=1\r", 2)]
    [InlineData("a\n\rt=1\n\r", 2)]
    [InlineData("\r\n\r\n\na\r\r\n\nt=1\n", 2)]
    [InlineData("a\n\0\0t=\0" + "1\n", 2)]
    public void Read_WhateverEndsLines_GivesTheSame(string text, int number)
    {
        var lines = BoardLines.Read(new StringReader(text), Counter).ToArray();

        Assert.Equal(["a", "t=1"], lines.Select(line => line.Text));
        Assert.Equal([BoardLineKind.Other, BoardLineKind.Reading], lines.Select(line => line.Kind));
        Assert.Equal(number, lines[1].Number);
    }

    [Fact]
    public void Read_TextEndsInTheMiddleOfALine_DoesNotReadIt()
    {
        var line = Only("t=24003", Counter);

        Assert.Equal(BoardLineKind.Unfinished, line.Kind);
        Assert.Null(line.Reading);
        Assert.Equal("t=24003", line.Text);
    }

    [Fact]
    public void Read_BootMessageInsideALine_IsNotTakenForAShorterFigure()
    {
        var lines = BoardLines.Read(new StringReader("t=24boot v3\nt=2400317\n"), Counter).ToArray();

        Assert.Equal([BoardLineKind.Other, BoardLineKind.Reading], lines.Select(line => line.Kind));
    }

    [Theory]
    [InlineData("run 1: 0 items in 1 ms", "Work items must be a whole number above zero; was \"0\".")]
    [InlineData(
        "run 1: 5 items in 0.0 ms",
        "Run time must be above zero; was 0 s. The run is too short for the timer: do more work items."
    )]
    [InlineData(
        "run 99999999999999999999: 5 items in 1 ms",
        "Sequence must be a whole number; was \"99999999999999999999\"."
    )]
    public void Read_MatchThatIsNoFigure_IsKeptWithItsProblem(string text, string problem)
    {
        var line = Only(text + "\n", Run);

        Assert.Equal(BoardLineKind.Unusable, line.Kind);
        Assert.Equal(text, line.Text);
        Assert.Equal(problem, line.Problem);
    }

    [Fact]
    public void Read_CurrentWhereATimeIsWanted_IsRefusedInTheParsersWords()
    {
        var line = Only("run 1: 5 items in 12 ma\n", Run);

        Assert.Equal(BoardLineKind.Unusable, line.Kind);
        Assert.False(QuantityText.TryParseDuration("12 ma", out _, out var error));
        Assert.Equal(error!.Message, line.Problem);
    }

    [Fact]
    public void Read_TicksBeyond64Bits_AreUnusable() =>
        Assert.Equal(
            "Ticks must be a whole number of at most 64 bits; was \"18446744073709551616\".",
            Only("t=18446744073709551616\n", Counter).Problem
        );

    [Fact]
    public void Read_LineOfAMegabyte_IsKeptWholeWhereLinesMayBeThatLong()
    {
        var text = new string('x', 1_000_000);
        var options = new BoardLineOptions { LongestLine = 1 << 20 };

        var line = Assert.Single(BoardLines.Read(new StringReader(text + "\n"), Counter, options));

        Assert.Equal(text, line.Text);
        Assert.Equal(BoardLineKind.Other, line.Kind);
    }

    [Fact]
    public void Read_LineTooLong_KeepsItsBeginningAndCountsTheRest()
    {
        var lines = BoardLines.Read(new StringReader(new string('x', 1_000_000) + "\nt=1\n"), Counter).ToArray();

        Assert.Equal(BoardLineKind.Overlong, lines[0].Kind);
        Assert.Equal(65_536, lines[0].Text.Length);
        Assert.Equal(1_000_000 - 65_536, lines[0].CharactersDropped);
        Assert.Equal(BoardLineKind.Reading, lines[1].Kind);
    }

    [Fact]
    public void Options_LongestLineOutOfRange_IsRefused() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = new BoardLineOptions { LongestLine = 15 },
            "LongestLine",
            "Longest line must be from 16 to 16777216 characters; was 15."
        );

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(5000)]
    public async Task ReadAsync_BytesInPieces_GiveTheLinesOfTheWhole(int piece)
    {
        var text = "boot µ-lake\r\nt=17\r\n\r\nnoise \u2713\nt=18\nt=1";
        await using var stream = new Pieces(Encoding.UTF8.GetBytes(text), piece);

        var lines = await All(BoardLines.ReadAsync(stream, Counter, cancellationToken: Token));

        Assert.Equal(BoardLines.Read(new StringReader(text), Counter), lines);
        Assert.Equal("boot µ-lake", lines[0].Text);
    }

    [Fact]
    public async Task ReadAsync_BytesThatAreNoText_BecomeReplacementCharacters()
    {
        await using var stream = new MemoryStream([0xFF, 0xFE, (byte)'\n', .. "t=5\n"u8, 0xE2, 0x9C]);

        var lines = await All(BoardLines.ReadAsync(stream, Counter, cancellationToken: Token));

        Assert.Equal(["\uFFFD\uFFFD", "t=5", "\uFFFD"], lines.Select(line => line.Text));
    }

    [Fact]
    public async Task ReadAsync_OtherEncoding_IsTheOptions()
    {
        await using var stream = new MemoryStream([0xB5, (byte)'\n']);
        var options = new BoardLineOptions { Encoding = Encoding.Latin1 };

        var line = Assert.Single(await All(BoardLines.ReadAsync(stream, Counter, options, Token)));

        Assert.Equal("\u00B5", line.Text);
    }

    [Fact]
    public async Task ReadAsync_Pipe_GivesEachLineAsItCompletes()
    {
        var pipe = new Pipe();
        await pipe.Writer.WriteAsync("t=1\nt=2"u8.ToArray(), Token);
        await using var lines = BoardLines
            .ReadAsync(pipe.Reader, Counter, cancellationToken: Token)
            .GetAsyncEnumerator(Token);

        Assert.True(await lines.MoveNextAsync());
        Assert.Equal("t=1", lines.Current.Text);
        var next = lines.MoveNextAsync();
        Assert.False(next.IsCompleted);
        await pipe.Writer.WriteAsync("5\n"u8.ToArray(), Token);
        Assert.True(await next);
        Assert.Equal("t=25", lines.Current.Text);
    }

    [Fact]
    public async Task ReadAsync_Cancelled_Ends()
    {
        using var cancel = CancellationTokenSource.CreateLinkedTokenSource(Token);
        var pipe = new Pipe();
        await using var lines = BoardLines
            .ReadAsync(pipe.Reader, Counter, cancellationToken: cancel.Token)
            .GetAsyncEnumerator(Token);
        var next = lines.MoveNextAsync();

        await cancel.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(async () => await next);
    }

    [Fact]
    public async Task ReadAsync_PortVanishes_GivesTheLinesBeforeAndThenTheFault()
    {
        await using var stream = new Pieces("t=1\nt=2"u8.ToArray(), 3)
        {
            EndsWith = new IOException("The port is gone."),
        };
        var seen = new List<BoardLine>();

        var gone = await Assert.ThrowsAsync<IOException>(async () =>
        {
            await foreach (var line in BoardLines.ReadAsync(stream, Counter, cancellationToken: Token))
            {
                seen.Add(line);
            }
        });

        Assert.Equal("The port is gone.", gone.Message);
        Assert.Equal("t=1", Assert.Single(seen).Text);
    }

    [Property(MaxTest = 300)]
    public void ReadAsync_AnyBytes_NeverThrowsAndKeepsEveryLine(byte[] bytes, FsCheck.PositiveInt piece)
    {
        using var stream = new Pieces(bytes, piece.Get);
        var options = new BoardLineOptions { Encoding = Encoding.Latin1 };

        var lines = All(BoardLines.ReadAsync(stream, Counter, options)).GetAwaiter().GetResult();

        var expected = Encoding
            .Latin1.GetString(bytes)
            .Replace("\0", null)
            .Split('\r', '\n')
            .Where(line => line.Length > 0);
        Assert.Equal(expected, lines.Select(line => line.Text));
        Assert.Equal(Enumerable.Range(1, lines.Count), lines.Select(line => (int)line.Number));
    }

    [Fact]
    public void ToTrial_Reading_IsATrialWithItsChecksum()
    {
        var reading = Only("run 7: 1000 items in 412.1 ms sum 9c3a\n", Run).Reading!;

        var trial = reading.ToTrial(Sketch.MarlAt200, Sketch.Echo, Sketch.Microseconds);

        Assert.Equal(0.4121, Si.Seconds(trial.RunTime));
        Assert.Equal("9c3a", trial.OutputChecksum);
    }

    [Fact]
    public void ToTrial_OtherNumberOfItems_IsRefused()
    {
        var reading = Only("run 7: 999 items in 412.1 ms\n", Run).Reading!;

        var refused = Assert.Throws<InvalidOperationException>(() =>
            reading.ToTrial(Sketch.MarlAt200, Sketch.Echo, Sketch.Microseconds)
        );

        Assert.Equal(
            "The board did 999 work items, and workload \"echo spectrum\" says 1000: name the workload that was run.",
            refused.Message
        );
    }

    [Fact]
    public void ToTrial_NoRunTime_IsRefused() =>
        Assert.Equal(
            "A trial needs a run time; the line gave none. Ticks become one where the pattern has a tick rate.",
            Assert
                .Throws<InvalidOperationException>(() =>
                    Only("begin\n", new LinePattern("(?<marker>begin|end)"))
                        .Reading!.ToTrial(Sketch.MarlAt200, Sketch.Echo, Sketch.Microseconds)
                )
                .Message
        );

    [Fact]
    public void Tally_Lines_CountsKindsAndWhatIsMissing()
    {
        var tally = new LineTally();
        var text = """
            boot v3
            run 1: 5 items in 1 ms
            run 2: 5 items in 0 ms
            run 4: 5 items in 1 ms
            run 1: 5 items in 1 ms
            run 2: 5 ite
            """;

        foreach (var line in BoardLines.Read(new StringReader(text), Run))
        {
            tally.Add(line);
        }

        Assert.Equal(6, tally.Lines);
        Assert.Equal(3, tally.Of(BoardLineKind.Reading));
        Assert.Equal(2, tally.Missing);
        Assert.Equal(1, tally.StepsBack);
        Assert.Equal(
            "6 lines: 3 readings, 1 other, 1 unusable, 1 unfinished; 2 runs missing; 1 time back in the sequence",
            tally.ToString()
        );
    }

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    private static BoardLine Only(string text, LinePattern pattern) =>
        Assert.Single(BoardLines.Read(new StringReader(text), pattern));

    private static async Task<List<BoardLine>> All(IAsyncEnumerable<BoardLine> lines)
    {
        var all = new List<BoardLine>();
        await foreach (var line in lines)
        {
            all.Add(line);
        }

        return all;
    }

    // Gives a few bytes at a read, as a serial port does, and may then fail instead of ending.
    private sealed class Pieces(byte[] bytes, int piece) : MemoryStream(bytes)
    {
        public IOException? EndsWith { get; init; }

        public override async ValueTask<int> ReadAsync(
            Memory<byte> buffer,
            CancellationToken cancellationToken = default
        )
        {
            var read = await base.ReadAsync(buffer[..Math.Min(piece, buffer.Length)], cancellationToken);
            return read == 0 && EndsWith is { } fault ? throw fault : read;
        }
    }
}
