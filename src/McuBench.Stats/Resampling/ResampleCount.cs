namespace McuBench.Stats.Resampling;

/// <summary>How many resamples may be asked for, wherever some are.</summary>
internal static class ResampleCount
{
    /// <summary>What is taken where nothing is asked: with one more, the data themselves, a round 10,000.</summary>
    internal const int Default = 9999;

    private const int Least = 99;
    private const int Most = 10_000_000;

    /// <summary>The count, refused outside its range.</summary>
    internal static int Checked(int value, string name) =>
        value is >= Least and <= Most
            ? value
            : throw Check.OutOfRange(name, "Count of resamples", "between 99 and 1E+07", value);
}
