using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Uncertainty;

/// <summary>Blocks of draws, and whether their figures agree well enough to stop (gum-s1-2008, 7.9.4).</summary>
internal sealed class SettlingBlocks
{
    private const int SmallestBlock = 10_000;
    private const double DrawsOutsideTheInterval = 100;

    private readonly MonteCarloOptions _options;
    private readonly List<double[]> _blocks = [];
    private readonly List<double> _means = [];
    private readonly List<double> _deviations = [];
    private readonly List<double> _lowers = [];
    private readonly List<double> _uppers = [];

    internal SettlingBlocks(MonteCarloOptions options)
    {
        _options = options;
        double wanted = Math.Max(SmallestBlock, Math.Ceiling(DrawsOutsideTheInterval / (1 - options.Confidence)));
        if (2 * wanted > options.Draws)
        {
            throw Check.OutOfRange(
                nameof(options),
                "Number of draws of an adaptive run",
                string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"at least {2 * wanted} at this confidence"
                ),
                options.Draws
            );
        }

        Size = (int)wanted;
    }

    internal int Size { get; }

    internal int Count => _blocks.Count;

    internal bool Settled { get; private set; }

    /// <summary>The numerical tolerance δ that the digits asked for leave; null before two blocks.</summary>
    internal double? Tolerance { get; private set; }

    internal bool RoomForMore => (Count + 1L) * Size <= _options.Draws;

    internal void Add(double[] block)
    {
        double[] sorted = [.. block];
        Array.Sort(sorted);
        (double lower, double upper) = CoverageEnds.Of(_options.Settle, sorted, _options.Confidence);
        _blocks.Add(block);
        _means.Add(Location.Mean(block));
        _deviations.Add(Scale.StandardDeviation(block));
        _lowers.Add(lower);
        _uppers.Add(upper);
        if (Count < 2)
        {
            return;
        }

        double tolerance = DecimalDigits.HalfUnitOfLastDigit(OverallDeviation(), _options.SignificantDigits);
        Tolerance = tolerance;
        Settled =
            Settles(_means, tolerance)
            && Settles(_deviations, tolerance)
            && Settles(_lowers, tolerance)
            && Settles(_uppers, tolerance);
    }

    /// <summary>All draws in the order in which they were made.</summary>
    internal double[] All()
    {
        double[] all = new double[Count * Size];
        for (int b = 0; b < Count; b++)
        {
            _blocks[b].CopyTo(all, b * Size);
        }

        return all;
    }

    /// <summary>The standard deviation of all draws so far, put together from those within and between blocks.</summary>
    private double OverallDeviation()
    {
        double within = 0;
        foreach (double deviation in _deviations)
        {
            within += deviation * deviation * (Size - 1);
        }

        double between = Scale.Variance([.. _means]) * (Count - 1) * Size;
        return Math.Sqrt((within + between) / ((Count * (double)Size) - 1));
    }

    /// <summary>Whether twice the standard deviation of the mean of a figure is below δ.</summary>
    private static bool Settles(List<double> figures, double tolerance) =>
        2 * Scale.StandardDeviation([.. figures]) / Math.Sqrt(figures.Count) < tolerance;
}
