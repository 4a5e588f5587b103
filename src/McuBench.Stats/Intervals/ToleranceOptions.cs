namespace McuBench.Stats.Intervals;

/// <summary>What a tolerance interval promises: to hold a share of the population, with a confidence.</summary>
/// <remarks>Immutable; equal when all parts are equal. Two shares that are easily mixed up have names here.</remarks>
public sealed record ToleranceOptions
{
    /// <summary>95 % of the population on both sides, with confidence 95 %.</summary>
    public static ToleranceOptions Default { get; } = new();

    /// <summary>The share of the population, above 0 and below 1. 0.95 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a value outside (0, 1).</exception>
    public double Content
    {
        get;
        init
        {
            if (!(value > 0 && value < 1))
            {
                throw Check.OutOfRange(nameof(Content), "Content", "above 0 and below 1", value);
            }

            field = value;
        }
    } = 0.95;

    /// <summary>The confidence that at least so much is held, above 0 and below 1. 0.95 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a value outside (0, 1).</exception>
    public double Confidence
    {
        get;
        init
        {
            Check.Confidence(value, nameof(Confidence));
            field = value;
        }
    } = 0.95;

    /// <summary>On which side the interval ends. Both by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not one of the named values.</exception>
    public ToleranceSide Side
    {
        get;
        init
        {
            Check.Named(value, nameof(Side));
            field = value;
        }
    }
}
