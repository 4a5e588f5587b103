using UnitsNet;

namespace McuBench.Core.Supply;

/// <summary>One range of a meter and its accuracy there: ± share of the reading, ± share of the range, ± digits.</summary>
/// <remarks>Immutable; quantities are held in SI units. Safe to use from many threads.</remarks>
public sealed record MeterRange
{
    /// <summary>Makes a range.</summary>
    /// <param name="fullScale">The largest current it reads, above zero.</param>
    /// <param name="resolution">The current that one step of the last digit stands for, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">Either current is not above zero, or the step exceeds the full scale.</exception>
    public MeterRange(ElectricCurrent fullScale, ElectricCurrent resolution)
    {
        FullScale = Require.Positive(fullScale, "Meter range", nameof(fullScale));
        Resolution = Require.Positive(resolution, "Meter's resolution", nameof(resolution));
        if (Resolution.Amperes > FullScale.Amperes)
        {
            throw new ArgumentOutOfRangeException(
                nameof(resolution),
                resolution,
                $"Meter's resolution must not exceed its range of {Quantities.QuantityText.Format(FullScale)}; was {Quantities.QuantityText.Format(Resolution)}."
            );
        }
    }

    /// <summary>The largest current it reads, in amperes.</summary>
    public ElectricCurrent FullScale { get; }

    /// <summary>The current that one step of the last digit stands for, in amperes.</summary>
    public ElectricCurrent Resolution { get; }

    /// <summary>The part of the accuracy that grows with the reading (a gain), as a share of it.</summary>
    public Ratio OfReading
    {
        get;
        init => field = Require.Share(value, "Accuracy of reading", nameof(OfReading));
    }

    /// <summary>The part of the accuracy that is a share of the range (an offset).</summary>
    public Ratio OfRange
    {
        get;
        init => field = Require.Share(value, "Accuracy of range", nameof(OfRange));
    }

    /// <summary>The part of the accuracy given as steps of the last digit (an offset), at least 0.</summary>
    public int Digits
    {
        get;
        init => field = (int)Require.AtLeast(value, 0, "Accuracy in digits", nameof(Digits));
    }

    /// <summary>The voltage lost across the meter at full scale, when known: the board sees that much less.</summary>
    public ElectricPotential? BurdenAtFullScale
    {
        get;
        init =>
            field = value is { } burden
                ? Require.NotNegative(burden, "Burden voltage", nameof(BurdenAtFullScale))
                : null;
    }
}
