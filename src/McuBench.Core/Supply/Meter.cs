using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Supply;

/// <summary>What read the supply current: its ranges with their accuracies, its averaging time, and its last checks.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record Meter
{
    /// <summary>Makes a meter.</summary>
    /// <param name="name">Its name, distinct within a study.</param>
    /// <param name="ranges">Its current ranges, at least one, with distinct full scales.</param>
    /// <exception cref="ArgumentException">The name is blank or too long, there is no range, or two have one full scale.</exception>
    public Meter(string name, params IEnumerable<MeterRange> ranges)
    {
        Name = name;
        var list = ValueList<MeterRange>.Of(
            ValueList<MeterRange>.Of(ranges, "Meter ranges", nameof(ranges)).OrderBy(r => Si.Amperes(r.FullScale)),
            "Meter ranges",
            nameof(ranges)
        );
        if (list.Count == 0)
        {
            throw new ArgumentException("A meter must have at least one range; the list was empty.", nameof(ranges));
        }

        for (var i = 1; i < list.Count; i++)
        {
            if (Si.Amperes(list[i].FullScale) == Si.Amperes(list[i - 1].FullScale))
            {
                throw new ArgumentException(
                    $"A meter's ranges must have distinct full scales; {QuantityText.Format(list[i].FullScale)} stands twice.",
                    nameof(ranges)
                );
            }
        }

        Ranges = list;
    }

    /// <summary>Its name, distinct within a study.</summary>
    public string Name
    {
        get;
        init => field = Require.Name(value, "Meter's name", nameof(Name));
    }

    /// <summary>Its current ranges, smallest first.</summary>
    public IReadOnlyList<MeterRange> Ranges { get; }

    /// <summary>The time over which one reading is averaged, above zero, when known.</summary>
    public Duration? AveragingTime
    {
        get;
        init =>
            field = value is { } time ? Require.Positive(time, "Meter's averaging time", nameof(AveragingTime)) : null;
    }

    /// <summary>The last check of its zero, when one was made.</summary>
    public MeterCheck? ZeroCheck { get; init; }

    /// <summary>The last check against a load of known draw, when one was made.</summary>
    public MeterCheck? KnownLoadCheck { get; init; }

    /// <summary>The smallest range that holds a current, or null where none does.</summary>
    public MeterRange? RangeFor(ElectricCurrent current)
    {
        var amperes = Si.Amperes(current);
        return Ranges.FirstOrDefault(range => Si.Amperes(range.FullScale) >= amperes);
    }
}
