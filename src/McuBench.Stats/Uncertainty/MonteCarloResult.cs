using System.Collections.Immutable;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Uncertainty;

/// <summary>What <see cref="MonteCarlo"/> found: the drawn values of the result and what follows from them.</summary>
/// <remarks>Immutable; safe to use from many threads. Two are equal only when they are the same object.</remarks>
public sealed class MonteCarloResult
{
    private readonly double[] _sorted;

    internal MonteCarloResult(double[] results, MonteCarloOptions options)
    {
        Value = Location.Mean(results);
        StandardUncertainty = Scale.StandardDeviation(results);
        Array.Sort(results);
        _sorted = results;
        Seed = options.Seed;
        Symmetric = Ends(CoverageKind.Symmetric, options.Confidence);
        Shortest = Ends(CoverageKind.Shortest, options.Confidence);
    }

    /// <summary>The estimate: the mean of the draws (gum-s1-2008, 7.6). It differs from the model at the estimates of the
    /// inputs where the model bends.</summary>
    public double Value { get; }

    /// <summary>The standard uncertainty: the standard deviation of the draws; 0 where the model gave the same for
    /// all.</summary>
    public double StandardUncertainty { get; }

    /// <summary>The probabilistically symmetric coverage interval (gum-s1-2008, 7.7.2); null where all draws are
    /// equal.</summary>
    public Interval? Symmetric { get; }

    /// <summary>The shortest coverage interval (gum-s1-2008, 7.7.4); null where all draws are equal.</summary>
    public Interval? Shortest { get; }

    /// <summary>The number of draws.</summary>
    public int Draws => _sorted.Length;

    /// <summary>The seed, for the generator Philox4x64-10.</summary>
    public ulong Seed { get; }

    /// <summary>Whether an adaptive run settled the digits asked for; null for a fixed number of draws.</summary>
    public bool? Settled { get; internal init; }

    /// <summary>The numerical tolerance that an adaptive run had to meet, half a unit of the last digit asked for (gum-s1-2008,
    /// 7.9.2), in the unit of the result; null for a fixed number of draws.</summary>
    public double? Tolerance { get; internal init; }

    /// <summary>What a reader has to know besides; empty where there is nothing.</summary>
    public ImmutableArray<string> Notes { get; internal init; } = [];

    /// <summary>The drawn values in ascending order: the discrete form of the distribution function (gum-s1-2008,
    /// 7.5).</summary>
    public ReadOnlySpan<double> Sorted => _sorted;

    private Interval? Ends(CoverageKind kind, double confidence)
    {
        (double lower, double upper) = CoverageEnds.Of(kind, _sorted, confidence);
        return upper > lower ? new Interval(lower, upper, confidence) : null;
    }
}
