using McuBench.Stats.Resampling;

namespace McuBench.Stats.Coverage;

/// <summary>An invented population with its true figures.</summary>
public sealed record Population
{
    /// <summary>Its shape.</summary>
    public required Shapes Shape { get; init; }

    /// <summary>Its name at the head of a column.</summary>
    public required string Name { get; init; }

    /// <summary>What it is, in words.</summary>
    public required string Description { get; init; }

    /// <summary>Draws a value.</summary>
    public required Func<RandomStream, double> Draw { get; init; }

    /// <summary>The share of the population at or below a value.</summary>
    public required Func<double, double> Cdf { get; init; }

    /// <summary>The least value with at least a share of the population at or below it.</summary>
    public required Func<double, double> Quantile { get; init; }

    /// <summary>The mean.</summary>
    public required double Mean { get; init; }

    /// <summary>The variance.</summary>
    public required double Variance { get; init; }

    /// <summary>How many times as much each second group spreads about the mean.</summary>
    public double SpreadOfSecond { get; init; } = 1;

    /// <summary>The median.</summary>
    public double Median => Quantile(0.5);

    /// <summary>The mean of the middle six tenths.</summary>
    public double TrimmedMean => _trimmedMean.Value;

    /// <summary>The median of the mean of two independent values: what the Hodges–Lehmann estimator aims at.</summary>
    public double PseudoMedian => _pseudoMedian.Value;

    private readonly Lazy<double> _trimmedMean;
    private readonly Lazy<double> _pseudoMedian;

    /// <summary>Makes a population; its figures must be set.</summary>
    public Population()
    {
        _trimmedMean = new(() => MeanOfQuantiles(0.2, 0.8));
        _pseudoMedian = new(FindPseudoMedian);
    }

    private const int Strips = 4000;

    private double MeanOfQuantiles(double from, double to)
    {
        double sum = 0;
        for (int i = 0; i < Strips; i++)
        {
            sum += Quantile(from + (to - from) * (i + 0.5) / Strips);
        }

        return sum / Strips;
    }

    /// <summary>The m at which the mean of P(Y ≤ 2m − X) over X is one half, by halving.</summary>
    private double FindPseudoMedian()
    {
        double[] values = new double[Strips];
        for (int i = 0; i < Strips; i++)
        {
            values[i] = Quantile((i + 0.5) / Strips);
        }

        double low = values[0];
        double high = values[^1];
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            bool isBelow = values.Average(x => Cdf(2 * middle - x)) < 0.5;
            (low, high) = isBelow ? (middle, high) : (low, middle);
        }

        return high;
    }
}
