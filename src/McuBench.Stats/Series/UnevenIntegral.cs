namespace McuBench.Stats.Series;

/// <summary>
/// Integrates a series whose samples have times of their own, from parts that come one after the other or are integrated
/// apart and put together in order: in each case with the same bits.
/// </summary>
/// <remarks>
/// <para>The area of each step is rounded, at 4 · 10⁻¹⁶ of it at most besides what the times were rounded to when they were
/// written down; the sum of areas is exact (see <see cref="ExactSum"/>), so that its length costs no digits.</para>
/// <para>What is not finite counts as missing: it is never summed, and makes a gap. So does a step longer than the longest
/// one allowed.</para>
/// <para>It changes as samples are added, and is not safe to change from two threads at once: give each its own and
/// append them in order.</para>
/// </remarks>
public sealed class UnevenIntegral
{
    private const int Piece = 2048;

    private readonly SampleSum _areas;
    private readonly SampleSum _held;

    // Areas from each sample to the next but one, those from even places and from odd ones apart.
    private readonly SampleSum _wide;
    private readonly double[] _areasAhead = new double[Piece];
    private readonly double[] _heldAhead = new double[Piece];
    private readonly double[] _wideAhead = new double[Piece];
    private readonly TimedLedger _ledger;

    /// <summary>Begins a series.</summary>
    /// <param name="longestStep">The longest step that is no gap, above 0; infinite where every step is to be integrated.</param>
    /// <exception cref="ArgumentOutOfRangeException">The longest step is NaN or not above 0.</exception>
    public UnevenIntegral(double longestStep = double.PositiveInfinity)
        : this(longestStep, new SampleSum(), new SampleSum(), new SampleSum(), new TimedLedger()) { }

    private UnevenIntegral(double longestStep, SampleSum areas, SampleSum held, SampleSum wide, TimedLedger ledger)
    {
        if (!(longestStep > 0))
        {
            throw Check.OutOfRange(nameof(longestStep), "Longest step", "above 0", longestStep);
        }

        LongestStep = longestStep;
        _areas = areas;
        _held = held;
        _wide = wide;
        _ledger = ledger;
    }

    /// <summary>The longest step that is no gap.</summary>
    public double LongestStep { get; }

    /// <summary>The number of samples so far that are there.</summary>
    public long Count => _ledger.Count;

    /// <summary>The most bytes that <see cref="Write"/> takes; mostly it takes some 250.</summary>
    public static int LargestState => 22 * sizeof(long) + 8 * ExactSum.LargestSize;

    /// <summary>Adds samples with their times. O(n).</summary>
    /// <param name="times">The times, finite, each after the one before and after those already added.</param>
    /// <param name="samples">As many samples; what is not finite is missing.</param>
    /// <exception cref="ArgumentException">The counts differ, or a time is not finite or not after the one before; the
    /// message names its index, and nothing is added.</exception>
    public void Add(ReadOnlySpan<double> times, ReadOnlySpan<double> samples)
    {
        Check.SameCount(samples.Length, times.Length, "Count of samples", "time", nameof(samples));
        CheckOrder(times);
        while (!times.IsEmpty)
        {
            int count = Math.Min(Piece, times.Length);
            AddPiece(times[..count], samples[..count]);
            times = times[count..];
            samples = samples[count..];
        }
    }

    /// <summary>Puts a later series behind this one; the other stays as it is. The step between them is integrated. O(1).</summary>
    /// <param name="next">The later series.</param>
    /// <exception cref="ArgumentException">It begins before this one ends, or allows another longest step.</exception>
    public void Append(UnevenIntegral next)
    {
        ArgumentNullException.ThrowIfNull(next);
        if (next.LongestStep != LongestStep)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Longest step of the series that follows must be {LongestStep}; was {next.LongestStep}."
                ),
                nameof(next)
            );
        }

        if (next._ledger.FirstTime is not { } begin)
        {
            return;
        }

        if (_ledger.LastTime is { } end && !(begin > end))
        {
            throw Check.OutOfRange(
                nameof(next),
                "First time of the series that follows",
                FormattableString.Invariant($"after {end}"),
                begin
            );
        }

        _wide.Merge(next._wide, long.IsOddInteger(Count));
        _areas.Merge(next._areas, isOdd: false);
        _held.Merge(next._held, isOdd: false);
        if (next._ledger.Count > 0 && Count > 0)
        {
            bool isGap = _ledger.IsGapTo(next._ledger.First, next._ledger.MissesBeforeFirst, LongestStep);
            if (isGap)
            {
                _ledger.NoteGap(next._ledger.First);
            }
            else
            {
                _areas.AddOne(_ledger.Last.AreaTo(next._ledger.First), isOdd: false);
                _held.AddOne(_ledger.HeldTo(next._ledger.First), isOdd: false);
            }

            AddWideAcross(next._ledger);
        }

        _ledger.Append(next._ledger);
    }

    /// <summary>The figures so far; null before the first sample. O(1).</summary>
    /// <exception cref="InvalidOperationException">An integral is above the greatest double.</exception>
    public IntegralFigures? Figures()
    {
        if (Count == 0)
        {
            return null;
        }

        ExactSum areas = _areas.Total();
        double span = _ledger.Last.Time - _ledger.First.Time;
        return new IntegralFigures
        {
            Count = Count,
            Missing = _ledger.Missing,
            Gaps = _ledger.Gaps,
            Span = span,
            Uncovered = _ledger.Uncovered.Value,
            Trapezoid = areas.Value,
            Held = _held.Total().Value,
            Bridged = _ledger.Bridged.Value,
            Minimum = _ledger.Least,
            Maximum = _ledger.Greatest,
            HalvingDifference = _ledger.Gaps == 0 && Count > 2 ? HalvingDifference(areas) : null,
        };
    }

    /// <summary>Writes the state in a form that is the same on every machine.</summary>
    /// <param name="destination">Where to; <see cref="LargestState"/> bytes are always enough.</param>
    /// <returns>How many bytes were written.</returns>
    /// <exception cref="ArgumentException">The destination is too short.</exception>
    public int Write(Span<byte> destination)
    {
        var state = new StateWriter(destination);
        state.Write(LongestStep);
        state.Write(_areas.Total());
        state.Write(_held.Total());
        state.Write(_wide.Even);
        state.Write(_wide.Odd);
        _ledger.Write(ref state);
        return state.Written;
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    /// <param name="source">The bytes; what follows the state is not looked at.</param>
    /// <exception cref="ArgumentException">The bytes are no state, or end within it.</exception>
    public static UnevenIntegral Read(ReadOnlySpan<byte> source)
    {
        var state = new StateReader(source);
        double longestStep = state.ReadNumber();
        var areas = SampleSum.Of(state.ReadSum(), new ExactSum());
        var held = SampleSum.Of(state.ReadSum(), new ExactSum());
        var wide = SampleSum.Of(state.ReadSum(), state.ReadSum());
        return new UnevenIntegral(longestStep, areas, held, wide, TimedLedger.Read(ref state));
    }

    private void CheckOrder(ReadOnlySpan<double> times)
    {
        double before = _ledger.LastTime ?? double.NegativeInfinity;
        for (int i = 0; i < times.Length; i++)
        {
            if (!(times[i] > before && times[i] < double.PositiveInfinity))
            {
                throw Check.OutOfRange(
                    nameof(times),
                    FormattableString.Invariant($"Time at index {i}"),
                    FormattableString.Invariant($"finite and after {before}"),
                    times[i]
                );
            }

            before = times[i];
        }
    }

    private void AddPiece(ReadOnlySpan<double> times, ReadOnlySpan<double> samples)
    {
        int alone = Math.Min(2, times.Length);
        AddOneByOne(times[..alone], samples[..alone]);
        if (times.Length > alone && !TryAddTogether(times, samples))
        {
            AddOneByOne(times[alone..], samples[alone..]);
        }
    }

    /// <summary>Adds a piece whose first two samples were added, if nothing in it is missing and no step too long.</summary>
    private bool TryAddTogether(ReadOnlySpan<double> times, ReadOnlySpan<double> samples)
    {
        int count = samples.Length - 2;
        if (!UnevenAreas.TryMake(times, samples, LongestStep, _areasAhead, _heldAhead, _wideAhead, out var extremes))
        {
            return false;
        }

        bool isOdd = long.IsOddInteger(Count - 2);
        _ledger.TakeMany(
            new TimedSample(times[^2], samples[^2]),
            new TimedSample(times[^1], samples[^1]),
            extremes,
            count
        );
        AddAhead(count, count, isOdd);
        return true;
    }

    private void AddOneByOne(ReadOnlySpan<double> times, ReadOnlySpan<double> samples)
    {
        int steps = 0;
        int wides = 0;
        bool isOdd = long.IsOddInteger(Math.Max(0, Count - 2));
        for (int i = 0; i < times.Length; i++)
        {
            var sample = new TimedSample(times[i], samples[i]);
            if (!double.IsFinite(sample.Value))
            {
                _ledger.TakeMissing(sample.Time);
                continue;
            }

            if (_ledger.Count > 1)
            {
                _wideAhead[wides++] = _ledger.BeforeLast.AreaTo(sample);
            }

            if (_ledger.Count > 0)
            {
                if (_ledger.IsGapTo(sample, missesBefore: false, LongestStep))
                {
                    _ledger.NoteGap(sample);
                }
                else
                {
                    _areasAhead[steps] = _ledger.Last.AreaTo(sample);
                    _heldAhead[steps++] = _ledger.HeldTo(sample);
                }
            }

            _ledger.Take(sample);
        }

        AddAhead(steps, wides, isOdd);
    }

    private void AddAhead(int steps, int wides, bool isOdd)
    {
        _areas.AddAll(_areasAhead.AsSpan(0, steps));
        _held.AddAll(_heldAhead.AsSpan(0, steps));
        _wide.ExchangeIf(isOdd);
        _wide.AddAll(_wideAhead.AsSpan(0, wides));
        _wide.ExchangeIf(isOdd);
    }

    /// <summary>Adds the areas that begin in this series and end in the next one.</summary>
    private void AddWideAcross(TimedLedger next)
    {
        bool isOdd = long.IsOddInteger(Count);
        if (Count > 1)
        {
            _wide.AddOne(_ledger.BeforeLast.AreaTo(next.First), isOdd);
        }

        if (next.Count > 1)
        {
            _wide.AddOne(_ledger.Last.AreaTo(next.Second), !isOdd);
        }
    }

    /// <summary>The rule on all samples less that on those at even places, up to the last of these.</summary>
    private double HalvingDifference(ExactSum areas)
    {
        ExactSum difference = areas.Copy();
        difference.MergeTimes(-1, _wide.Even);
        if (!long.IsOddInteger(Count))
        {
            difference.AddFinite(-_ledger.BeforeLast.AreaTo(_ledger.Last));
        }

        return difference.Value;
    }
}
