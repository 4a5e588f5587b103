using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Planning;

/// <summary>The test that is planned: its significance and its direction.</summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record PowerOptions
{
    /// <summary>Two-sided at 5 %.</summary>
    public static PowerOptions Default { get; } = new();

    /// <summary>The probability of a rejection where the null hypothesis holds, above 0 and below 1. 0.05 by
    /// default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a value outside (0, 1).</exception>
    public double Significance
    {
        get;
        init
        {
            PlanCheck.Significance(value, nameof(Significance));
            field = value;
        }
    } = 0.05;

    /// <summary>Which departures count. Two-sided by default; with <see cref="Alternative.Less"/> an effect below 0 is
    /// what the test looks for.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not one of the named values.</exception>
    public Alternative Alternative
    {
        get;
        init
        {
            Check.Named(value, nameof(Alternative));
            field = value;
        }
    }

    /// <summary>The significance that one side gets.</summary>
    internal double PerSide => Alternative == Alternative.TwoSided ? Significance / 2 : Significance;

    /// <summary>An effect turned so that the wanted direction is upward.</summary>
    internal double Upward(double effect) =>
        Alternative switch
        {
            Alternative.TwoSided => Math.Abs(effect),
            Alternative.Less => -effect,
            _ => effect,
        };

    /// <summary>An effect of the size given in the direction that the test looks for; upward for both.</summary>
    internal double InDirection(double size) => Alternative == Alternative.Less ? -size : size;
}
