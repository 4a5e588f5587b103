using System.Text;
using FsCheck.Xunit;
using McuBench.Core.Boards;
using McuBench.Core.Capture;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Tests.Studies;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Capture;

public sealed class JournalTests
{
    private static readonly Study Frame = new(
        "Lake gauges",
        [Sketch.Marl],
        [Sketch.MarlAt200],
        [Sketch.Echo],
        [Sketch.Microseconds],
        [Sketch.Bench],
        [],
        []
    )
    {
        IsInvented = true,
    };

    private static readonly SupplyReading Idle = new(
        Sketch.MarlAt200,
        Sketch.Bench,
        SupplyPhase.Idle,
        ElectricCurrent.FromMilliamperes(12)
    );

    [Fact]
    public void Add_TrialsReadingsAndNotes_AreReadBack()
    {
        using var folder = new TemporaryFolder();
        using (var journal = Journal.Create(folder.PathOf("a.jsonl"), Frame))
        {
            journal.Add(Sketch.TrialOf(1.5));
            journal.AddNote("fan switched on; \"quoted\" µ");
            journal.Add(Idle);
            journal.Add(Sketch.TrialOf(1.25));
            Assert.Equal(2, journal.TrialCount);
            Assert.Equal(2, journal.ToStudy().Trials.Count);
        }

        var contents = Journal.Read(folder.PathOf("a.jsonl"));

        Assert.Equal(
            new Study(
                Frame.Title,
                Frame.Boards,
                Frame.Setups,
                Frame.Workloads,
                Frame.Timers,
                Frame.Meters,
                [Sketch.TrialOf(1.5), Sketch.TrialOf(1.25)],
                [Idle]
            )
            {
                IsInvented = true,
            },
            contents.Study
        );
        Assert.Equal(["fan switched on; \"quoted\" µ"], contents.Notes);
        Assert.Null(contents.Cut);
    }

    [Fact]
    public void Add_Trial_IsOnTheDiskBeforeItReturns()
    {
        using var folder = new TemporaryFolder();
        using var journal = Journal.Create(folder.PathOf("a.jsonl"), Frame);

        journal.Add(Sketch.TrialOf(1.5));

        Assert.Single(Journal.Read(folder.PathOf("a.jsonl")).Study.Trials);
    }

    [Fact]
    public void Lines_EachIsJsonByItself()
    {
        using var folder = new TemporaryFolder();
        var path = Filled(folder, 3);

        var lines = File.ReadAllLines(path);

        Assert.Equal(4, lines.Length);
        Assert.All(
            lines,
            line =>
                Assert.Equal(
                    16,
                    System.Text.Json.JsonDocument.Parse(line).RootElement.GetProperty("check").GetString()!.Length
                )
        );
    }

    [Fact]
    public void Open_CutAtAnyByte_KeepsEveryWholeLineAndGoesOn()
    {
        using var folder = new TemporaryFolder();
        var whole = File.ReadAllBytes(Filled(folder, 3));
        var ends = whole.Select((value, at) => (value, at)).Where(x => x.value == '\n').Select(x => x.at + 1).ToArray();

        for (var length = ends[0]; length <= whole.Length; length++)
        {
            var path = folder.PathOf("cut.jsonl");
            File.WriteAllBytes(path, whole[..length]);
            var kept = ends.Count(end => end <= length) - 1;
            using (var journal = Journal.Open(path))
            {
                Assert.Equal(kept, journal.TrialCount);
                Assert.Equal(ends.Contains(length), journal.Cut is null);
                journal.Add(Sketch.TrialOf(9));
            }

            var contents = Journal.Read(path);
            Assert.Null(contents.Cut);
            Assert.Equal(kept + 1, contents.Study.Trials.Count);
            Assert.Equal(Sketch.TrialOf(9), contents.Study.Trials[^1]);
        }
    }

    [Fact]
    public void Open_AnyByteOfAWholeLineChanged_IsRefusedWithItsLine()
    {
        using var folder = new TemporaryFolder();
        var whole = File.ReadAllBytes(Filled(folder, 3));
        var path = folder.PathOf("changed.jsonl");

        for (var at = 0; at < whole.Length - 1; at++)
        {
            var changed = (byte[])whole.Clone();
            changed[at] ^= 1;
            File.WriteAllBytes(path, changed);

            var refused = Assert.Throws<JournalFormatException>(() => Journal.Read(path));

            var line = whole[..at].Count(value => value == '\n') + 1;
            Assert.True(refused.Line == line, $"byte {at}: {refused.Message}");
            Assert.StartsWith($"changed.jsonl, line {line}, byte ", refused.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Read_LineTakenOut_IsRefused()
    {
        using var folder = new TemporaryFolder();
        var path = Filled(folder, 3);
        var lines = File.ReadAllLines(path);
        File.WriteAllText(path, string.Join('\n', [lines[0], lines[2], lines[3], string.Empty]));

        var refused = Assert.Throws<JournalFormatException>(() => Journal.Read(path));

        Assert.Equal(2, refused.Line);
        Assert.EndsWith(
            ": The line's checksum is wrong: it, or the line before, has been changed, lost or moved since it was written. Put back a copy of the file.",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("")]
    [InlineData("{\"check\":\"00")]
    [InlineData("not a journal\n")]
    [InlineData("\0\0\0\0\n\n")]
    public void Read_NoJournal_IsRefused(string text)
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.jsonl", text);

        var refused = Assert.Throws<JournalFormatException>(() => Journal.Read(path));

        Assert.StartsWith(
            "a.jsonl, line 1, byte 0: The file is no journal: ",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Read_EntryOfAnUnknownKind_IsRefused()
    {
        using var folder = new TemporaryFolder();
        var first = JournalLine.Of(JournalEntry.OfFrame(Frame), JournalLine.Beginning, out var check);
        var path = folder.PathOf("a.jsonl");
        File.WriteAllBytes(path, [.. first, .. JournalLine.Of("\"later\":1"u8, check, out _)]);

        var refused = Assert.Throws<JournalFormatException>(() => Journal.Read(path));

        Assert.Equal(2, refused.Line);
        Assert.Equal(first.Length, refused.Offset);
    }

    [Fact]
    public void Open_WhileAnotherWrites_IsRefusedAndReadingIsNot()
    {
        using var folder = new TemporaryFolder();
        var path = folder.PathOf("a.jsonl");
        using (Journal.Create(path, Frame))
        {
            var refused = Assert.Throws<IOException>(() => Journal.Open(path));

            Assert.Equal(
                $"{path} is being written by another program. Two can't write one journal: end the other, or use another file.",
                refused.Message
            );
            Assert.Empty(Journal.Read(path).Study.Trials);
        }

        Journal.Open(path).Dispose();
    }

    [Fact]
    public void Create_FileIsThere_IsRefusedAndLeftAlone()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("a.jsonl", "mine");

        var refused = Assert.Throws<IOException>(() => Journal.Create(path, Frame));

        Assert.Equal($"{path} is there already. Open it to go on with it, or give another name.", refused.Message);
        Assert.Equal("mine", File.ReadAllText(path));
    }

    [Fact]
    public void Create_NoFolder_IsRefused()
    {
        using var folder = new TemporaryFolder();

        Assert.Throws<DirectoryNotFoundException>(() => Journal.Create(folder.PathOf("none/a.jsonl"), Frame));
    }

    [Fact]
    public void Open_NoFile_IsRefusedAndLeavesNoJournal()
    {
        using var folder = new TemporaryFolder();

        Assert.Throws<FileNotFoundException>(() => Journal.Open(folder.PathOf("a.jsonl")));
        Assert.False(File.Exists(folder.PathOf("a.jsonl")));
    }

    [Fact]
    public void Add_TrialOfASetupThatIsNotThere_IsRefusedAndNotWritten()
    {
        using var folder = new TemporaryFolder();
        using var journal = Journal.Create(folder.PathOf("a.jsonl"), Frame);
        var other = new Setup("Marl 100", Sketch.Marl, Frequency.FromMegahertz(100));

        Refusal.Is<ArgumentException>(
            () => journal.Add(new Trial(other, Sketch.Echo, Sketch.Microseconds, Duration.FromSeconds(1))),
            "trials",
            "Trial 0 must refer to a setup of the study; \"Marl 100\" is not listed."
        );
        Assert.Empty(journal.ToStudy().Trials);
    }

    [Fact]
    public void Add_AfterDispose_IsRefused()
    {
        using var folder = new TemporaryFolder();
        var journal = Journal.Create(folder.PathOf("a.jsonl"), Frame);
        journal.Dispose();

        Assert.Throws<ObjectDisposedException>(() => journal.Add(Sketch.TrialOf(1)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("two\nlines")]
    public void AddNote_NoLine_IsRefused(string note)
    {
        using var folder = new TemporaryFolder();
        using var journal = Journal.Create(folder.PathOf("a.jsonl"), Frame);

        Assert.Equal("note", Assert.Throws<ArgumentException>(() => journal.AddNote(note)).ParamName);
    }

    [Fact]
    public void Append_DiskFull_TakesTheLineBackAndCanBeTriedAgain()
    {
        using var disk = new FailingDisk();
        using var tail = new JournalTail(disk, disk.FlushToDisk, 0, JournalLine.Beginning, "a.jsonl");
        tail.Append("\"note\":\"first\""u8.ToArray());
        var before = disk.ToArray();
        disk.Room = 20;

        var refused = Assert.Throws<IOException>(() => tail.Append("\"note\":\"a second one\""u8.ToArray()));

        Assert.Equal("a.jsonl: The disk is full. What was to be added is not in the journal.", refused.Message);
        Assert.Equal(before, disk.ToArray());
        disk.Room = int.MaxValue;
        tail.Append("\"note\":\"third\""u8.ToArray());
        Assert.Equal(2, disk.ToArray().Count(value => value == '\n'));
    }

    [Fact]
    public void Append_FlushFails_TakesTheLineBack()
    {
        using var disk = new FailingDisk();
        using var tail = new JournalTail(disk, disk.FlushToDisk, 0, JournalLine.Beginning, "a.jsonl");
        disk.FailingFlushes = 1;

        Assert.Throws<IOException>(() => tail.Append("\"note\":\"first\""u8.ToArray()));

        Assert.Empty(disk.ToArray());
    }

    [Fact]
    public void Append_LineCantBeTakenBack_RefusesAllThatFollows()
    {
        using var disk = new FailingDisk();
        using var tail = new JournalTail(disk, disk.FlushToDisk, 0, JournalLine.Beginning, "a.jsonl");
        disk.FailingFlushes = 2;
        Assert.Throws<IOException>(() => tail.Append("\"note\":\"first\""u8.ToArray()));

        var refused = Assert.Throws<IOException>(() => tail.Append("\"note\":\"second\""u8.ToArray()));

        Assert.Equal("a.jsonl: the disk failed and nothing more is written. Open the journal again.", refused.Message);
    }

    [Property(MaxTest = 60)]
    public void Create_AnyStudy_IsReadBackEqual(int seed)
    {
        using var folder = new TemporaryFolder();
        var study = RandomStudy.Of(seed);
        Journal.Create(folder.PathOf("a.jsonl"), study).Dispose();

        Assert.Equal(study, Journal.Read(folder.PathOf("a.jsonl")).Study);
    }

    [Fact]
    public void Add_FromManyThreads_KeepsEveryTrial()
    {
        using var folder = new TemporaryFolder();
        using (var journal = Journal.Create(folder.PathOf("a.jsonl"), Frame))
        {
            Parallel.For(1, 101, i => journal.Add(Sketch.TrialOf(i)));
        }

        Assert.Equal(
            Enumerable.Range(1, 100).Select(i => (double)i),
            Journal.Read(folder.PathOf("a.jsonl")).Study.Trials.Select(trial => trial.RunTime.Seconds).Order()
        );
    }

    private static string Filled(TemporaryFolder folder, int trials)
    {
        var path = folder.PathOf("filled.jsonl");
        using var journal = Journal.Create(path, Frame);
        for (var i = 1; i <= trials; i++)
        {
            journal.Add(Sketch.TrialOf(i));
        }

        return path;
    }

    private sealed class FailingDisk : MemoryStream
    {
        public int Room { get; set; } = int.MaxValue;

        public int FailingFlushes { get; set; }

        public void FlushToDisk()
        {
            if (FailingFlushes-- > 0)
            {
                throw new IOException("The disk is gone.");
            }
        }

        public override void Write(byte[] buffer, int offset, int count)
        {
            base.Write(buffer, offset, Math.Min(count, Room));
            if (count > Room)
            {
                throw new IOException("The disk is full.");
            }
        }

        public override void Write(ReadOnlySpan<byte> buffer) => Write(buffer.ToArray(), 0, buffer.Length);
    }
}
