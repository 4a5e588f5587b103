using System.Globalization;
using System.Numerics;
using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Tables;

/// <summary>One row of a table: its fields by property, and the place for their faults. Used again for the next row.</summary>
internal sealed class TableRow<TColumn>(
    TableLayout<TColumn> layout,
    Dictionary<TColumn, BoundColumn> columns,
    string sourceName,
    FaultList faults
) : IFieldFaults
    where TColumn : struct, Enum
{
    // Few different sessions and specimens stand in very many rows: one string each will do.
    private readonly Dictionary<string, string> seen = new(StringComparer.Ordinal);

    private string[] fields = [];
    private int line;

    /// <summary>Whether a field of this row had a fault so far.</summary>
    public bool IsFaulty { get; private set; }

    public void Take(string[] newFields, int newLine)
    {
        (fields, line, IsFaulty) = (newFields, newLine, false);
        foreach (var column in layout.Required)
        {
            if (Field(column) is null)
            {
                Add(EnumWord<TColumn>.Of(column), null, "The field is empty.", "Each row must have it.");
            }
        }
    }

    /// <summary>A name or note; null where it is absent.</summary>
    public string? Text(TColumn column)
    {
        if (Field(column) is not { } field)
        {
            return null;
        }

        var text = FieldText.Unguarded(field);
        if (seen.TryGetValue(text, out var same))
        {
            return same;
        }

        const int most = 10_000;
        if (seen.Count < most)
        {
            seen.Add(text, text);
        }

        return text;
    }

    /// <summary>A quantity in its SI unit; null where it is absent or faulty.</summary>
    public double? Quantity(TColumn column)
    {
        if (Field(column) is not { } field)
        {
            return null;
        }

        var kind = layout.KindOf(column)!;
        var source = columns[column];
        var property = EnumWord<TColumn>.Of(column);
        if (source.Unit is { } unit)
        {
            if (QuantityParser.ReadBare(field, unit, kind, out var bare) is not { } refused)
            {
                return bare;
            }

            this.Add(property, refused);
            return null;
        }

        if (QuantityParser.Read(field, kind, out var si) is not { } error)
        {
            return si;
        }

        if (error.Kind == QuantityTextErrorKind.NoUnit && source.Constant is null)
        {
            MissUnit(source, property, field, kind);
        }
        else
        {
            this.Add(property, error);
        }

        return null;
    }

    /// <summary>A whole number; null where it is absent or faulty.</summary>
    public T? Whole<T>(TColumn column)
        where T : struct, IBinaryInteger<T>
    {
        if (Field(column) is not { } field)
        {
            return null;
        }

        if (T.TryParse(field, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole))
        {
            return whole;
        }

        Add(
            EnumWord<TColumn>.Of(column),
            field,
            $"The value must be a whole number in plain digits; was {Excerpt.Quoted(field)}."
        );
        return null;
    }

    /// <summary>One of an enumeration's words; null where it is absent or faulty.</summary>
    public T? Word<T>(TColumn column)
        where T : struct, Enum => Field(column) is { } field ? this.Word<T>(EnumWord<TColumn>.Of(column), field) : null;

    public void Add(string? property, string? offending, string problem, string? mend = null)
    {
        IsFaulty = true;
        var source =
            property is not null && EnumWord<TColumn>.Find(property) is { } column
                ? columns.GetValueOrDefault(column)
                : null;
        if (source is { Constant: not null })
        {
            if (source.IsSaid)
            {
                return;
            }

            source.IsSaid = true;
        }

        if (!faults.HasRoom)
        {
            faults.CountOne();
            return;
        }

        faults.Add(
            new StudyFault(sourceName, problem, mend)
            {
                Line = line,
                Column = source is { Constant: null } ? source.Index + 1 : null,
                ColumnHead = source is null ? null : Excerpt.Of(source.Head),
                Offending = offending is null ? null : Excerpt.Of(offending),
            }
        );
    }

    // Said once a column, not once a row; the same goes for a constant.
    private void MissUnit(BoundColumn source, string property, string field, QuantityKind kind)
    {
        if (source.IsSaid)
        {
            IsFaulty = true;
            return;
        }

        source.IsSaid = true;
        var symbol = kind.Example[(kind.Example.LastIndexOf(' ') + 1)..];
        Add(
            property,
            field,
            $"{Excerpt.Quoted(field)} has no unit, and neither has the head.",
            $"Put it in the head: \"{Excerpt.Of(source.Head)} [{symbol}]\", say."
        );
    }

    private string? Field(TColumn column)
    {
        if (!columns.TryGetValue(column, out var source))
        {
            return null;
        }

        var field = source.Constant ?? fields[source.Index];
        return field.Length == 0 ? null : field;
    }
}
