namespace McuBench.Stats.Planning;

/// <summary>How <see cref="SequentialMean"/> looks and when it gives up.</summary>
/// <remarks>Immutable; equal when all properties are equal. The defaults are those whose coverage was simulated.</remarks>
public sealed record SequentialOptions
{
    /// <summary>95 %, from 10 values on, 4 to confirm, 1000 at most.</summary>
    public static SequentialOptions Default { get; } = new();

    /// <summary>The confidence, above 0 and below 1; 0.95 unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set outside that range.</exception>
    public double Confidence
    {
        get;
        init
        {
            Check.Confidence(value, nameof(Confidence));
            field = value;
        }
    } = 0.95;

    /// <summary>The count at which it is looked for the first time, 5 or more; 10 unless set. A spread seen too small by
    /// chance ends the taking of few values too early.</summary>
    /// <exception cref="ArgumentException">Set below 5.</exception>
    public int Minimum
    {
        get;
        init
        {
            Check.AtLeast(value, 5, nameof(Minimum));
            field = value;
        }
    } = 10;

    /// <summary>How many values are taken after the width was reached, 0 or more; 4 unless set. They make up for having
    /// looked again and again (simons-1968).</summary>
    /// <exception cref="ArgumentException">Set below 0.</exception>
    public int Confirming
    {
        get;
        init
        {
            Check.AtLeast(value, 0, nameof(Confirming));
            field = value;
        }
    } = 4;

    /// <summary>The most values, 5 or more; 1000 unless set.</summary>
    /// <exception cref="ArgumentException">Set below 5.</exception>
    public int Maximum
    {
        get;
        init
        {
            Check.AtLeast(value, 5, nameof(Maximum));
            field = value;
        }
    } = 1000;
}
