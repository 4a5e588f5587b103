using System.Text;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Studies.Json;

/// <summary>Fetches the tables that a study refers to.</summary>
internal sealed class TableAssembler(StudyNames names, JsonFaults faults, Func<string, Stream>? openTable)
{
    private readonly HashSet<string> paths = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Adds the trials of all tables and says how many rows were met.</summary>
    public int Trials(ElementList<StudyTransfer.Table> tables, List<Trial> trials) =>
        Each<TrialColumn>(
            tables,
            (text, path, columns, options) => TrialCsv.ReadInto(trials, text, path, names, columns, options, faults.All)
        );

    /// <summary>Adds the readings of all tables and says how many rows were met.</summary>
    public int Readings(ElementList<StudyTransfer.Table> tables, List<SupplyReading> readings) =>
        Each<ReadingColumn>(
            tables,
            (text, path, columns, options) =>
                ReadingCsv.ReadInto(readings, text, path, names, columns, options, faults.All)
        );

    private int Each<TColumn>(
        ElementList<StudyTransfer.Table> tables,
        Func<TextReader, string, ColumnMap<TColumn>, CsvOptions, int> read
    )
        where TColumn : struct, Enum
    {
        var met = 0;
        for (var i = 0; i < tables.Sound.Count; i++)
        {
            var (table, spot) = tables.Sound[i];
            var here = new ObjectFaults(faults, spot);
            if (i == StudyLimits.Tables)
            {
                here.Add(
                    null,
                    null,
                    FormattableString.Invariant($"A study may refer to {StudyLimits.Tables} tables of a sort at most."),
                    "Join some of them."
                );
                break;
            }

            var columns = ColumnsOf<TColumn>(table, here);
            var options = OptionsOf(table, here);
            if (
                columns is not null
                && options is not null
                && IsAllowed(table.Path, here)
                && Open(table.Path, here) is { } text
            )
            {
                using (text)
                {
                    met += read(text, table.Path, columns, options);
                }
            }
        }

        return met;
    }

    private bool IsAllowed(string path, ObjectFaults here)
    {
        if (TablePath.Refusal(path) is { } refusal)
        {
            here.Add("path", path, refusal, "Keep the table beside the study.");
            return false;
        }

        if (!paths.Add(path))
        {
            here.Add(
                "path",
                path,
                $"The table {Excerpt.Quoted(path)} is referred to twice.",
                "Its rows would count double."
            );
            return false;
        }

        return true;
    }

    private StringReader? Open(string path, ObjectFaults here)
    {
        if (openTable is null)
        {
            here.Add(
                "path",
                path,
                "The study keeps rows in a table, and this reader was given no way to open one.",
                "Read the study from its file, or give a way to open its tables."
            );
            return null;
        }

        try
        {
            using var stream = openTable(path);
            return SourceText.Read(stream, path, faults.All) is { } bytes
                ? new StringReader(Encoding.UTF8.GetString(bytes.Span))
                : null;
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            here.Add(
                "path",
                path,
                $"The table {Excerpt.Quoted(path)} can't be read: {unreadable.Message.ReplaceLineEndings(" ")}"
            );
            return null;
        }
    }

    private static ColumnMap<TColumn>? ColumnsOf<TColumn>(StudyTransfer.Table table, ObjectFaults here)
        where TColumn : struct, Enum
    {
        var map = new ColumnMap<TColumn>();
        var sound = Add("columns", table.Columns, (column, head) => map = map.WithHead(column, head));
        sound &= Add("constants", table.Constants, (column, value) => map = map.WithConstant(column, value));
        return sound ? map : null;

        bool Add(
            string property,
            IReadOnlyDictionary<string, string>? entries,
            Func<TColumn, string, ColumnMap<TColumn>> with
        )
        {
            var there = here.At(property);
            var all = true;
            foreach (var (name, text) in entries ?? new Dictionary<string, string>(StringComparer.Ordinal))
            {
                if (EnumWord<TColumn>.Find(name) is not { } column)
                {
                    all = false;
                    there.Add(
                        null,
                        name,
                        $"{Excerpt.Quoted(name)} is no property of a row.",
                        NearestName.Mend(name, EnumWord<TColumn>.All, "properties")
                    );
                }
                else
                {
                    all &= there.At(name).Make([], () => with(column, text)) is not null;
                }
            }

            return all;
        }
    }

    private static CsvOptions? OptionsOf(StudyTransfer.Table table, ObjectFaults here)
    {
        var options = new CsvOptions
        {
            HashComments = table.HashComments ?? false,
            IgnoreOtherColumns = table.IgnoreOtherColumns ?? false,
        };
        return table.Delimiter switch
        {
            null => options,
            [var one] => here.At("delimiter").Make([], () => options with { Delimiter = one }),
            _ => Refused(table.Delimiter),
        };

        CsvOptions? Refused(string given)
        {
            here.Add("delimiter", given, $"A delimiter is one character; was {Excerpt.Quoted(given)}.");
            return null;
        }
    }
}
