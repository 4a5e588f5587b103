namespace McuBench.Stats.Resampling;

/// <summary>A figure of two samples that is resampled: a difference or ratio of one statistic of each, or any other that is
/// given as a function.</summary>
/// <remarks>Immutable; safe to use from many threads where its function is.</remarks>
public sealed class TwoSampleStatistic
{
    private readonly Func<ReadOnlySpan<double>, ReadOnlySpan<double>, double>? _value;

    private TwoSampleStatistic(
        string name,
        Func<ReadOnlySpan<double>, ReadOnlySpan<double>, double>? value,
        Statistic? each,
        bool isRatio
    )
    {
        Name = name;
        _value = value;
        Each = each;
        IsRatio = isRatio;
    }

    /// <summary>The name, as in "ratio of medians".</summary>
    public string Name { get; }

    /// <summary>The statistic of each sample; null for a function of both.</summary>
    internal Statistic? Each { get; }

    /// <summary>Whether the statistic of the first is divided by that of the second, not lessened by it.</summary>
    internal bool IsRatio { get; }

    /// <summary>The first sample's statistic less the second's.</summary>
    /// <param name="each">The statistic of each sample.</param>
    /// <exception cref="ArgumentNullException">The statistic is null.</exception>
    public static TwoSampleStatistic DifferenceOf(Statistic each)
    {
        ArgumentNullException.ThrowIfNull(each);
        return new TwoSampleStatistic($"difference of {each.Name}s", null, each, isRatio: false);
    }

    /// <summary>The first sample's statistic over the second's.</summary>
    /// <param name="each">The statistic of each sample; not 0 in any resample of the second.</param>
    /// <exception cref="ArgumentNullException">The statistic is null.</exception>
    public static TwoSampleStatistic RatioOf(Statistic each)
    {
        ArgumentNullException.ThrowIfNull(each);
        return new TwoSampleStatistic($"ratio of {each.Name}s", null, each, isRatio: true);
    }

    /// <summary>A statistic of one's own.</summary>
    /// <param name="name">Its name, for the method that results state.</param>
    /// <param name="value">Its value of two resamples, finite. It must not keep the spans; with several threads it is called
    /// from all of them.</param>
    /// <exception cref="ArgumentNullException">The function is null.</exception>
    /// <exception cref="ArgumentException">The name is empty or blank.</exception>
    public static TwoSampleStatistic Of(string name, Func<ReadOnlySpan<double>, ReadOnlySpan<double>, double> value)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(value);
        return new TwoSampleStatistic(name, value, null, isRatio: false);
    }

    internal double Value(ReadOnlySpan<double> first, ReadOnlySpan<double> second) =>
        Each is null ? _value!(first, second) : Combine(Each.Value(first), Each.Value(second));

    internal double Combine(double first, double second) => IsRatio ? first / second : first - second;
}
