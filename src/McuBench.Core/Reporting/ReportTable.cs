namespace McuBench.Core.Reporting;

/// <summary>A table of words and figures. Its first column, unless it holds figures, names the rows.</summary>
public sealed record ReportTable : ReportBlock
{
    /// <summary>Makes a table.</summary>
    /// <param name="caption">What it shows.</param>
    /// <param name="columns">Its columns, at least one.</param>
    /// <param name="rows">Its rows, each with as many cells as there are columns.</param>
    /// <exception cref="ArgumentException">There is no column, or a row has more or fewer cells than there are columns.</exception>
    public ReportTable(string caption, IEnumerable<ReportColumn> columns, IEnumerable<IReadOnlyList<ReportCell>> rows)
    {
        Caption = Require.Given(caption, nameof(caption));
        Columns = ValueList<ReportColumn>.Of(columns, "Columns", nameof(columns));
        if (Columns.Count == 0)
        {
            throw new ArgumentException("A table must have at least one column; the list was empty.", nameof(columns));
        }

        ArgumentNullException.ThrowIfNull(rows);
        Rows = ValueList<IReadOnlyList<ReportCell>>.Of(
            rows.Select(row => ValueList<ReportCell>.Of(row, "Cells", nameof(rows))),
            "Rows",
            nameof(rows)
        );
        for (var i = 0; i < Rows.Count; i++)
        {
            if (Rows[i].Count != Columns.Count)
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"Every row must have {Columns.Count} cells, one a column; row {i} had {Rows[i].Count}."
                    ),
                    nameof(rows)
                );
            }
        }
    }

    /// <summary>What it shows.</summary>
    public string Caption { get; }

    /// <summary>Its columns, at least one.</summary>
    public IReadOnlyList<ReportColumn> Columns { get; }

    /// <summary>Whether the first column names the rows: it does unless it holds figures.</summary>
    public bool HasRowHeads => !Columns[0].IsFigure;

    /// <summary>Its rows, each with as many cells as there are columns.</summary>
    public IReadOnlyList<IReadOnlyList<ReportCell>> Rows { get; }
}
