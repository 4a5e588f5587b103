using System.Globalization;
using McuBench.Core.Quantities;

namespace McuBench.Core.Studies.Tables;

/// <summary>Finds the columns of a table by its heads and the caller's map.</summary>
internal sealed class TableBinding<TColumn>(
    TableLayout<TColumn> layout,
    ColumnMap<TColumn> map,
    CsvOptions options,
    string sourceName,
    FaultList faults
)
    where TColumn : struct, Enum
{
    private TableHead[] heads = [];
    private bool[] isSettled = [];
    private int line;

    /// <summary>The columns by property; faults, if any, are in the list.</summary>
    public Dictionary<TColumn, BoundColumn> Bind(IReadOnlyList<string> headTexts, int headLine)
    {
        heads = [.. headTexts.Select(TableHead.Of)];
        isSettled = new bool[heads.Length];
        line = headLine;
        var bound = new Dictionary<TColumn, BoundColumn>();
        if (IsWrittenOtherwise())
        {
            return bound;
        }

        foreach (var column in TableLayout<TColumn>.All)
        {
            if (map.Constants.TryGetValue(column, out var constant))
            {
                bound.Add(column, new BoundColumn(-1, EnumWord<TColumn>.Of(column), null, constant));
            }
            else if (Find(column) is { } index)
            {
                bound.Add(column, new BoundColumn(index, heads[index].Text, UnitOf(index, column), null));
            }
        }

        for (var i = 0; i < heads.Length && !options.IgnoreOtherColumns; i++)
        {
            if (!isSettled[i])
            {
                Unknown(i, bound);
            }
        }

        return bound;
    }

    // Where the options don't fit the table every column would be missing, and none of that would help.
    private bool IsWrittenOtherwise()
    {
        var first = heads[0].Text;
        string mend;
        if (first.StartsWith('#') && !options.HashComments)
        {
            mend = "If that is a comment, say that lines beginning with # are comments.";
        }
        else if (heads.Length == 1 && first.IndexOfAny([',', ';', '\t', '|']) is var at and >= 0)
        {
            mend = $"If fields are separated by {Excerpt.Quoted(first.AsSpan(at, 1))}, say so as the delimiter.";
        }
        else
        {
            return false;
        }

        faults.Add(
            new StudyFault(sourceName, $"The first head is {Excerpt.Quoted(first)}.", mend)
            {
                Line = line,
                Column = 1,
                Offending = Excerpt.Of(first),
            }
        );
        return true;
    }

    private int? Find(TColumn column)
    {
        var wanted = map.HeadOf(column);
        var found = Enumerable.Range(0, heads.Length).Where(i => heads[i].IsMeantBy(wanted)).ToArray();
        foreach (var index in found)
        {
            isSettled[index] = true;
        }

        if (found.Length > 1)
        {
            Add(
                found[1],
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The column is there twice, here and as column {found[0] + 1} {Excerpt.Quoted(heads[found[0]].Text)}."
                ),
                "Keep one, or name the one that is meant in the column map."
            );
            return null;
        }

        if (found.Length == 0 && (layout.Required.Contains(column) || map.Heads.ContainsKey(column)))
        {
            Missing(wanted);
        }

        return found.Length == 1 ? found[0] : null;
    }

    private void Missing(string wanted)
    {
        const int most = 20;
        var mend = "Add it, name its head in the column map, or give a constant.";
        if (NearestName.Of(wanted, heads.Select(head => head.Name)) is { } near)
        {
            // Taken for the missing one, it need not be said to be unknown as well.
            isSettled[Array.FindIndex(heads, head => string.Equals(head.Name, near, StringComparison.Ordinal))] = true;
            mend = $"If {Excerpt.Quoted(near)} is meant, name it in the column map.";
        }

        var names = string.Join(", ", heads.Take(most).Select(head => Excerpt.Quoted(head.Text)));
        faults.Add(
            new StudyFault(sourceName, $"There is no column {Excerpt.Quoted(wanted)}; the heads are {names}.", mend)
            {
                Line = line,
            }
        );
    }

    private Unit? UnitOf(int index, TColumn column) =>
        layout.KindOf(column) is { } kind
            ? heads[index].UnitOf(kind, error => Add(index, error.Problem(), error.Mend))
            : null;

    private void Unknown(int index, Dictionary<TColumn, BoundColumn> bound)
    {
        if (map.Constants.Keys.Any(column => heads[index].IsMeantBy(ColumnMap<TColumn>.DefaultHead(column))))
        {
            Add(
                index,
                "The column map gives one value for all rows in place of this column.",
                "Take one of the two away."
            );
            return;
        }

        var open = TableLayout<TColumn>.All.Where(column => !bound.ContainsKey(column)).Select(map.HeadOf);
        Add(
            index,
            "The column stands for no property.",
            NearestName.Of(heads[index].Name, open) is { } near
                ? $"Did you mean {Excerpt.Quoted(near)}?"
                : "Map it, take it out, or have other columns ignored."
        );
    }

    private void Add(int index, string problem, string? mend) =>
        faults.Add(
            new StudyFault(sourceName, problem, mend)
            {
                Line = line,
                Column = index + 1,
                ColumnHead = Excerpt.Of(heads[index].Text),
                Offending = Excerpt.Of(heads[index].Text),
            }
        );
}
