namespace McuBench.Stats.Hypotheses;

/// <summary>The analysis of two random factors that cross, with one value where a row meets a column, as of specimens by
/// days.</summary>
public static class CrossedAnova
{
    /// <summary>The two-way analysis of variance with its variance components by the method of moments
    /// (searle-casella-mcculloch-1992). O(n).</summary>
    /// <remarks>
    /// What is left holds both the interaction of the factors and the scatter of values, which one value a cell can't tell
    /// apart. The estimates are those of restricted maximum likelihood as long as none is below 0. Shift, and the order of
    /// rows and columns, change nothing; to turn the table exchanges the factors. Intervals as for
    /// <see cref="NestedAnova"/>.
    /// </remarks>
    /// <param name="rows">Two rows or more of two values or more, all of one length: a value for each column.</param>
    /// <param name="confidence">The confidence of each interval, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There are too few rows or columns, a row is null or of another length, or all
    /// values are equal.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1), or a sum of squares is above the
    /// greatest number.</exception>
    public static ComponentAnalysis Of(ReadOnlySpan<Sample> rows, double confidence = 0.95)
    {
        Check.Confidence(confidence);
        Groups.Count(rows, 2, nameof(rows));
        int columns = rows[0].Count;
        Check.AtLeast(columns, 2, nameof(rows));
        foreach (Sample row in rows)
        {
            Check.SameCount(row.Count, columns, "Count of values in a row", "column", nameof(rows));
        }

        int a = rows.Length;
        // The rows are groups within all values: their sum of squares, and the one within, which columns take their share of.
        var byRow = NestedSums.Of(NestedData.Of(rows));
        var byColumn = NestedSums.Of(NestedData.Of(Turned(rows, columns)));
        double left = Residual(rows, columns, byRow.Exponent);
        double[] sums = [byRow.SumsOfSquares[0], byColumn.SumsOfSquares[0], left];
        if (sums.All(sum => sum == 0))
        {
            throw new ArgumentException(
                "Values must differ; all were equal, which leaves no variance to part.",
                nameof(rows)
            );
        }

        int n = a * columns;
        var table = new ComponentTable(
            ["rows", "columns", "what is left"],
            sums,
            [a - 1, columns - 1, (a - 1) * (columns - 1)],
            [
                [columns, 0, 1],
                [0, a, 1],
                [0, 0, 1],
            ],
            byRow.Exponent,
            n,
            nameof(rows)
        );
        return table.Analyse(
            byRow.Mean,
            [1.0 / a, 1.0 / columns, 1.0 / n],
            isBalanced: true,
            confidence,
            "two-way analysis of variance"
        );
    }

    private static Sample[] Turned(ReadOnlySpan<Sample> rows, int columns)
    {
        var turned = new Sample[columns];
        double[] column = new double[rows.Length];
        for (int j = 0; j < columns; j++)
        {
            for (int i = 0; i < column.Length; i++)
            {
                column[i] = rows[i].Values[j];
            }

            turned[j] = Sample.Of(column);
        }

        return turned;
    }

    // Each value less the means of its row and column and plus that of all, from a value of the data on.
    private static double Residual(ReadOnlySpan<Sample> rows, int columns, int exponent)
    {
        double origin = Math.ScaleB(rows[0].Values[0], -exponent);
        double[,] left = new double[rows.Length, columns];
        for (int i = 0; i < rows.Length; i++)
        {
            var sum = new CompensatedSum();
            for (int j = 0; j < columns; j++)
            {
                left[i, j] = Math.ScaleB(rows[i].Values[j], -exponent) - origin;
                sum.Add(left[i, j]);
            }

            double mean = sum.Value / columns;
            for (int j = 0; j < columns; j++)
            {
                left[i, j] -= mean;
            }
        }

        var squares = new CompensatedSum();
        for (int j = 0; j < columns; j++)
        {
            var sum = new CompensatedSum();
            for (int i = 0; i < rows.Length; i++)
            {
                sum.Add(left[i, j]);
            }

            // The means of the columns of what the rows leave: the mean of all has gone with the rows.
            double mean = sum.Value / rows.Length;
            for (int i = 0; i < rows.Length; i++)
            {
                double rest = left[i, j] - mean;
                squares.Add(rest * rest);
            }
        }

        return squares.Value;
    }
}
