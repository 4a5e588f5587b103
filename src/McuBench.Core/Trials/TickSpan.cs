using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Trials;

/// <summary>The time between two readings of a tick counter: as its nominal clock gives it, and the limits within which
/// the true time lies.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record TickSpan
{
    internal TickSpan(ulong ticks, Duration nominal, Duration shortest, Duration longest)
    {
        Ticks = ticks;
        Nominal = nominal;
        Shortest = shortest;
        Longest = longest;
    }

    /// <summary>The difference of the two counts.</summary>
    public ulong Ticks { get; }

    /// <summary>The ticks at the nominal clock, in seconds.</summary>
    public Duration Nominal { get; }

    /// <summary>The shortest time that makes so many ticks, in seconds: one tick less, at the fastest clock within its
    /// tolerance; at the nominal clock where the tolerance is unknown.</summary>
    public Duration Shortest { get; }

    /// <summary>The longest time that makes so many ticks, in seconds: one tick more, at the slowest clock within its
    /// tolerance; at the nominal clock where the tolerance is unknown.</summary>
    public Duration Longest { get; }

    /// <summary>"412.1 ms, between 412.0 ms and 412.2 ms".</summary>
    public override string ToString() =>
        $"{QuantityText.Format(Nominal)}, between {QuantityText.Format(Shortest)} and {QuantityText.Format(Longest)}";
}
