namespace McuBench.Stats.Series;

/// <summary>
/// Quantiles of values that come one at a time or in parts, without keeping them: exact up to 4096 values, and to within
/// 0.4 % of the value beyond.
/// </summary>
/// <remarks>
/// <para>Beyond that many values a count is kept for each 128th of a power of two, so that the middle of a count is off by
/// at most 1/256 of the value (masson-2019 has the guarantee). Values are told apart by size and sign alone: parts merged
/// in any order give the same. Values below 2.3E-308 in size count as 0.</para>
/// <para>O(1) a value; memory is 1 kB for each power of two that occurs. It changes as values are added, and is not safe to
/// change from two threads at once: give each its own and merge them.</para>
/// </remarks>
public sealed class QuantileSketch
{
    private const int MostKept = 4096;
    private const int DivisionBits = 7;
    private const int Divisions = 1 << DivisionBits;
    private const int MantissaBits = 52;
    private const int Powers = 2047;

    private readonly long[]?[] _positive = new long[Powers][];
    private readonly long[]?[] _negative = new long[Powers][];
    private List<double>? _kept = [];
    private double _least = double.PositiveInfinity;
    private double _greatest = double.NegativeInfinity;
    private long _zeros;

    /// <summary>By how much a quantile may be off, as a share of it, once values are not kept any more.</summary>
    public static double RelativeError => 1.0 / (2 * Divisions);

    /// <summary>The number of values so far.</summary>
    public long Count { get; private set; }

    /// <summary>Whether quantiles are exact still.</summary>
    public bool IsExact => _kept is not null;

    /// <summary>Adds values. O(n).</summary>
    /// <param name="values">The values, finite; may be empty.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite; the message names its index, and nothing is
    /// added.</exception>
    public void Add(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty)
        {
            return;
        }

        Check.Finite(values);
        foreach (double value in values)
        {
            _least = Math.Min(_least, value);
            _greatest = Math.Max(_greatest, value);
        }

        Count += values.Length;
        if (_kept is not null && Count <= MostKept)
        {
            _kept.AddRange(values);
            return;
        }

        StopKeeping();
        foreach (double value in values)
        {
            CountIn(value);
        }
    }

    /// <summary>Adds all that another sketch has seen; the other stays as it is.</summary>
    /// <param name="other">The other sketch.</param>
    /// <exception cref="ArgumentException">It is this one.</exception>
    public void Merge(QuantileSketch other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (ReferenceEquals(other, this))
        {
            throw new ArgumentException("Sketch to merge must be another one; was this one.", nameof(other));
        }

        if (other._kept is not null)
        {
            Add([.. other._kept]);
            return;
        }

        StopKeeping();
        Count += other.Count;
        _least = Math.Min(_least, other._least);
        _greatest = Math.Max(_greatest, other._greatest);
        _zeros += other._zeros;
        AddCounts(_positive, other._positive);
        AddCounts(_negative, other._negative);
    }

    /// <summary>A quantile: the least value that at least this share of all values don't exceed (hyndman-fan-1996, type 1);
    /// O(n log n) as long as values are kept, and at most O(powers of two) beyond.</summary>
    /// <param name="probability">The share, from 0 to 1; 0 gives the least value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share lies outside [0, 1].</exception>
    /// <exception cref="InvalidOperationException">There is no value yet.</exception>
    public double Quantile(double probability)
    {
        Check.Probability(probability);
        if (Count == 0)
        {
            throw new InvalidOperationException("Count of values must be at least 1; was 0.");
        }

        long rank = Math.Clamp((long)Math.Ceiling(probability * Count), 1, Count);
        if (_kept is not null)
        {
            double[] sorted = [.. _kept];
            Array.Sort(sorted);
            return sorted[rank - 1];
        }

        // The ends are known exactly.
        return rank == 1 ? _least
            : rank == Count ? _greatest
            : Math.Clamp(MiddleAt(rank), _least, _greatest);
    }

    private void StopKeeping()
    {
        if (_kept is null)
        {
            return;
        }

        foreach (double value in _kept)
        {
            CountIn(value);
        }

        _kept = null;
    }

    private void CountIn(double value)
    {
        long bits = BitConverter.DoubleToInt64Bits(value);
        int place = (int)((bits & long.MaxValue) >> (MantissaBits - DivisionBits));
        int power = place >> DivisionBits;
        if (power == 0)
        {
            _zeros++;
            return;
        }

        long[]?[] counts = bits < 0 ? _negative : _positive;
        (counts[power] ??= new long[Divisions])[place & (Divisions - 1)]++;
    }

    private double MiddleAt(long rank)
    {
        for (int power = Powers - 1; power > 0; power--)
        {
            for (int i = Divisions - 1; i >= 0 && _negative[power] is { } counts; i--)
            {
                if ((rank -= counts[i]) <= 0)
                {
                    return -Middle(power, i);
                }
            }
        }

        if ((rank -= _zeros) <= 0)
        {
            return 0;
        }

        for (int power = 1; power < Powers; power++)
        {
            for (int i = 0; i < Divisions && _positive[power] is { } counts; i++)
            {
                if ((rank -= counts[i]) <= 0)
                {
                    return Middle(power, i);
                }
            }
        }

        return _greatest;
    }

    private static double Middle(int power, int division)
    {
        long from = ((long)power << MantissaBits) + ((long)division << (MantissaBits - DivisionBits));
        return BitConverter.Int64BitsToDouble(from + (1L << (MantissaBits - DivisionBits - 1)));
    }

    private static void AddCounts(long[]?[] counts, long[]?[] others)
    {
        for (int power = 0; power < Powers; power++)
        {
            if (others[power] is not { } more)
            {
                continue;
            }

            long[] mine = counts[power] ??= new long[Divisions];
            for (int i = 0; i < Divisions; i++)
            {
                mine[i] += more[i];
            }
        }
    }
}
