using System.Collections.Immutable;
using McuBench.Core.Quantities;
using McuBench.Core.Studies.Tables;
using McuBench.Core.Supply;

namespace McuBench.Core.Studies;

/// <summary>Reads and writes supply readings as a table of comma-separated values, one row a reading, under a row of
/// heads.</summary>
/// <remarks>The rules are those of <see cref="TrialCsv"/>. Safe to use from many threads. O(n) in the size of the
/// table.</remarks>
public static class ReadingCsv
{
    private static readonly TableLayout<ReadingColumn> Layout = new()
    {
        Required = [ReadingColumn.Setup, ReadingColumn.Meter, ReadingColumn.Phase, ReadingColumn.Current],
        Quantities = ImmutableDictionary<ReadingColumn, QuantityKind>
            .Empty.Add(ReadingColumn.Current, QuantityKind.Current)
            .Add(ReadingColumn.BoardVoltage, QuantityKind.Voltage)
            .Add(ReadingColumn.Range, QuantityKind.Current),
    };

    /// <summary>Reads a table of supply readings in which nothing is wrong.</summary>
    /// <param name="text">The table. It is read to its end and stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <param name="study">The study whose setups, workloads and meters the rows name; its readings don't matter.</param>
    /// <param name="columns">Which column holds what; the heads are the properties' names where it is absent.</param>
    /// <param name="options">How the table is written down.</param>
    /// <exception cref="StudyFormatException">Something is wrong; all faults are listed.</exception>
    public static IReadOnlyList<SupplyReading> Read(
        TextReader text,
        string sourceName,
        Study study,
        ColumnMap<ReadingColumn>? columns = null,
        CsvOptions? options = null
    ) => ReadWithFaults(text, sourceName, study, columns, options).OrThrow();

    /// <summary>Reads whatever is right of a table of supply readings, and says all that is wrong.</summary>
    /// <param name="text">The table. It is read to its end and stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <param name="study">The study whose setups, workloads and meters the rows name; its readings don't matter.</param>
    /// <param name="columns">Which column holds what; the heads are the properties' names where it is absent.</param>
    /// <param name="options">How the table is written down.</param>
    public static CsvReadResult<SupplyReading> ReadWithFaults(
        TextReader text,
        string sourceName,
        Study study,
        ColumnMap<ReadingColumn>? columns = null,
        CsvOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentException.ThrowIfNullOrEmpty(sourceName);
        ArgumentNullException.ThrowIfNull(study);
        var faults = new FaultList();
        var readings = new List<SupplyReading>();
        var met = ReadInto(
            readings,
            text,
            sourceName,
            StudyNames.Of(study),
            columns ?? new ColumnMap<ReadingColumn>(),
            options ?? CsvOptions.Default,
            faults
        );
        return new CsvReadResult<SupplyReading>(readings, met, faults);
    }

    /// <summary>Writes supply readings as a table: currents in amperes and voltages in volts, to the last digit; a column
    /// for each property that a reading has. Lines end by LF.</summary>
    /// <param name="text">Where to. It stays open.</param>
    /// <param name="readings">The readings.</param>
    /// <param name="options">How to write it down.</param>
    public static void Write(TextWriter text, IEnumerable<SupplyReading> readings, CsvOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(readings);
        TableWriter<SupplyReading>.Write(
            text,
            [.. readings],
            options ?? CsvOptions.Default,
            [
                TableWriter<SupplyReading>.Text("setup", r => r.Setup.Name, always: true),
                TableWriter<SupplyReading>.Text("meter", r => r.Meter.Name, always: true),
                TableWriter<SupplyReading>.Plain("phase", r => EnumWord<SupplyPhase>.Of(r.Phase), always: true),
                TableWriter<SupplyReading>.Number("current [A]", r => Si.Amperes(r.Current), always: true),
                TableWriter<SupplyReading>.Text("workload", r => r.Workload?.Name),
                TableWriter<SupplyReading>.Plain("point", r => EnumWord<MeasuringPoint>.Of(r.Point)),
                TableWriter<SupplyReading>.Number(
                    "board voltage [V]",
                    r => r.BoardVoltage is { } voltage ? Si.Volts(voltage) : null
                ),
                TableWriter<SupplyReading>.Number("range [A]", r => r.Range is { } range ? Si.Amperes(range) : null),
                TableWriter<SupplyReading>.Text("attachment", r => r.Attachment),
                TableWriter<SupplyReading>.Text("session", r => r.Session),
                TableWriter<SupplyReading>.Text("specimen", r => r.Specimen),
            ]
        );
    }

    /// <summary>Reads a table's readings into a list and says how many rows were met.</summary>
    internal static int ReadInto(
        List<SupplyReading> readings,
        TextReader text,
        string sourceName,
        StudyNames names,
        ColumnMap<ReadingColumn> columns,
        CsvOptions options,
        FaultList faults
    )
    {
        using var table = new TableReader<ReadingColumn>(text, sourceName, Layout, columns, options, faults);
        while (table.Next() is { } row)
        {
            var phase = row.Word<SupplyPhase>(ReadingColumn.Phase);
            var point = row.Word<MeasuringPoint>(ReadingColumn.Point);
            var current = row.Quantity(ReadingColumn.Current);
            var voltage = row.Quantity(ReadingColumn.BoardVoltage);
            var range = row.Quantity(ReadingColumn.Range);
            if (row.IsFaulty)
            {
                continue;
            }

            var values = new ReadingValues(
                row.Text(ReadingColumn.Setup)!,
                row.Text(ReadingColumn.Meter)!,
                phase!.Value,
                current!.Value
            )
            {
                Workload = row.Text(ReadingColumn.Workload),
                Point = point,
                BoardVoltage = voltage,
                Range = range,
                Attachment = row.Text(ReadingColumn.Attachment),
                Session = row.Text(ReadingColumn.Session),
                Specimen = row.Text(ReadingColumn.Specimen),
            };
            if (values.Make(names, row) is { } reading)
            {
                readings.Add(reading);
            }
        }

        return table.RowsMet;
    }
}
