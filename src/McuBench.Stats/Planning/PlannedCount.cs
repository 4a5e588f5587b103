namespace McuBench.Stats.Planning;

/// <summary>How many values a plan takes, and the probability with which it then does what it is for.</summary>
/// <param name="PerSample">The number of values in each sample.</param>
/// <param name="Samples">The number of samples, 1 or 2.</param>
/// <param name="Attained">The probability that this many attain: the power of a test, or the assurance of a half-width.
/// At or above what was asked, since counts are whole.</param>
/// <param name="Method">The name of the method, as in "Welch t, exact power".</param>
public sealed record PlannedCount(int PerSample, int Samples, double Attained, string Method)
{
    /// <summary>The number of values in all samples together.</summary>
    public int Total => PerSample * Samples;
}
