using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>The clocks for which someone vouches that one line holds: wait states, voltage and caches stay as they are
/// between its ends.</summary>
/// <remarks>Whoever gives a range wider than what was run asks for extrapolation; results then say so.
/// Immutable; equal when both ends are equal. Safe to use from many threads.</remarks>
public sealed record ClockRange
{
    /// <summary>Makes a range.</summary>
    /// <param name="lowest">The lowest clock, above zero.</param>
    /// <param name="highest">The highest clock, not below the lowest.</param>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is not above zero, or the ends are in the wrong order.</exception>
    public ClockRange(Frequency lowest, Frequency highest)
    {
        Lowest = Require.Positive(lowest, "Lowest clock", nameof(lowest));
        Highest = Require.Positive(highest, "Highest clock", nameof(highest));
        if (Si.Hertz(Highest) < Si.Hertz(Lowest))
        {
            throw new ArgumentOutOfRangeException(
                nameof(highest),
                highest,
                $"Highest clock must not lie below the lowest, {QuantityText.Format(Lowest)}; was {QuantityText.Format(Highest)}."
            );
        }
    }

    /// <summary>The lowest clock, in hertz.</summary>
    public Frequency Lowest { get; }

    /// <summary>The highest clock, in hertz.</summary>
    public Frequency Highest { get; }

    /// <summary>Whether a clock lies in the range, ends included.</summary>
    public bool Contains(Frequency clock) => Si.Hertz(clock) >= LowestHertz && Si.Hertz(clock) <= HighestHertz;

    /// <summary>"80 MHz to 160 MHz".</summary>
    public override string ToString() => $"{QuantityText.Format(Lowest)} to {QuantityText.Format(Highest)}";

    internal double LowestHertz => Si.Hertz(Lowest);

    internal double HighestHertz => Si.Hertz(Highest);

    /// <summary>The range from the first of some summaries to the last, which are in order of their clocks.</summary>
    internal static ClockRange Of(IReadOnlyList<SetupSummary> summaries) =>
        new(summaries[0].Setup.Clock.Nominal, summaries[^1].Setup.Clock.Nominal);

    /// <summary>The clock in hertz, refused where it lies outside.</summary>
    /// <param name="clock">The clock.</param>
    /// <param name="isStated">Whether the asker stated the range, or it is what was run.</param>
    /// <param name="parameter">The parameter's name.</param>
    internal double Hertz(Frequency clock, bool isStated, string parameter)
    {
        var hertz = Si.Hertz(clock, parameter);
        return hertz >= LowestHertz && hertz <= HighestHertz
            ? hertz
            : throw new ArgumentOutOfRangeException(
                parameter,
                clock,
                $"Clock must lie within the range that was {(isStated ? "stated" : "run")}, {this}; was {QuantityText.Format(clock)}."
            );
    }
}
