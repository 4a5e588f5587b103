namespace McuBench.Stats.Series;

/// <summary>
/// Integrates a series that was sampled at equal steps of time, from parts that come one after the other or are
/// integrated apart and put together in order: in each case with the same bits.
/// </summary>
/// <remarks>
/// <para>The sum of samples is exact (see <see cref="ExactSum"/>) and the result is rounded at its end, so that its
/// length costs no digits. A product of two samples is rounded once.</para>
/// <para>What is not finite counts as missing: it is never summed, and makes a gap.</para>
/// <para>It changes as samples are added, and is not safe to change from two threads at once: give each its own and
/// append them in order.</para>
/// </remarks>
public sealed class UniformIntegral
{
    private readonly SampleSum _sum;
    private readonly PlaceLedger _ledger;

    /// <summary>Begins a series.</summary>
    /// <param name="step">The time from one sample to the next, finite and above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The step is not finite or not above 0.</exception>
    public UniformIntegral(double step)
        : this(step, new SampleSum(), new PlaceLedger()) { }

    private UniformIntegral(double step, SampleSum sum, PlaceLedger ledger)
    {
        Check.Positive(step, "Step");
        Step = step;
        _sum = sum;
        _ledger = ledger;
    }

    /// <summary>The time from one sample to the next.</summary>
    public double Step { get; }

    /// <summary>The number of places so far, those of missing samples included.</summary>
    public long Places => _ledger.Places;

    /// <summary>The most bytes that <see cref="Write"/> takes; mostly it takes some 140.</summary>
    public static int LargestState => 12 * sizeof(long) + 5 * ExactSum.LargestSize;

    /// <summary>Adds samples. O(n), at about the speed of reading them.</summary>
    /// <param name="samples">The samples; what is not finite is missing.</param>
    public void Add(ReadOnlySpan<double> samples) => AddTerms(new SampleTerms(samples));

    /// <summary>Adds samples in single precision, with nothing lost. O(n), at about the speed of reading them.</summary>
    /// <param name="samples">The samples; what is not finite is missing.</param>
    public void Add(ReadOnlySpan<float> samples) => AddTerms(new SingleTerms(samples));

    /// <summary>Adds whole numbers, as converters give them. O(n), at about the speed of reading them.</summary>
    /// <param name="codes">The numbers.</param>
    public void Add(ReadOnlySpan<int> codes) => AddTerms(new CodeTerms(codes));

    /// <summary>Adds whole numbers of 16 bits, as converters give them. O(n), at about the speed of reading them.</summary>
    /// <param name="codes">The numbers.</param>
    public void Add(ReadOnlySpan<short> codes)
    {
        if (!codes.IsEmpty)
        {
            AddSums(CodeSums.Of(codes));
            _ledger.Take(codes[0], codes.Length > 1 ? codes[^2] : 0, codes[^1], codes.Length);
        }
    }

    /// <summary>Adds the products of two series sampled at the same times, as of current and voltage. O(n), at about the
    /// speed of reading them.</summary>
    /// <param name="samples">The samples of one; what is not finite is missing.</param>
    /// <param name="others">As many samples of the other.</param>
    /// <exception cref="ArgumentException">The counts differ.</exception>
    public void AddProducts(ReadOnlySpan<double> samples, ReadOnlySpan<double> others)
    {
        CheckPairs(samples.Length, others.Length);
        AddTerms(new ProductTerms(samples, others));
    }

    /// <inheritdoc cref="AddProducts(ReadOnlySpan{double}, ReadOnlySpan{double})"/>
    public void AddProducts(ReadOnlySpan<float> samples, ReadOnlySpan<float> others)
    {
        CheckPairs(samples.Length, others.Length);
        AddTerms(new SingleProductTerms(samples, others));
    }

    /// <summary>Adds the products of whole numbers of 16 bits. O(n), at about the speed of reading them.</summary>
    /// <param name="samples">The numbers of one series.</param>
    /// <param name="others">As many numbers of the other.</param>
    /// <exception cref="ArgumentException">The counts differ.</exception>
    public void AddProducts(ReadOnlySpan<short> samples, ReadOnlySpan<short> others)
    {
        CheckPairs(samples.Length, others.Length);
        if (!samples.IsEmpty)
        {
            AddSums(CodeSums.OfProducts(samples, others));
            int beforeLast = samples.Length > 1 ? samples[^2] * others[^2] : 0;
            _ledger.Take(samples[0] * others[0], beforeLast, samples[^1] * others[^1], samples.Length);
        }
    }

    /// <summary>Adds places whose samples are missing. O(1).</summary>
    /// <param name="count">How many, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The count is below 0.</exception>
    public void AddMissing(long count)
    {
        if (count < 0)
        {
            throw Check.OutOfRange(nameof(count), "Count of missing samples", "0 or more", count);
        }

        _ledger.TakeMissing(count);
    }

    /// <summary>Puts a series that follows directly, one step later, behind this one; the other stays as it is. O(1).</summary>
    /// <param name="next">The series that follows.</param>
    /// <exception cref="ArgumentException">Its step is another.</exception>
    public void Append(UniformIntegral next)
    {
        ArgumentNullException.ThrowIfNull(next);
        if (next.Step != Step)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"Step of the series that follows must be {Step}; was {next.Step}."),
                nameof(next)
            );
        }

        _sum.Merge(next._sum, _ledger.IsAtOddPlace);
        _ledger.Append(next._ledger);
    }

    /// <summary>The figures so far; null before the first sample. O(1).</summary>
    /// <exception cref="InvalidOperationException">An integral is above the greatest double.</exception>
    public IntegralFigures? Figures()
    {
        if (_ledger.IsEmpty)
        {
            return null;
        }

        // In steps; the trapezoidal rule twice, since half a sample may have no place in the sum.
        ExactSum stops = _ledger.Stops;
        ExactSum held = _sum.Total();
        var twiceTrapezoid = new ExactSum();
        twiceTrapezoid.MergeTimes(2, held);
        twiceTrapezoid.MergeTimes(-1, stops);
        twiceTrapezoid.MergeTimes(-1, _ledger.Starts);
        held.MergeTimes(-1, stops);
        return new IntegralFigures
        {
            Count = _ledger.Places - _ledger.Missing,
            Missing = _ledger.Missing,
            Gaps = _ledger.Gaps,
            Span = _ledger.Span * Step,
            Uncovered = _ledger.Uncovered * Step,
            Trapezoid = InTime(twiceTrapezoid) / 2,
            Held = InTime(held),
            Bridged = InTime(_ledger.Bridged),
            Minimum = _sum.Least,
            Maximum = _sum.Greatest,
            HalvingDifference = _ledger.CanHalve ? InTime(TwiceHalvingDifference(twiceTrapezoid)) / 2 : null,
        };
    }

    /// <summary>Writes the state in a form that is the same on every machine.</summary>
    /// <param name="destination">Where to; <see cref="LargestState"/> bytes are always enough.</param>
    /// <returns>How many bytes were written.</returns>
    /// <exception cref="ArgumentException">The destination is too short.</exception>
    public int Write(Span<byte> destination)
    {
        var state = new StateWriter(destination);
        state.Write(Step);
        _sum.Write(ref state);
        _ledger.Write(ref state);
        return state.Written;
    }

    /// <summary>Reads what <see cref="Write"/> wrote.</summary>
    /// <param name="source">The bytes; what follows the state is not looked at.</param>
    /// <exception cref="ArgumentException">The bytes are no state, or end within it.</exception>
    public static UniformIntegral Read(ReadOnlySpan<byte> source)
    {
        var state = new StateReader(source);
        double step = state.ReadFinite();
        var sum = SampleSum.Read(ref state);
        return new UniformIntegral(step, sum, PlaceLedger.Read(ref state));
    }

    private void AddTerms<TTerms>(TTerms terms)
        where TTerms : struct, ITerms, allows ref struct
    {
        int at = 0;
        while (at < terms.Count)
        {
            int end = AddFinite(terms, at);
            if (end > at)
            {
                _ledger.Take(terms.One(at), end - at > 1 ? terms.One(end - 2) : 0, terms.One(end - 1), end - at);
            }

            // In the block behind it something is not finite: sample by sample through that.
            at = Math.Min(end + SampleSum.Block, terms.Count);
            for (int i = end; i < at; i++)
            {
                AddOne(terms.One(i));
            }
        }
    }

    private int AddFinite<TTerms>(TTerms terms, int from)
        where TTerms : struct, ITerms, allows ref struct
    {
        bool isOdd = _ledger.IsAtOddPlace;
        _sum.ExchangeIf(isOdd);
        int end = _sum.Add(terms, from);
        _sum.ExchangeIf(isOdd);
        return end;
    }

    private void AddOne(double sample)
    {
        if (!double.IsFinite(sample))
        {
            _ledger.TakeMissing(1);
            return;
        }

        _sum.AddOne(sample, _ledger.IsAtOddPlace);
        _ledger.Take(sample, 0, sample, 1);
    }

    private void AddSums(CodeSums sums)
    {
        bool isOdd = _ledger.IsAtOddPlace;
        _sum.Even.AddScaled(isOdd ? sums.Odd : sums.Even, 0);
        _sum.Odd.AddScaled(isOdd ? sums.Even : sums.Odd, 0);
        _sum.See(sums.Least, sums.Greatest);
    }

    /// <summary>The rule on all samples less that on those at even places, up to the last of these; twice, in
    /// steps.</summary>
    private ExactSum TwiceHalvingDifference(ExactSum twiceTrapezoid)
    {
        ExactSum twice = twiceTrapezoid.Copy();
        twice.MergeTimes(-4, _sum.Even);
        _ledger.AddTwiceHalvingEnds(twice);
        return twice;
    }

    private double InTime(ExactSum steps) => Check.Representable(steps.Value * Step, "Integral", nameof(Step));

    private static void CheckPairs(int count, int others) =>
        Check.SameCount(others, count, "Count of the others", "sample", nameof(others));
}
