using System.Collections.Immutable;
using System.Globalization;
using McuBench.Core.Quantities;
using McuBench.Core.Studies.Tables;
using McuBench.Core.Trials;

namespace McuBench.Core.Studies;

/// <summary>Reads and writes trials as a table of comma-separated values, one row a trial, under a row of heads.</summary>
/// <remarks>
/// <para>
/// A head with a unit, "run time [ms]", makes the fields under it bare numbers, turned into seconds with one rounding;
/// without, each field has its own unit, "412.1 ms". A number without a unit in either place is a fault, and so is one
/// with a unit in both. Numbers have a decimal point. An empty field is an absent value.
/// </para>
/// <para>
/// Fields that hold the delimiter, a quotation mark (doubled) or a line break stand in quotation marks; white space
/// around a field is dropped. Lines end by LF, CR LF or CR; blank lines are skipped. A name that begins with = + - @ or
/// an apostrophe is written with an apostrophe before it, which reading takes off, so that no spreadsheet runs it as a
/// formula. Limits are those of <see cref="StudyLimits"/>.
/// </para>
/// <para>Safe to use from many threads. O(n) in the size of the table.</para>
/// </remarks>
public static class TrialCsv
{
    private static readonly TableLayout<TrialColumn> Layout = new()
    {
        Required = [TrialColumn.Setup, TrialColumn.Workload, TrialColumn.Timer, TrialColumn.RunTime],
        Quantities = ImmutableDictionary<TrialColumn, QuantityKind>
            .Empty.Add(TrialColumn.RunTime, QuantityKind.Duration)
            .Add(TrialColumn.Temperature, QuantityKind.Temperature),
    };

    /// <summary>Reads a table of trials in which nothing is wrong.</summary>
    /// <param name="text">The table. It is read to its end and stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <param name="study">The study whose setups, workloads and timers the rows name; its trials don't matter.</param>
    /// <param name="columns">Which column holds what; the heads are the properties' names where it is absent.</param>
    /// <param name="options">How the table is written down.</param>
    /// <exception cref="StudyFormatException">Something is wrong; all faults are listed.</exception>
    public static IReadOnlyList<Trial> Read(
        TextReader text,
        string sourceName,
        Study study,
        ColumnMap<TrialColumn>? columns = null,
        CsvOptions? options = null
    ) => ReadWithFaults(text, sourceName, study, columns, options).OrThrow();

    /// <summary>Reads whatever is right of a table of trials, and says all that is wrong.</summary>
    /// <param name="text">The table. It is read to its end and stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <param name="study">The study whose setups, workloads and timers the rows name; its trials don't matter.</param>
    /// <param name="columns">Which column holds what; the heads are the properties' names where it is absent.</param>
    /// <param name="options">How the table is written down.</param>
    public static CsvReadResult<Trial> ReadWithFaults(
        TextReader text,
        string sourceName,
        Study study,
        ColumnMap<TrialColumn>? columns = null,
        CsvOptions? options = null
    )
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentException.ThrowIfNullOrEmpty(sourceName);
        ArgumentNullException.ThrowIfNull(study);
        var faults = new FaultList();
        var trials = new List<Trial>();
        var met = ReadInto(
            trials,
            text,
            sourceName,
            StudyNames.Of(study),
            columns ?? new ColumnMap<TrialColumn>(),
            options ?? CsvOptions.Default,
            faults
        );
        return new CsvReadResult<Trial>(trials, met, faults);
    }

    /// <summary>Writes trials as a table: run times in seconds and temperatures in kelvins, to the last digit; a column
    /// for each property that a trial has. Lines end by LF.</summary>
    /// <param name="text">Where to. It stays open.</param>
    /// <param name="trials">The trials.</param>
    /// <param name="options">How to write it down.</param>
    public static void Write(TextWriter text, IEnumerable<Trial> trials, CsvOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(trials);
        TableWriter<Trial>.Write(
            text,
            [.. trials],
            options ?? CsvOptions.Default,
            [
                TableWriter<Trial>.Text("setup", t => t.Setup.Name, always: true),
                TableWriter<Trial>.Text("workload", t => t.Workload.Name, always: true),
                TableWriter<Trial>.Text("timer", t => t.Timer.Name, always: true),
                TableWriter<Trial>.Number("run time [s]", t => Si.Seconds(t.RunTime), always: true),
                TableWriter<Trial>.Plain("order", t => t.Order?.ToString(CultureInfo.InvariantCulture)),
                TableWriter<Trial>.Text("session", t => t.Session),
                TableWriter<Trial>.Text("specimen", t => t.Specimen),
                TableWriter<Trial>.Text("build", t => t.Build),
                TableWriter<Trial>.Text("connection", t => t.Connection),
                TableWriter<Trial>.Number(
                    "temperature [K]",
                    t => t.Temperature is { } temperature ? Si.Kelvins(temperature) : null
                ),
                TableWriter<Trial>.Text("output checksum", t => t.OutputChecksum),
                TableWriter<Trial>.Plain("cycle count", t => t.CycleCount?.ToString(CultureInfo.InvariantCulture)),
            ]
        );
    }

    /// <summary>Reads a table's trials into a list and says how many rows were met.</summary>
    internal static int ReadInto(
        List<Trial> trials,
        TextReader text,
        string sourceName,
        StudyNames names,
        ColumnMap<TrialColumn> columns,
        CsvOptions options,
        FaultList faults
    )
    {
        using var table = new TableReader<TrialColumn>(text, sourceName, Layout, columns, options, faults);
        while (table.Next() is { } row)
        {
            var runTime = row.Quantity(TrialColumn.RunTime);
            var temperature = row.Quantity(TrialColumn.Temperature);
            var order = row.Whole<int>(TrialColumn.Order);
            var cycles = row.Whole<long>(TrialColumn.CycleCount);
            if (row.IsFaulty)
            {
                continue;
            }

            var values = new TrialValues(
                row.Text(TrialColumn.Setup)!,
                row.Text(TrialColumn.Workload)!,
                row.Text(TrialColumn.Timer)!,
                runTime!.Value
            )
            {
                Order = order,
                Session = row.Text(TrialColumn.Session),
                Specimen = row.Text(TrialColumn.Specimen),
                Build = row.Text(TrialColumn.Build),
                Connection = row.Text(TrialColumn.Connection),
                Temperature = temperature,
                OutputChecksum = row.Text(TrialColumn.OutputChecksum),
                CycleCount = cycles,
            };
            if (values.Make(names, row) is { } trial)
            {
                trials.Add(trial);
            }
        }

        return table.RowsMet;
    }
}
