using System.Globalization;
using System.Text;
using McuBench.Core.Studies;
using McuBench.Core.Supply.Traces;
using UnitsNet;

namespace McuBench.Core.Tests.Supply.Traces;

public sealed class TraceTextTests
{
    private const string Heads = "time [ms],current [mA]\n";

    [Fact]
    public void Read_Units_AreThoseOfTheHeads()
    {
        var log = Read("time [ms],current [mA],voltage [V],marker\n412.1,31.02,3.3,1\n412.2,0.5,3.29,0\n");

        Assert.Equal([0.4121, 0.4122], log.Seconds);
        Assert.Equal([0.03102, 0.0005], log.Amperes);
        Assert.Equal([3.3, 3.29], log.Volts);
        Assert.Equal<byte>([1, 0], log.Markers);
    }

    [Theory]
    [InlineData("\uFEFFtime [ms],current [mA]\r\n1,2\r\n\r\n2,3\r\n")]
    [InlineData("\"time [ms]\",\"current [mA]\"\n\"1\",\"2\"\n 2 ,\t3\n")]
    [InlineData("time [us],current [A]\n1e3,2e-3\n2.0E+03,0.003\n")]
    [InlineData("Time [ms],CURRENT [mA]\n+1,2.\n2,3.000000000000000000000000000\n")]
    [InlineData("time [s],current [mA]\n1.000000000000000000e-03,2.000000000000000000e+00\n.002,3\n")]
    public void Read_FormsOfWriting_GiveTheSame(string text)
    {
        var log = Read(text);

        Assert.Equal([0.001, 0.002], log.Seconds);
        Assert.Equal([0.002, 0.003], log.Amperes);
    }

    [Fact]
    public void Read_CommentsOtherColumnsAndDecimalCommas_ByOption()
    {
        var options = new TraceTextOptions
        {
            DecimalComma = true,
            Table = new CsvOptions
            {
                Delimiter = ';',
                HashComments = true,
                IgnoreOtherColumns = true,
            },
            Columns = new ColumnMap<TraceColumn>()
                .WithHead(TraceColumn.Time, "t")
                .WithConstant(TraceColumn.Voltage, "3.3 V"),
        };
        var log = Read("# taken at the lake\nnote;t [s];current [mA]\n#\nx;0,5;1,25\n\"a;b\";1;-0,75\n", options);

        Assert.Equal([0.5, 1], log.Seconds);
        Assert.Equal([0.00125, -0.00075], log.Amperes);
        Assert.Equal([3.3, 3.3], log.Volts);
    }

    [Fact]
    public void Read_NaN_IsAMissingSample()
    {
        var log = Read(Heads + "1,2\n2,NaN\n3,nan\n");

        Assert.Equal([0.002, double.NaN, double.NaN], log.Amperes);
    }

    [Fact]
    public void Read_ManyRows_AreTheParsersToTheBit()
    {
        var text = new StringBuilder("time [ms],current [uA]\n");
        var random = new Random(5);
        var expected = new List<double>();
        for (var i = 0; i < 60_000; i++)
        {
            var digits = random.NextInt64(1L << random.Next(1, 63)).ToString(CultureInfo.InvariantCulture);
            var cut = random.Next(0, digits.Length + 1);
            var number = random.Next(3) switch
            {
                0 => digits,
                1 => $"{digits[..cut]}.{digits[cut..]}",
                _ => $"-{digits[..cut]}.{digits[cut..]}e{random.Next(-30, 30).ToString(CultureInfo.InvariantCulture)}",
            };
            expected.Add(McuBench.Core.Quantities.QuantityText.ParseCurrent(number + " uA").Amperes);
            text.Append(CultureInfo.InvariantCulture, $"{i}.25,{number}\n");
        }

        var log = Read(text.ToString());

        Assert.Equal(expected, log.Amperes);
        Assert.Equal(60_000, log.Seconds.Count);
        Assert.Equal(59.99925, log.Seconds[^1]);
    }

    [Theory]
    [InlineData("", "trace.csv: The trace is empty. Its first line must be the heads.")]
    [InlineData(
        "time [ms],current\n1,2\n",
        "trace.csv, line 1, column 2 \"current\": Head \"current\" has no unit; that of a current was expected. Write the unit in brackets behind the name, such as \"current [mA]\"."
    )]
    [InlineData(
        "time [ms],voltage [V]\n1,2\n",
        "trace.csv, line 1: There is no column \"current\"; the heads are \"time [ms]\", \"voltage [V]\". Add it, name its head in the column map, or give a constant."
    )]
    [InlineData(
        Heads + "1,2\n2\n3,4\n",
        "trace.csv, line 3: The row from byte 27 on has 1 fields where the heads are 2. Is the file cut?"
    )]
    [InlineData(
        Heads + "1,2\n2,0.12",
        "trace.csv, line 3: The file ends within a line, 6 bytes behind byte 27: digits may be cut off. End the last line with a line break, or have bad rows left out."
    )]
    [InlineData(
        Heads + "1,2\n1,3\n",
        "trace.csv, line 3, column 1 \"time [ms]\": The time \"1\" is not after the one before, 1 ms. Sort the rows, or say at what time the meter's clock starts again."
    )]
    [InlineData(
        Heads + "1,2\n0.5,3\n",
        "trace.csv, line 3, column 1 \"time [ms]\": The time \"0.5\" is not after the one before, 1 ms. Sort the rows, or say at what time the meter's clock starts again."
    )]
    [InlineData(
        Heads + "1,1e400\n",
        "trace.csv, line 2, column 2 \"current [mA]\": \"1e400\" cannot be held; a current of size"
    )]
    [InlineData(Heads + "1,\n", "trace.csv, line 2, column 2 \"current [mA]\": Nothing was given; a current")]
    [InlineData(Heads + "1,2 mA\n", "trace.csv, line 2, column 2 \"current [mA]\": \"2 mA\"")]
    [InlineData(
        "time [ms],current [mA],marker\n1,2,high\n",
        "trace.csv, line 2, column 3 \"marker\": The marker must be a number; was \"high\". Write 0 or 1."
    )]
    [InlineData(
        Heads + "1,\"2\n",
        "trace.csv, line 2, column 2: Quotation marks stand within a field, or are never closed. Close them."
    )]
    public void Read_BadInput_IsRefusedWithItsPlace(string text, string message)
    {
        var refused = Assert.Throws<StudyFormatException>(() => Read(text));

        Assert.StartsWith(message, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_LineWithoutEnd_IsRefusedBeforeItIsRead()
    {
        using var endless = new Endless();

        var refused = Assert.Throws<StudyFormatException>(() => TraceText.Read(endless, "trace.csv", new TraceLog()));

        Assert.Equal(
            "trace.csv, line 1: A line must have at most 65536 bytes; the one from byte 0 on has more. Is this a trace in text?",
            refused.Message
        );
        Assert.InRange(endless.Given, 65_537, 2_000_000);
    }

    [Fact]
    public void ReadWithFaults_Stop_GivesAllUpToTheFault()
    {
        var log = new TraceLog();
        var reading = TraceText.ReadWithFaults(Bytes(Heads + "1,2\n2,x\n3,4\n"), "trace.csv", log);

        Assert.Equal((1, 1, 1), (reading.Samples, reading.RowsLeftOut, reading.FaultCount));
        Assert.Equal([0.002], log.Amperes.Where(double.IsFinite));
    }

    [Fact]
    public void ReadWithFaults_LeaveOut_MakesAGapOfEachBadRow()
    {
        var integrator = new TraceIntegrator();
        var reading = TraceText.ReadWithFaults(
            Bytes(Heads + "0,2\n1000,2\n1500,x\n2000,4\n3000,4\n2500,4\n4000,6\n5000,6\n6000,6"),
            "trace.csv",
            integrator,
            new TraceTextOptions { BadRows = BadRows.LeaveOut }
        );

        var totals = integrator.Totals()!;
        Assert.Equal((3, 3), (reading.RowsLeftOut, reading.FaultCount));
        Assert.Equal((6, 2), (totals.Samples, totals.Gaps));
        Assert.Equal(2, totals.InGaps.Seconds, 1e-15);
        Assert.Equal(0.002 + 0.003 + 0.004 + 0.005 + 0.006, totals.Charge.Value.Coulombs, 1e-17);
        Assert.Contains("gaps", totals.Charge.Budget.Select(line => line.Component));
        Assert.Equal("2 gaps, 40 % of the time, are bridged by straight lines.", totals.Charge.Notes[0]);
    }

    [Fact]
    public void Read_TimeThatWraps_GoesOn()
    {
        var log = Read(
            "time [s],current [mA]\n8,1\n9,1\n0,1\n1,1\n9.5,1\n0.5,1\n",
            new TraceTextOptions { TimeWrapsAt = Duration.FromSeconds(10) }
        );

        Assert.Equal([8, 9, 10, 11, 19.5, 20.5], log.Seconds);
    }

    [Fact]
    public void Read_CommaForBoth_IsRefused()
    {
        Refusal.Is<ArgumentException>(
            () => Read(Heads, new TraceTextOptions { DecimalComma = true }),
            "options",
            "Delimiter must be another character where numbers have a decimal comma; was \",\"."
        );
    }

    [Fact]
    public void Read_LongFile_TakesConstantMemory()
    {
        var row = "1234567.123456,0.000123456789\n".Length;
        _ = Repeated(1_000);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var few = Repeated(10_000);
        var between = GC.GetAllocatedBytesForCurrentThread();
        var many = Repeated(200_000);
        var after = GC.GetAllocatedBytesForCurrentThread();

        Assert.Equal((10_000, 200_000), (few, many));
        Assert.InRange(after - between - (between - before), -65_536, 65_536);
        Assert.True(row * 190_000 > 5_000_000);
    }

    private static long Repeated(int rows)
    {
        using var stream = new Rising(rows);
        return TraceText.Read(stream, "trace.csv", new TraceIntegrator()).Samples;
    }

    private static TraceLog Read(string text, TraceTextOptions? options = null)
    {
        var log = new TraceLog();
        var reading = TraceText.Read(Bytes(text), "trace.csv", log, options);
        Assert.Equal(log.Amperes.Count, reading.Samples);
        return log;
    }

    private static MemoryStream Bytes(string text) => new(Encoding.UTF8.GetBytes(text));

    /// <summary>Rows that rise in time, made without allocation.</summary>
    private sealed class Rising(int rows) : ReadOnlyStream
    {
        private readonly byte[] pending = new byte[64];
        private int row = -1;
        private int length;
        private int given;

        public override int Read(Span<byte> buffer)
        {
            var written = 0;
            while (written < buffer.Length && (given < length || Make()))
            {
                buffer[written++] = pending[given++];
            }

            return written;
        }

        private bool Make()
        {
            if (row == rows)
            {
                return false;
            }

            given = 0;

            var begin = 0;
            if (row >= 0)
            {
                (row + 1_000_000).TryFormat(pending, out begin, default, CultureInfo.InvariantCulture);
            }

            ReadOnlySpan<byte> rest = row < 0 ? "time [s],current [A]\n"u8 : ".123456,0.000123456789\n"u8;
            rest.CopyTo(pending.AsSpan(begin));
            length = begin + rest.Length;
            row++;
            return true;
        }
    }

    private sealed class Endless : ReadOnlyStream
    {
        public long Given { get; private set; }

        public override int Read(Span<byte> buffer)
        {
            buffer.Fill((byte)'1');
            Given += buffer.Length;
            return buffer.Length;
        }
    }

    private abstract class ReadOnlyStream : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override void Flush() => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
