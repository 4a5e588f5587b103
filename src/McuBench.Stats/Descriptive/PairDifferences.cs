using System.Buffers;

namespace McuBench.Stats.Descriptive;

/// <summary>
/// The differences column less row of two ascending spans, without ever forming all of them: order statistics in
/// O((m + n) log(m + n)) for m rows and n columns, where the pairs number m · n.
/// </summary>
/// <remarks>
/// Differences rise along each row and fall from row to row, so that the pairs below a threshold are counted by two
/// pointers (johnson-mizoguchi-1978). Thresholds come from a sample of the pairs still in question, as in selection after
/// floyd-rivest-1975: each round brackets the wanted rank and leaves a small share of the pairs, until the rest is few
/// enough to be written down. Each round compares the rounded differences themselves, so the result is the same double
/// that sorting all of them would give.
/// </remarks>
internal readonly ref struct PairDifferences(ReadOnlySpan<double> rows, ReadOnlySpan<double> columns, PairRegion region)
{
    private const int LeastSample = 256;
    private const int LargestSample = 4096;

    private readonly ReadOnlySpan<double> _rows = rows;
    private readonly ReadOnlySpan<double> _columns = columns;

    /// <summary>Drawing so many takes about as long as counting the pairs below a threshold.</summary>
    private int SampleSize => Math.Clamp((_rows.Length + _columns.Length) / 4, LeastSample, LargestSample);

    /// <summary>The number of pairs.</summary>
    internal long Count =>
        region switch
        {
            PairRegion.All => (long)_rows.Length * _columns.Length,
            PairRegion.AfterOwn => (long)_rows.Length * (_rows.Length - 1) / 2,
            _ => (long)_rows.Length * (_rows.Length + 1) / 2,
        };

    /// <summary>The median of the differences.</summary>
    internal double Median()
    {
        long count = Count;
        double lower = Select((count - 1) / 2);
        return count % 2 == 1 ? lower : Location.Middle(lower, Following((count - 1) / 2, lower));
    }

    /// <summary>The difference of a rank, from 0 for the least.</summary>
    internal double Select(long rank)
    {
        int m = _rows.Length;
        int[] scratch = ArrayPool<int>.Shared.Rent(3 * m);
        double[] sample = ArrayPool<double>.Shared.Rent(SampleSize);
        var bracket = new Bracket(scratch.AsSpan(0, m), scratch.AsSpan(m, m), scratch.AsSpan(2 * m, m), rank);
        for (int row = 0; row < m; row++)
        {
            bracket.From[row] = FirstColumn(row);
            bracket.To[row] = _columns.Length;
        }

        bracket.Count = Count;
        double found = Narrow(ref bracket, sample.AsSpan(0, SampleSize)) ?? SelectRest(bracket);
        ArrayPool<int>.Shared.Return(scratch);
        ArrayPool<double>.Shared.Return(sample);
        return found;
    }

    /// <summary>The difference of the next rank, given the one of a rank.</summary>
    internal double Following(long rank, double value)
    {
        long upTo = 0;
        double next = double.PositiveInfinity;
        int column = 0;
        for (int row = 0; row < _rows.Length; row++)
        {
            while (column < _columns.Length && _columns[column] - _rows[row] <= value)
            {
                column++;
            }

            int above = Math.Max(column, FirstColumn(row));
            upTo += above - FirstColumn(row);
            if (above < _columns.Length)
            {
                next = Math.Min(next, _columns[above] - _rows[row]);
            }
        }

        return upTo > rank + 1 ? value : next;
    }

    /// <summary>Narrows the pairs in question until few are left; returns the value if it is met on the way.</summary>
    private double? Narrow(ref Bracket bracket, Span<double> sample)
    {
        long few = Math.Max(SampleSize, 4L * _rows.Length);
        // A fixed seed: the draws decide how fast the answer is found, never what it is.
        ulong state = 0x9E3779B97F4A7C15;
        while (bracket.Count > few)
        {
            Draw(bracket, sample, ref state);
            double share = (bracket.Rank - bracket.Below + 0.5) / bracket.Count;
            double centre = share * sample.Length;
            double reach = 3 * Math.Sqrt(sample.Length * share * (1 - share)) + 2;
            int lower = (int)(centre - reach);
            int upper = (int)(centre + reach);
            long before = bracket.Count;
            if (lower >= 0)
            {
                CutAt(ref bracket, Selection.Nth(sample, lower), includeEqual: false);
            }

            if (upper < sample.Length)
            {
                CutAt(ref bracket, Selection.Nth(sample, upper), includeEqual: true);
            }

            // Many equal differences can hide between the two thresholds: take them out by value.
            if (bracket.Count > before / 2)
            {
                double pivot = Selection.Nth(sample, Math.Clamp((int)centre, 0, sample.Length - 1));
                bool below = CutAt(ref bracket, pivot, includeEqual: false);
                if (!below && CutAt(ref bracket, pivot, includeEqual: true))
                {
                    return pivot;
                }
            }
        }

        return null;
    }

    /// <summary>Splits the pairs in question at a threshold and keeps the side that holds the rank.</summary>
    /// <returns>Whether that is the lower side: below the threshold, or up to it where equal ones are included.</returns>
    private bool CutAt(ref Bracket bracket, double threshold, bool includeEqual)
    {
        long lower = 0;
        int column = 0;
        for (int row = 0; row < _rows.Length; row++)
        {
            double own = _rows[row];
            while (
                column < _columns.Length
                && (includeEqual ? _columns[column] - own <= threshold : _columns[column] - own < threshold)
            )
            {
                column++;
            }

            int cut = Math.Clamp(column, bracket.From[row], bracket.To[row]);
            bracket.Cut[row] = cut;
            lower += cut - bracket.From[row];
        }

        bool inLower = bracket.Rank < bracket.Below + lower;
        if (inLower)
        {
            bracket.Cut.CopyTo(bracket.To);
            bracket.Count = lower;
        }
        else
        {
            bracket.Cut.CopyTo(bracket.From);
            bracket.Below += lower;
            bracket.Count -= lower;
        }

        return inLower;
    }

    /// <summary>Draws pairs in question, one from each of as many equal parts of their list.</summary>
    private void Draw(in Bracket bracket, Span<double> sample, ref ulong state)
    {
        double part = (double)bracket.Count / sample.Length;
        int row = -1;
        long passed = 0;
        long here = 0;
        for (int i = 0; i < sample.Length; i++)
        {
            state ^= state << 13;
            state ^= state >> 7;
            state ^= state << 17;
            double place = (i + (state >> 11) * (1.0 / (1UL << 53))) * part;
            long wanted = Math.Min((long)place, bracket.Count - 1);
            while (passed + here <= wanted)
            {
                passed += here;
                row++;
                here = bracket.To[row] - bracket.From[row];
            }

            sample[i] = _columns[bracket.From[row] + (int)(wanted - passed)] - _rows[row];
        }
    }

    private double SelectRest(in Bracket bracket)
    {
        double[] rest = ArrayPool<double>.Shared.Rent((int)bracket.Count);
        int filled = 0;
        for (int row = 0; row < _rows.Length; row++)
        {
            for (int column = bracket.From[row]; column < bracket.To[row]; column++)
            {
                rest[filled++] = _columns[column] - _rows[row];
            }
        }

        double found = Selection.Nth(rest.AsSpan(0, filled), (int)(bracket.Rank - bracket.Below));
        ArrayPool<double>.Shared.Return(rest);
        return found;
    }

    private int FirstColumn(int row) =>
        region switch
        {
            PairRegion.All => 0,
            PairRegion.AfterOwn => row + 1,
            _ => _rows.Length - 1 - row,
        };

    /// <summary>The pairs in question: for each row the columns from one place to before another.</summary>
    private ref struct Bracket(Span<int> from, Span<int> to, Span<int> cut, long rank)
    {
        internal readonly Span<int> From = from;
        internal readonly Span<int> To = to;
        internal readonly Span<int> Cut = cut;

        /// <summary>The wanted rank among all pairs.</summary>
        internal readonly long Rank = rank;

        /// <summary>How many pairs are known to come before those in question.</summary>
        internal long Below = 0;

        /// <summary>How many pairs are in question.</summary>
        internal long Count = 0;
    }
}
