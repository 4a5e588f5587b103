namespace McuBench.Stats.Descriptive;

/// <summary>The constants of <see cref="Huber.AlgorithmA"/>.</summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record AlgorithmAOptions
{
    /// <summary>Exact constants: values are pulled in at 1.5 scales, and the factor that corrects the scale for it is
    /// computed (1.13339).</summary>
    public static AlgorithmAOptions Default { get; } = new();

    /// <summary>The rounded constants that iso-13528 prints: 1.5 scales, factor 1.134; results agree with other
    /// implementations of the standard, and the scale is 0.05 to 0.2 % above the exact one.</summary>
    public static AlgorithmAOptions Standard { get; } = new() { ScaleFactor = 1.134 };

    /// <summary>At how many scales from the location values are pulled in, above 0. 1.5 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not a finite number above 0.</exception>
    public double Tuning
    {
        get;
        init
        {
            Check.Positive(value, "Tuning", nameof(Tuning));
            field = value;
        }
    } = 1.5;

    /// <summary>What the standard deviation of the pulled-in values is multiplied by, above 0; null, the default, for the
    /// exact factor that belongs to the tuning.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not a finite number above 0.</exception>
    public double? ScaleFactor
    {
        get;
        init
        {
            if (value is { } given)
            {
                Check.Positive(given, "Scale factor", nameof(ScaleFactor));
            }

            field = value;
        }
    }
}
