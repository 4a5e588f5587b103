using System.Text;
using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Studies;

/// <summary>Each limit lets its own value through and refuses one more.</summary>
public sealed class StudyLimitsTests
{
    private const string Heads = "setup,workload,timer,run time [ms]";
    private const string Row = "Schist wide 160,echo spectrum,ticks,1";

    [Fact]
    public void Json_MoreBytesThanTheLimit_IsRefused()
    {
        using var stream = new Endless(StudyLimits.FileBytes + 1L);

        var result = StudyJson.ReadWithFaults(stream, "study.json");

        Assert.Equal(
            "study.json: The file is larger than 67108864 bytes. Split the study, or keep its trials in tables beside it.",
            Assert.Single(result.Faults).Message
        );
    }

    [Fact]
    public void Json_AsManyBytesAsTheLimit_IsTakenIn()
    {
        using var stream = new Endless(StudyLimits.FileBytes);

        var result = StudyJson.ReadWithFaults(stream, "study.json");

        Assert.Equal("The file is empty.", Assert.Single(result.Faults).Problem);
    }

    [Theory]
    [InlineData(StudyLimits.NestingDepth, 1)]
    [InlineData(StudyLimits.NestingDepth + 1, 2)]
    [InlineData(100, 2)]
    [InlineData(100_000, 2)]
    public void Json_Nesting_HasItsLimit(int depth, int faults)
    {
        // One level is the study's own.
        var nest = new string('[', depth - 1) + new string(']', depth - 1);
        var result = StudySample.ReadWithFaults(StudySample.With("\"Lake gauges\"", nest));

        Assert.Equal(faults, result.FaultCount);
        Assert.Equal("The value must be a text; was a list.", result.Faults[0].Problem);
        if (faults > 1)
        {
            Assert.Equal("Nesting is deeper than 32.", result.Faults[1].Problem);
            Assert.Equal((4, 12 + 31), (result.Faults[1].Line, result.Faults[1].Column));
        }
    }

    [Fact]
    public void Json_HundredOpenBrackets_IsOneFault() =>
        Assert.Single(StudySample.ReadWithFaults(new string('[', 100)).Faults);

    [Fact]
    public void Json_TenMillionDigits_IsOneLine()
    {
        var result = StudySample.ReadWithFaults(StudySample.With("1000", new string('7', 10_000_000)));

        Assert.Equal(
            "study.json, line 57, column 26, $.workloads[0].workItemsPerRun: A number must have at most 40 characters; had 10000000: 7777777777777777777777777777777777777777\u2026.",
            Assert.Single(result.Faults).Message
        );
    }

    [Theory]
    [InlineData(StudyLimits.NumberLength, "The value must be a whole number in plain digits; was ")]
    [InlineData(StudyLimits.NumberLength + 1, "A number must have at most 40 characters; had 41: ")]
    public void Json_Number_HasItsLimit(int digits, string problem)
    {
        var result = StudySample.ReadWithFaults(StudySample.With("1000", new string('7', digits)));

        Assert.StartsWith(problem, Assert.Single(result.Faults).Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(StudyLimits.TextLength, "Study's title must have at most 200 characters; had 4096: ")]
    [InlineData(StudyLimits.TextLength + 1, "A text must have at most 4096 characters; had 4097: ")]
    public void Json_Text_HasItsLimit(int length, string problem)
    {
        var result = StudySample.ReadWithFaults(StudySample.With("Lake gauges", new string('n', length)));

        Assert.StartsWith(problem, Assert.Single(result.Faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_TextOfEscapes_IsCountedInCharacters()
    {
        var escaped = string.Concat(Enumerable.Repeat("\\u00e9", 200));

        var study = StudySample.Read(StudySample.With("Lake gauges", escaped));

        Assert.Equal(new string('\u00E9', 200), study.Title);
    }

    [Fact]
    public void Json_LongPropertyName_IsNotRepeatedInTheMessage()
    {
        var result = StudySample.ReadWithFaults(
            StudySample.With("\"title\"", $"\"{new string('t', 1_000_000)}\": 1, \"title\"")
        );

        Assert.InRange(Assert.Single(result.Faults).Message.Length, 50, 500);
    }

    [Fact]
    public void Json_MoreFaultsThanAreListed_AreCounted()
    {
        var trials = string.Join(
            ",",
            Enumerable.Repeat("{ \"setup\": \"x\", \"workload\": \"x\", \"timer\": \"x\", \"runTime\": \"1\" }", 500)
        );

        var result = StudySample.ReadWithFaults(StudySample.With("\"trials\": [", $"\"trials\": [{trials},"));

        Assert.Equal(StudyLimits.FaultsListed, result.Faults.Count);
        Assert.Equal(500, result.FaultCount);
        Assert.Equal(500, result.TrialsLeftOut);
        Assert.Single(result.Study!.Trials);
    }

    [Theory]
    [InlineData(StudyLimits.Tables, 0)]
    [InlineData(StudyLimits.Tables + 1, 1)]
    public void Json_Tables_HaveTheirLimit(int tables, int faults)
    {
        var files = string.Join(",", Enumerable.Range(0, tables).Select(i => $"{{ \"path\": \"t{i}.csv\" }}"));

        var result = StudySample.ReadWithFaults(
            StudySample.With("\"readings\": [", $"\"trialFiles\": [{files}], \"readings\": ["),
            _ => new MemoryStream(Encoding.UTF8.GetBytes(Heads))
        );

        Assert.Equal(faults, result.FaultCount);
        Assert.All(
            result.Faults,
            fault => Assert.Equal("A study may refer to 100 tables of a sort at most.", fault.Problem)
        );
    }

    [Theory]
    [InlineData(StudyLimits.FieldLength, null)]
    [InlineData(StudyLimits.FieldLength + 1, "A field must have at most 4096 characters; has 4097.")]
    public void Csv_Field_HasItsLimit(int length, string? problem) =>
        AssertOnly(problem, $"{Heads},note\n{Row},{new string('n', length)}\n");

    [Theory]
    [InlineData(StudyLimits.Columns, null)]
    [InlineData(StudyLimits.Columns + 1, "A table must have at most 200 columns; has 201.")]
    public void Csv_Columns_HaveTheirLimit(int columns, string? problem)
    {
        var notes = string.Concat(Enumerable.Range(0, columns - 4).Select(i => $",note {i}"));

        AssertOnly(problem, $"{Heads}{notes}\n{Row}{new string(',', columns - 4)}\n");
    }

    [Theory]
    [InlineData(StudyLimits.RowLength, null)]
    [InlineData(StudyLimits.RowLength + 1, "A row must have at most 65536 characters; has 65537.")]
    public void Csv_Row_HasItsLimit(int length, string? problem)
    {
        const int notes = 20;
        var heads = Heads + string.Concat(Enumerable.Range(0, notes).Select(i => $",note {i}"));
        var room = length - Row.Length - notes;
        var fields = Enumerable
            .Range(0, notes)
            .Select(i => new string('n', (room / notes) + (i < room % notes ? 1 : 0)));

        AssertOnly(problem, $"{heads}\n{Row},{string.Join(',', fields)}\n");
    }

    [Fact]
    public void Csv_RowWithoutEnd_IsRefusedBeforeItFillsTheMemory()
    {
        var result = Read($"{Heads}\n\"{new string('x', 20_000_000)}");

        Assert.Equal(
            "trials.csv: A row must have at most 65536 characters. Is a quotation mark left open?",
            Assert.Single(result.Faults).Message
        );
    }

    [Fact]
    public void Csv_MoreCharactersThanTheLimit_IsRefused()
    {
        using var text = new StreamReader(new Endless(StudyLimits.FileBytes + 1L, 50_000), Encoding.ASCII);

        var result = TrialCsv.ReadWithFaults(text, "trials.csv", StudySample.Study);

        Assert.Equal(
            "trials.csv: The table has more than 67108864 characters. Split it.",
            Assert.Single(result.Faults).Message
        );
    }

    [Fact]
    public void Csv_MoreRowsThanTheLimit_IsRefusedAtTheFirstTooMany()
    {
        // As short as rows can be: one field, the rest constant.
        var columns = new ColumnMap<TrialColumn>()
            .WithConstant(TrialColumn.Setup, "Schist wide 160")
            .WithConstant(TrialColumn.Workload, "echo spectrum")
            .WithConstant(TrialColumn.RunTime, "1 s")
            .WithHead(TrialColumn.Timer, "t");
        using var text = new StringReader("t\n" + string.Concat(Enumerable.Repeat("x\n", StudyLimits.Rows + 1)));

        var result = TrialCsv.ReadWithFaults(text, "trials.csv", StudySample.Study, columns);

        Assert.Equal(StudyLimits.Rows, result.RowsLeftOut);
        Assert.Equal(StudyLimits.Rows + 1, result.FaultCount);
    }

    private static void AssertOnly(string? problem, string csv)
    {
        var result = Read(csv);
        if (problem is null)
        {
            Assert.Empty(result.Faults);
            Assert.Single(result.Rows);
        }
        else
        {
            Assert.Equal(problem, Assert.Single(result.Faults).Problem);
        }
    }

    private static CsvReadResult<McuBench.Core.Trials.Trial> Read(string csv) =>
        TrialCsv.ReadWithFaults(
            new StringReader(csv),
            "trials.csv",
            StudySample.Study,
            options: new CsvOptions { IgnoreOtherColumns = true }
        );

    /// <summary>A stream of spaces, so many in all, with lines of a length.</summary>
    private sealed class Endless(long length, int lineLength = int.MaxValue) : Stream
    {
        private long position;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => position;
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            var read = (int)Math.Min(count, length - position);
            buffer.AsSpan(offset, read).Fill((byte)' ');
            for (var end = lineLength - 1 - (position % lineLength); end < read; end += lineLength)
            {
                buffer[offset + end] = (byte)'\n';
            }

            position += read;
            return read;
        }

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
