using System.Globalization;

namespace McuBench.Core.Studies.Tables;

/// <summary>Writes things as rows under heads; columns that no row has a value for are left out.</summary>
internal static class TableWriter<T>
{
    public static WrittenColumn Text(string head, Func<T, string?> of, bool always = false) =>
        new(head, (item, options) => of(item) is { } text ? FieldText.Of(text, options) : null, always);

    /// <summary>A column of texts of ours, that need neither quotation marks nor a guard.</summary>
    public static WrittenColumn Plain(string head, Func<T, string?> of, bool always = false) =>
        new(head, (item, _) => of(item), always);

    /// <summary>A column of doubles, in the fewest digits that read back as the same.</summary>
    public static WrittenColumn Number(string head, Func<T, double?> of, bool always = false) =>
        new(head, (item, _) => of(item)?.ToString("R", CultureInfo.InvariantCulture), always);

    public static void Write(
        TextWriter text,
        IReadOnlyList<T> items,
        CsvOptions options,
        IReadOnlyList<WrittenColumn> columns
    )
    {
        var used = columns
            .Where(column => column.Always || items.Any(item => column.Field(item, options) is not null))
            .ToArray();
        WriteRow(text, options, used.Select(column => column.Head));
        foreach (var item in items)
        {
            WriteRow(text, options, used.Select(column => column.Field(item, options) ?? string.Empty));
        }
    }

    private static void WriteRow(TextWriter text, CsvOptions options, IEnumerable<string> fields)
    {
        text.Write(string.Join(options.Delimiter, fields));
        text.Write('\n');
    }

    /// <summary>A column: its head, its field of a thing, and whether it is there even when empty.</summary>
    internal sealed record WrittenColumn(string Head, Func<T, CsvOptions, string?> Field, bool Always);
}
