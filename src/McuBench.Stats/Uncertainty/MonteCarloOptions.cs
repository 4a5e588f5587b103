namespace McuBench.Stats.Uncertainty;

/// <summary>How <see cref="MonteCarlo"/> draws.</summary>
/// <remarks>Immutable; equal when all properties are equal.</remarks>
public sealed record MonteCarloOptions
{
    /// <summary>Seed 0, 1,000,000 draws, 95 %, as many threads as there are processors.</summary>
    public static MonteCarloOptions Default { get; } = new();

    /// <summary>The seed; the same seed gives the same result on any number of threads.</summary>
    public ulong Seed { get; init; }

    /// <summary>The coverage of the intervals, above 0 and below 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not above 0 and below 1.</exception>
    public double Confidence
    {
        get;
        init
        {
            Check.Confidence(value, nameof(Confidence));
            field = value;
        }
    } = 0.95;

    /// <summary>The number of draws, at the most of them where the procedure is adaptive; 1,000 to 100,000,000. Each
    /// takes 8 bytes.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set outside that range.</exception>
    public int Draws
    {
        get;
        init => field = Within(value, 1_000, 100_000_000, "Number of draws", nameof(Draws));
    } = 1_000_000;

    /// <summary>The significant digits of the standard uncertainty that an adaptive run has to settle, 1 to 4; each
    /// further one takes a hundred times the draws.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set outside that range.</exception>
    public int SignificantDigits
    {
        get;
        init => field = Within(value, 1, 4, "Number of significant digits", nameof(SignificantDigits));
    } = 2;

    /// <summary>The interval whose ends an adaptive run has to settle; the result has both kinds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is no named value.</exception>
    public CoverageKind Settle
    {
        get;
        init
        {
            Check.Named(value, nameof(Settle));
            field = value;
        }
    }

    /// <summary>The most threads to use, 1 or more; null for as many as there are processors. Changes no result.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set below 1.</exception>
    public int? Threads
    {
        get;
        init =>
            field = value is { } given ? Within(given, 1, int.MaxValue, "Number of threads", nameof(Threads)) : null;
    }

    private static int Within(int value, int least, int most, string what, string name) =>
        value >= least && value <= most
            ? value
            : throw Check.OutOfRange(
                name,
                what,
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{least} to {most}"),
                value
            );
}
