using System.Globalization;

namespace McuBench.Stats.Hypotheses;

/// <summary>
/// Values from groups within groups, as trials of sessions of specimens: the input of the analysis of nested layouts, checked
/// and put in order once.
/// </summary>
/// <remarks>Immutable; the values are copied in. Two are equal only when they are the same object.</remarks>
public sealed class NestedData
{
    private readonly int[][] _sizes;
    private readonly int[][] _parents;

    private NestedData(double[] ordered, int[][] sizes, int[][] parents)
    {
        Ordered = ordered;
        _sizes = sizes;
        _parents = parents;
    }

    /// <summary>The number of factors, the groups within groups; 1 or more.</summary>
    public int Factors => _sizes.Length;

    /// <summary>The number of values.</summary>
    public int Count => Ordered.Length;

    /// <summary>The values, those of each innermost group beside one another.</summary>
    internal double[] Ordered { get; }

    /// <summary>Values and, for each factor, the label of the group that each value belongs to. O(n log n), and O(n) where
    /// the values of each group already stand beside one another.</summary>
    /// <remarks>Labels of an inner factor count within their outer group only: session 1 of one specimen is not session 1 of
    /// another.</remarks>
    /// <param name="values">At least one value, each finite, in one unit.</param>
    /// <param name="factors">The labels of each factor, the outermost factor first: as many as values.</param>
    /// <exception cref="ArgumentNullException">The labels of a factor are null.</exception>
    /// <exception cref="ArgumentException">There is no value or no factor, or a factor's labels are not as many as the
    /// values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite.</exception>
    public static NestedData Of(ReadOnlySpan<double> values, params ReadOnlySpan<int[]> factors)
    {
        Check.Finite(values);
        if (factors.Length == 0)
        {
            throw new ArgumentException("Count of factors must be at least 1; was 0.", nameof(factors));
        }

        foreach (int[] labels in factors)
        {
            ArgumentNullException.ThrowIfNull(labels, nameof(factors));
            Check.SameCount(labels.Length, values.Length, "Count of labels", "value", nameof(factors));
        }

        int[][] columns = factors.ToArray();
        int[]? order = Order(columns);
        double[] ordered = values.ToArray();
        if (order is not null)
        {
            for (int i = 0; i < ordered.Length; i++)
            {
                ordered[i] = values[order[i]];
            }
        }

        return Group(ordered, columns, order);
    }

    /// <summary>One factor: each sample is a group. O(n).</summary>
    /// <param name="groups">One group or more.</param>
    /// <exception cref="ArgumentException">There is no group, or one is null.</exception>
    public static NestedData Of(params ReadOnlySpan<Sample> groups)
    {
        int count = Groups.Count(groups, 1, nameof(groups));
        double[] ordered = new double[count];
        int[] sizes = new int[groups.Length];
        int start = 0;
        for (int i = 0; i < sizes.Length; i++)
        {
            groups[i].Values.CopyTo(ordered.AsSpan(start));
            sizes[i] = groups[i].Count;
            start += sizes[i];
        }

        return new NestedData(ordered, [sizes], [new int[sizes.Length]]);
    }

    /// <summary>The number of groups of a factor, over all outer groups together.</summary>
    /// <param name="factor">The factor, 0 for the outermost.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such factor.</exception>
    public int GroupCount(int factor) =>
        factor >= 0 && factor < Factors
            ? _sizes[factor].Length
            : throw new ArgumentOutOfRangeException(
                nameof(factor),
                factor,
                string.Create(CultureInfo.InvariantCulture, $"Factor must be from 0 to {Factors - 1}; was {factor}.")
            );

    /// <summary>The number of values in each group of a factor, groups within one outer group beside one another.</summary>
    internal ReadOnlySpan<int> Sizes(int factor) => _sizes[factor];

    /// <summary>The index of the next outer factor's group in which each group of a factor lies; 0 for the
    /// outermost.</summary>
    internal ReadOnlySpan<int> Parents(int factor) => _parents[factor];

    // Null where the groups already stand beside one another in ascending labels.
    private static int[]? Order(int[][] columns)
    {
        int n = columns[0].Length;
        int i = 1;
        while (i < n && Compare(columns, i - 1, i) <= 0)
        {
            i++;
        }

        if (i >= n)
        {
            return null;
        }

        int[] order = [.. Enumerable.Range(0, n)];
        Array.Sort(
            order,
            (a, b) =>
            {
                int byLabel = Compare(columns, a, b);
                return byLabel != 0 ? byLabel : a.CompareTo(b);
            }
        );
        return order;
    }

    private static int Compare(int[][] columns, int a, int b)
    {
        foreach (int[] labels in columns)
        {
            if (labels[a] != labels[b])
            {
                return labels[a].CompareTo(labels[b]);
            }
        }

        return 0;
    }

    private static NestedData Group(double[] ordered, int[][] columns, int[]? order)
    {
        var sizes = new List<int>[columns.Length];
        var parents = new List<int>[columns.Length];
        for (int j = 0; j < columns.Length; j++)
        {
            (sizes[j], parents[j]) = ([], []);
        }

        int last = -1;
        for (int i = 0; i < ordered.Length; i++)
        {
            int place = order is null ? i : order[i];
            // Once an outer label changes, all inner groups start anew.
            bool isNew = last < 0;
            for (int j = 0; j < columns.Length; j++)
            {
                isNew = isNew || columns[j][place] != columns[j][last];
                if (isNew)
                {
                    sizes[j].Add(0);
                    parents[j].Add(j == 0 ? 0 : sizes[j - 1].Count - 1);
                }

                sizes[j][^1]++;
            }

            last = place;
        }

        return new NestedData(ordered, [.. sizes.Select(s => s.ToArray())], [.. parents.Select(p => p.ToArray())]);
    }
}
