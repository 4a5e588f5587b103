using System.Collections.Immutable;
using System.Globalization;

namespace McuBench.Stats;

/// <summary>
/// A value found from data, with what is known of its uncertainty, the method that found it and the number of values
/// behind it.
/// </summary>
/// <remarks>
/// Immutable. Equal when all parts are equal, the notes compared one by one. What can't be had is absent (null) and a
/// note says why; it is never a standard error of 0 or an interval without width.
/// </remarks>
public sealed record Estimate
{
    /// <summary>Makes an estimate with no statement of uncertainty yet.</summary>
    /// <param name="value">The estimate, finite, in the unit of the data.</param>
    /// <param name="count">The number of values behind it, 1 or more.</param>
    /// <param name="method">The method's name, as in "mean, Student t".</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite, or the count below 1.</exception>
    /// <exception cref="ArgumentException">The method's name is empty or blank.</exception>
    public Estimate(double value, int count, string method)
    {
        Check.Finite(value, "Estimate");
        Check.AtLeast(count, 1, nameof(count));
        ArgumentException.ThrowIfNullOrWhiteSpace(method);
        Value = value;
        Count = count;
        Method = method;
    }

    /// <summary>The estimate, in the unit of the data.</summary>
    public double Value { get; }

    /// <summary>The number of values behind the estimate, of all samples together.</summary>
    public int Count { get; }

    /// <summary>The name of the method, as in "mean, Student t".</summary>
    public string Method { get; }

    /// <summary>The standard error, above 0, in the unit of the data; null where it can't be had.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not a finite number above 0.</exception>
    public double? StandardError
    {
        get;
        init
        {
            if (value is { } given)
            {
                Check.Positive(given, "Standard error", nameof(StandardError));
            }

            field = value;
        }
    }

    /// <summary>The degrees of freedom of the standard error, above 0 and possibly infinite; null where none belong
    /// to the method.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not above 0.</exception>
    public double? DegreesOfFreedom
    {
        get;
        init
        {
            if (value is { } given)
            {
                Check.DegreesOfFreedom(given, nameof(DegreesOfFreedom));
            }

            field = value;
        }
    }

    /// <summary>The confidence interval, of width above 0; null where it can't be had.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to an interval whose ends are equal.</exception>
    public Interval? Interval
    {
        get;
        init
        {
            if (value is { Width: <= 0 })
            {
                throw Check.OutOfRange(nameof(Interval), "Width of the interval", "above 0", value.Width);
            }

            field = value;
        }
    }

    /// <summary>What a reader of the estimate has to know besides; empty where there is nothing.</summary>
    public ImmutableArray<string> Notes
    {
        get;
        init => field = value.IsDefault ? [] : value;
    } = [];

    /// <summary>Whether all parts are equal, the notes one by one.</summary>
    public bool Equals(Estimate? other) =>
        other is not null
        && Value.Equals(other.Value)
        && Count == other.Count
        && string.Equals(Method, other.Method, StringComparison.Ordinal)
        && StandardError.Equals(other.StandardError)
        && DegreesOfFreedom.Equals(other.DegreesOfFreedom)
        && Equals(Interval, other.Interval)
        && Notes.SequenceEqual(other.Notes, StringComparer.Ordinal);

    /// <summary>A hash of the parts that tell estimates apart best.</summary>
    public override int GetHashCode() => HashCode.Combine(Value, Count, StandardError, Interval, Notes.Length);

    /// <summary>The estimate as <c>1.5 in [1.2, 1.8] (95 %), n = 12, mean, Student t</c>, in the invariant culture.</summary>
    public override string ToString()
    {
        string interval = Interval is null
            ? "no interval"
            : string.Create(CultureInfo.InvariantCulture, $"in {Interval}");
        return string.Create(CultureInfo.InvariantCulture, $"{Value:R} {interval}, n = {Count}, {Method}");
    }
}
