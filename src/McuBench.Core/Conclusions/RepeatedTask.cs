using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>A task that is repeated every period, with the board idle in between, and what idling and waking cost.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record RepeatedTask
{
    /// <summary>Makes a repeated task.</summary>
    /// <param name="period">From the start of one task to the start of the next, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The period is not above zero.</exception>
    public RepeatedTask(Duration period) => Period = period;

    /// <summary>From the start of one task to the start of the next, above zero, in seconds.</summary>
    public Duration Period
    {
        get;
        init => field = Require.Positive(value, "Period", nameof(Period));
    }

    /// <summary>The current between tasks where it is known from elsewhere, in amperes; where it is absent, the readings
    /// of the idle phase are taken: a line against the clock where two clocks or more were read.</summary>
    public ElectricCurrent? Idle
    {
        get;
        init => field = value is { } given ? Require.NotNegative(given, "Idle current", nameof(Idle)) : null;
    }

    /// <summary>The charge that falling asleep and waking take in each period beyond idling, in coulombs, not negative;
    /// none unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to less than nothing.</exception>
    public ElectricCharge WakeCharge
    {
        get;
        init
        {
            var normalized = Si.Normalized(value, nameof(WakeCharge));
            field =
                Si.Coulombs(normalized) >= 0
                    ? normalized
                    : throw new ArgumentOutOfRangeException(
                        nameof(WakeCharge),
                        value,
                        $"Charge of waking must not be negative; was {QuantityText.Format(normalized)}."
                    );
        }
    } = ElectricCharge.FromCoulombs(0);
}
