using McuBench.Core.Quantities;
using McuBench.Core.Studies;
using McuBench.Core.Studies.Tables;

namespace McuBench.Core.Supply.Traces;

/// <summary>Gathers the rows of a trace, sees that times rise, and gives them on in chunks.</summary>
internal sealed class TraceRows
{
    private const int Chunk = 2048;

    private readonly ITraceConsumer consumer;
    private readonly double wrap;
    private readonly double[] seconds = new double[Chunk];
    private readonly double[] amperes = new double[Chunk];
    private readonly double[] volts;
    private readonly byte[] markers;
    private byte marker;
    private double last = double.NegativeInfinity;
    private double turns;
    private int count;

    private TraceRows(ITraceConsumer consumer, double wrap, bool hasVoltage, bool hasMarker)
    {
        this.consumer = consumer;
        this.wrap = wrap;
        volts = hasVoltage ? new double[Chunk] : [];
        markers = hasMarker ? new byte[Chunk] : [];
    }

    /// <summary>Time, current and voltage of the row that is being read, at the places of <see cref="TraceColumn"/>.</summary>
    public double[] Row { get; } = new double[3];

    public long Samples { get; private set; }

    public long LeftOut { get; private set; }

    /// <summary>The time that the next one must come after, as the file has it.</summary>
    public double LastAsWritten => last - turns;

    /// <summary>Rows for a table whose columns are known; where the map gives a constant, it stands in each.</summary>
    public static TraceRows Of(
        Dictionary<TraceColumn, BoundColumn> bound,
        TraceTextOptions options,
        ITraceConsumer consumer,
        string sourceName,
        FaultList faults
    )
    {
        var rows = new TraceRows(
            consumer,
            options.WrapSeconds,
            bound.ContainsKey(TraceColumn.Voltage),
            bound.ContainsKey(TraceColumn.Marker)
        );
        foreach (var (column, source) in bound.Where(pair => pair.Value.Constant is not null))
        {
            if (column != TraceColumn.Voltage)
            {
                faults.Add(
                    new StudyFault(
                        sourceName,
                        $"The column map gives one value for all rows as the {EnumWord<TraceColumn>.Of(column)}.",
                        "Only the voltage may be constant."
                    )
                );
            }
            else if (
                QuantityParser.Read(source.Constant!, QuantityKind.Voltage, out rows.Row[(int)TraceColumn.Voltage]) is
                { } error
            )
            {
                faults.Add(new StudyFault(sourceName, error.Problem(), error.Mend));
            }
        }

        return rows;
    }

    public void SetMarker(bool isHigh) => marker = isHigh ? (byte)1 : (byte)0;

    /// <summary>Takes the row that was set; not where its time is not after the one before.</summary>
    public bool TryAccept()
    {
        var time = Row[(int)TraceColumn.Time];
        var turned = wrap > 0 && time + turns < last - wrap / 2 ? turns + wrap : turns;
        if (!(time + turned > last))
        {
            return false;
        }

        turns = turned;
        Add(time + turned, Row[(int)TraceColumn.Current]);
        return true;
    }

    /// <summary>Notes that a row is left out; where it leaves a gap, that is a missing sample, at once behind the last
    /// one.</summary>
    public void LeaveOut(bool isGap)
    {
        LeftOut++;
        if (isGap && double.IsFinite(last))
        {
            Add(Math.BitIncrement(last), double.NaN);
        }
    }

    /// <summary>Gives on what was gathered.</summary>
    public void Flush()
    {
        if (count > 0)
        {
            consumer.Take(
                TraceChunk.Timed(
                    seconds.AsSpan(0, count),
                    amperes.AsSpan(0, count),
                    volts.Length > 0 ? volts.AsSpan(0, count) : default,
                    markers.Length > 0 ? markers.AsSpan(0, count) : default
                )
            );
            count = 0;
        }
    }

    private void Add(double at, double sample)
    {
        last = at;
        seconds[count] = at;
        amperes[count] = sample;
        if (volts.Length > 0)
        {
            volts[count] = Row[(int)TraceColumn.Voltage];
        }

        if (markers.Length > 0)
        {
            markers[count] = marker;
        }

        Samples++;
        if (++count == Chunk)
        {
            Flush();
        }
    }
}
