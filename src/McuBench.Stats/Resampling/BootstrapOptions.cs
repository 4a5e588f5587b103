using System.Globalization;

namespace McuBench.Stats.Resampling;

/// <summary>What a bootstrap is asked: the kind of interval, its confidence, how many resamples from which seed.</summary>
/// <remarks>Immutable; equal when all parts are equal.</remarks>
public sealed record BootstrapOptions
{
    /// <summary>A BCa interval at 95 % from 9,999 resamples of seed 0, on one thread.</summary>
    public static BootstrapOptions Default { get; } = new();

    /// <summary>The kind of interval; BCa by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to what is not one of the named values.</exception>
    public BootstrapMethod Method
    {
        get;
        init
        {
            Check.Named(value, nameof(Method));
            field = value;
        }
    }

    /// <summary>The confidence of the interval, above 0 and below 1. 0.95 by default.</summary>
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

    /// <summary>The number of resamples, from 99 to 1e7. 9,999 by default, since (R + 1)·0.025 is then whole.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a value outside [99, 1e7].</exception>
    public int Resamples
    {
        get;
        init => field = ResampleCount.Checked(value, nameof(Resamples));
    } = ResampleCount.Default;

    /// <summary>For <see cref="BootstrapMethod.Studentized"/> of a statistic without a formula for its standard error: the
    /// number of resamples of each resample, from 10 to 10,000. 50 by default.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a value outside [10, 10,000].</exception>
    public int InnerResamples
    {
        get;
        init
        {
            if (value is < 10 or > 10_000)
            {
                throw Check.OutOfRange(
                    nameof(InnerResamples),
                    "Count of inner resamples",
                    "between 10 and 10000",
                    value
                );
            }

            field = value;
        }
    } = 50;

    /// <summary>The seed. The same seed gives the same resamples on any machine and any number of threads.</summary>
    public ulong Seed { get; init; }

    /// <summary>The number of threads that share the resamples, from 1 to 1,024. 1 by default; it doesn't change the
    /// result.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Set to a value outside [1, 1,024].</exception>
    public int Threads
    {
        get;
        init
        {
            if (value is < 1 or > 1024)
            {
                throw Check.OutOfRange(nameof(Threads), "Count of threads", "between 1 and 1024", value);
            }

            field = value;
        }
    } = 1;

    internal string Describe(string statistic, string scheme)
    {
        string kind = Method switch
        {
            BootstrapMethod.BiasCorrectedAccelerated => "BCa",
            BootstrapMethod.Percentile => "percentile",
            BootstrapMethod.Basic => "basic",
            _ => "studentized",
        };
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{statistic}, {kind} bootstrap{scheme}, {Resamples} resamples, seed {Seed}"
        );
    }
}
