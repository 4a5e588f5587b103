namespace McuBench.Core.Planning;

/// <summary>How much a bench can give: the most trials, sessions and specimens that a plan may ask for.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record PlanLimits
{
    /// <summary>200 trials a session, 20 sessions a specimen, and 10 specimens.</summary>
    public static PlanLimits Default { get; } = new();

    /// <summary>The most trials in a session, at least 3; 200 unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set below 3.</exception>
    public int TrialsPerSession
    {
        get;
        init => field = (int)Require.AtLeast(value, 3, "Most trials a session", nameof(TrialsPerSession));
    } = 200;

    /// <summary>The most sessions on a specimen, at least 1; 20 unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set below 1.</exception>
    public int SessionsPerSpecimen
    {
        get;
        init => field = (int)Require.AtLeast(value, 1, "Most sessions a specimen", nameof(SessionsPerSpecimen));
    } = 20;

    /// <summary>The most specimens of a model, at least 1; 10 unless set.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set below 1.</exception>
    public int Specimens
    {
        get;
        init => field = (int)Require.AtLeast(value, 1, "Most specimens", nameof(Specimens));
    } = 10;
}
