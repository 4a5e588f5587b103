namespace McuBench.Stats.Resampling;

/// <summary>What a resample of one sample keeps together: nothing, strata, neighbours in time, or the values of one
/// specimen and session.</summary>
/// <remarks>Immutable; safe to use from many threads.</remarks>
public abstract class ResamplingScheme
{
    private protected ResamplingScheme(string name) => Name = name;

    /// <summary>The name, as in "stratified".</summary>
    public string Name { get; }

    /// <summary>Values are drawn one by one, as for independent ones.</summary>
    public static ResamplingScheme Independent { get; } = new IndependentScheme();

    /// <summary>Values are drawn within their stratum, so that each keeps its number of values (davison-hinkley-1997, 3.2).
    /// For strata that were fixed beforehand, such as the clocks of a plan.</summary>
    /// <param name="strata">For each value the number of its stratum; any numbers will do.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    public static ResamplingScheme Stratified(params ReadOnlySpan<int> strata)
    {
        Check.AtLeast(strata.Length, 1, nameof(strata));
        return new StratifiedScheme(Grouping.Of(strata));
    }

    /// <summary>Runs of neighbouring values are drawn whole, from any start, and set end to end (kunsch-1989). For values in
    /// order of time that depend on the ones before.</summary>
    /// <param name="length">The length of a run, 1 or more and less than the number of values; n^(1/3) is a common
    /// choice.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is below 1.</exception>
    public static ResamplingScheme MovingBlocks(int length)
    {
        if (length < 1)
        {
            throw Check.OutOfRange(nameof(length), "Length of a block", "at least 1", length);
        }

        return new MovingBlockScheme(length);
    }

    /// <summary>Specimens are drawn, then sessions of each drawn one, then values of each drawn session: every level that
    /// varies is resampled (davison-hinkley-1997, 3.8). For conclusions about all specimens of a model.</summary>
    /// <remarks>Resamples of unequal groups differ in size. With few specimens (below some 5) the spread between them comes
    /// out too small, by a factor of √((g − 1)/g) for g specimens.</remarks>
    /// <param name="specimens">For each value the number of its specimen; any numbers will do.</param>
    /// <param name="sessions">For each value the number of its session within the specimen; as many as
    /// <paramref name="specimens"/>.</param>
    /// <exception cref="ArgumentException">There is no value, one specimen only, or the counts differ.</exception>
    public static ResamplingScheme Nested(ReadOnlySpan<int> specimens, ReadOnlySpan<int> sessions)
    {
        Check.AtLeast(specimens.Length, 1, nameof(specimens));
        Check.SameCount(sessions.Length, specimens.Length, "Count of sessions", "value", nameof(sessions));
        return NestedScheme.Of(specimens, sessions);
    }

    /// <summary>Refuses a sample that the scheme doesn't fit.</summary>
    internal abstract void Accept(int count);

    /// <summary>The most values that a resample may have.</summary>
    internal virtual int Capacity(int count) => count;

    /// <summary>Writes the places of a resample's values and returns how many there are.</summary>
    internal abstract int Draw(Span<int> places, int count, RandomStream random);

    /// <summary>The sets of values that a jackknife leaves out one at a time, in strata of their own; null where the scheme
    /// has none.</summary>
    internal abstract int[][][]? JackknifeUnits(int count);
}
