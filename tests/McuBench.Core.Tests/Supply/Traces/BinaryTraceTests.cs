using System.Buffers.Binary;
using McuBench.Core.Studies;
using McuBench.Core.Supply.Traces;
using UnitsNet;

namespace McuBench.Core.Tests.Supply.Traces;

public sealed class BinaryTraceTests
{
    private static readonly Duration Period = Duration.FromMilliseconds(1);
    private static readonly ElectricCurrent Step = ElectricCurrent.FromMilliamperes(0.5);

    [Fact]
    public void Read_EachFormat_GivesTheSameCurrents()
    {
        double[] codes = [0, 1, -3, 20_000];
        var log = new TraceLog();
        Read(
            SampleFormat.Whole16,
            Bytes(codes, 2, (b, x) => BinaryPrimitives.WriteInt16LittleEndian(b, (short)x)),
            log
        );
        Read(SampleFormat.Whole32, Bytes(codes, 4, (b, x) => BinaryPrimitives.WriteInt32LittleEndian(b, (int)x)), log);
        Read(
            SampleFormat.Floating32,
            Bytes(codes, 4, (b, x) => BinaryPrimitives.WriteSingleLittleEndian(b, (float)x)),
            log
        );
        Read(SampleFormat.Floating64, Bytes(codes, 8, (b, x) => BinaryPrimitives.WriteDoubleLittleEndian(b, x)), log);

        Assert.Equal(
            Enumerable.Repeat(codes.Select(code => code * 0.0005 + 0.001), 4).SelectMany(all => all),
            log.Amperes
        );
        Assert.Empty(log.Seconds);
    }

    [Fact]
    public void Read_VoltageBesideCurrent_BehindAHead()
    {
        var layout = new BinaryTraceLayout(SampleFormat.Whole16, Period, Step)
        {
            VoltageStep = ElectricPotential.FromMillivolts(1),
            VoltageAtZero = ElectricPotential.FromVolts(3),
            HeadLength = 5,
        };
        var log = new TraceLog();
        byte[] bytes = [9, 9, 9, 9, 9, 2, 0, 44, 1, 4, 0, 0, 0];

        Assert.Equal(2, BinaryTrace.Read(new MemoryStream(bytes), "trace.bin", layout, log).Samples);
        Assert.Equal([0.001, 0.002], log.Amperes);
        Assert.Equal([3.3, 3], log.Volts);
    }

    [Fact]
    public void Read_ConverterAtItsStop_IsMissing()
    {
        var integrator = new TraceIntegrator();
        short[] codes = [2, 2, short.MaxValue, short.MinValue, 2, 2];
        var layout = new BinaryTraceLayout(SampleFormat.Whole16, Period, Step);
        BinaryTrace.Read(
            new MemoryStream(
                Bytes(
                    [.. codes.Select(code => (double)code)],
                    2,
                    (b, x) => BinaryPrimitives.WriteInt16LittleEndian(b, (short)x)
                )
            ),
            "trace.bin",
            layout,
            integrator
        );

        var totals = integrator.Totals()!;
        Assert.Equal((4, 2, 1), (totals.Samples, totals.Missing, totals.Gaps));
        Assert.Equal(0.003, totals.InGaps.Seconds);
        Assert.Equal(5e-6, totals.Charge.Value.Coulombs, 1e-20);
    }

    [Theory]
    [InlineData(
        7,
        0,
        "trace.bin: The file ends within a sample: 3 of its 4 bytes stand behind byte 4. Is it cut, or of another layout?"
    )]
    [InlineData(0, 0, "trace.bin: The trace has no sample.")]
    [InlineData(6, 9, "trace.bin: The file has 6 bytes; its head alone has 9. Is it cut, or of another layout?")]
    public void Read_LengthThatDoesNotFit_IsRefusedWithTheByte(int length, int head, string message)
    {
        var layout = new BinaryTraceLayout(SampleFormat.Floating32, Period, Step) { HeadLength = head };

        var refused = Assert.Throws<StudyFormatException>(() =>
            BinaryTrace.Read(new MemoryStream(new byte[length]), "trace.bin", layout, new TraceLog())
        );
        Assert.Equal(message, refused.Message);
    }

    [Fact]
    public void ReadWithFaults_CutFile_GivesTheWholeSamples()
    {
        var log = new TraceLog();
        var layout = new BinaryTraceLayout(SampleFormat.Whole16, Period, Step);

        var reading = BinaryTrace.ReadWithFaults(new MemoryStream([2, 0, 4, 0, 6]), "trace.bin", layout, log);

        Assert.Equal((2, 1), (reading.Samples, reading.FaultCount));
        Assert.Equal([0.001, 0.002], log.Amperes);
    }

    private static void Read(SampleFormat format, byte[] bytes, TraceLog log)
    {
        var layout = new BinaryTraceLayout(format, Period, Step)
        {
            CurrentAtZero = ElectricCurrent.FromMilliamperes(1),
        };
        BinaryTrace.Read(new MemoryStream(bytes), "trace.bin", layout, log);
    }

    private static byte[] Bytes(double[] values, int length, Action<byte[], double> write)
    {
        var one = new byte[length];
        return
        [
            .. values.SelectMany(value =>
            {
                write(one, value);
                return one.ToArray();
            }),
        ];
    }
}
