using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>What is asked of a best clock: in which range, among which clocks, for one task or one that is repeated.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record BestClockOptions
{
    private const int FewestDraws = 1_000;
    private const int MostDraws = 10_000_000;

    /// <summary>The range and the clocks that were run, one task, 20,000 draws of seed 0.</summary>
    public static BestClockOptions Default { get; } = new();

    /// <summary>The range that the board offers and for which someone vouches that the lines hold; what was run when
    /// absent. A wider one asks for extrapolation.</summary>
    public ClockRange? Range { get; init; }

    /// <summary>The clocks that the board offers, each in the range; those that were run when empty.</summary>
    public IReadOnlyList<Frequency> Offered
    {
        get;
        init =>
            field = ValueList<Frequency>.Of(
                ValueList<Frequency>
                    .Of(value, "Offered clocks", nameof(Offered))
                    .Select(clock => Require.Positive(clock, "Offered clock", nameof(Offered)))
                    .DistinctBy(clock => Si.Hertz(clock))
                    .OrderBy(clock => Si.Hertz(clock)),
                "Offered clocks",
                nameof(Offered)
            );
    } = ValueList<Frequency>.Empty;

    /// <summary>The period, idle current and wake cost where the task is repeated; absent for a task alone.</summary>
    public RepeatedTask? Repeated { get; init; }

    /// <summary>The seed of the Monte Carlo interval.</summary>
    public ulong Seed { get; init; }

    /// <summary>The draws of the Monte Carlo interval, 1,000 to 10,000,000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set outside that range.</exception>
    public int Draws
    {
        get;
        init =>
            field = value is >= FewestDraws and <= MostDraws
                ? value
                : throw new ArgumentOutOfRangeException(
                    nameof(Draws),
                    value,
                    FormattableString.Invariant($"Number of draws must be {FewestDraws} to {MostDraws}; was {value}.")
                );
    } = 20_000;
}
