using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Resampling;

/// <summary>A figure of one sample that is resampled: the mean and the median, which have fast ways of their own, or any
/// other that is given as a function.</summary>
/// <remarks>Immutable; safe to use from many threads where its function is.</remarks>
public sealed class Statistic
{
    private readonly Func<ReadOnlySpan<double>, double> _value;

    private Statistic(string name, Func<ReadOnlySpan<double>, double> value)
    {
        Name = name;
        _value = value;
    }

    /// <summary>The arithmetic mean. A resample costs O(n).</summary>
    public static Statistic Mean { get; } = new("mean", values => Location.Mean(values));

    /// <summary>The median. A resample of independent values costs O(1): its median is drawn straight from the exact
    /// distribution that it has over all resamples.</summary>
    public static Statistic Median { get; } = new("median", values => Location.Median(values));

    /// <summary>The name, as in "mean".</summary>
    public string Name { get; }

    /// <summary>A statistic of one's own.</summary>
    /// <param name="name">Its name, for the method that results state.</param>
    /// <param name="value">Its value of a resample, finite. It must not keep the span; with several threads it is called
    /// from all of them.</param>
    /// <exception cref="ArgumentNullException">The function is null.</exception>
    /// <exception cref="ArgumentException">The name is empty or blank.</exception>
    public static Statistic Of(string name, Func<ReadOnlySpan<double>, double> value)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(value);
        return new Statistic(name, value);
    }

    internal double Value(ReadOnlySpan<double> values) => _value(values);
}
