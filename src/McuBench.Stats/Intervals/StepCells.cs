using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>Readings in units of the step, counted by their place, and the likelihood of a normal distribution's mean and
/// spread given only the cells that they stand for.</summary>
internal sealed class StepCells
{
    /// <summary>Readings are placed to an eighth of a step: some instruments show finer digits in one range than in
    /// another.</summary>
    private const double Places = 8;

    private readonly double[] _places;
    private readonly int[] _counts;
    private readonly SteppedReading _reading;

    private StepCells(double[] places, int[] counts, int readings, double variance, SteppedReading reading)
    {
        _places = places;
        _counts = counts;
        Count = readings;
        Variance = variance;
        _reading = reading;
    }

    internal int Count { get; }

    /// <summary>The readings' variance, in squared steps.</summary>
    internal double Variance { get; }

    internal double Lowest => _places[0];

    internal double Highest => _places[^1];

    internal double Span => Highest - Lowest;

    /// <summary>The most readings that stand at one place.</summary>
    internal int Largest => _counts.Max();

    /// <summary>What the reading adds to the variance of values that spread over several steps.</summary>
    internal double OfReading => OfReadingIn(_reading);

    internal static double OfReadingIn(SteppedReading reading) =>
        reading == SteppedReading.Rounded ? 1.0 / 12 : 1.0 / 6;

    /// <summary>Counts readings by their distance from an origin, in steps.</summary>
    internal static StepCells Of(
        ReadOnlySpan<double> readings,
        double origin,
        double step,
        double variance,
        SteppedReading reading
    )
    {
        var counts = new SortedDictionary<double, int>();
        foreach (double value in readings)
        {
            double place = Math.Round((value - origin) / step * Places) / Places;
            counts[place] = counts.GetValueOrDefault(place) + 1;
        }

        return new StepCells([.. counts.Keys], [.. counts.Values], readings.Length, variance / step / step, reading);
    }

    /// <summary>The logarithm of the likelihood at a mean and a spread, both in steps, and its slope in the mean; minus
    /// infinity where a reading is impossible within a double, the slope then pointing towards it.</summary>
    internal (double Log, double Slope) At(double mean, double spread)
    {
        double log = 0;
        double slope = 0;
        for (int i = 0; i < _places.Length; i++)
        {
            (double chance, double rise) =
                _reading == SteppedReading.Rounded
                    ? OfRounded(_places[i] - mean, spread)
                    : OfRandomStart(_places[i] - mean, spread);
            if (chance <= 0)
            {
                return (double.NegativeInfinity, Math.Sign(_places[i] - mean));
            }

            log += _counts[i] * Math.Log(chance);
            slope += _counts[i] * rise / chance;
        }

        return (log, slope);
    }

    /// <summary>The probability of a cell from half a step below to half a step above a distance from the mean, and its
    /// slope in the mean.</summary>
    private static (double Chance, double Rise) OfRounded(double distance, double spread)
    {
        double below = (distance - 0.5) / spread;
        double above = (distance + 0.5) / spread;

        // Of the two tails the smaller, so that a cell far from the mean keeps its digits.
        double chance =
            below > 0 ? Normal.StandardUpperTail(below) - Normal.StandardUpperTail(above)
            : above < 0 ? Normal.StandardUpperTail(-above) - Normal.StandardUpperTail(-below)
            : 1 - Normal.StandardUpperTail(above) - Normal.StandardUpperTail(-below);
        return (chance, (Normal.StandardDensity(below) - Normal.StandardDensity(above)) / spread);
    }

    /// <summary>The same for the triangle 1 − |x| about a distance from the mean: the second difference of the integrated
    /// normal distribution function.</summary>
    private static (double Chance, double Rise) OfRandomStart(double distance, double spread)
    {
        // The triangle is symmetric: of the two sides the one whose integrals are small.
        double away = Math.Abs(distance);
        (double low, double lowSlope) = Integrated((-away - 1) / spread);
        (double middle, double middleSlope) = Integrated(-away / spread);
        (double high, double highSlope) = Integrated((1 - away) / spread);
        double chance = spread * (low - 2 * middle + high);
        return (Math.Max(0, chance), Math.Sign(distance) * (lowSlope - 2 * middleSlope + highSlope));
    }

    /// <summary>zΦ(z) + φ(z) and its slope Φ(z).</summary>
    private static (double Value, double Slope) Integrated(double z)
    {
        double below = Normal.StandardUpperTail(-z);
        return (z * below + Normal.StandardDensity(z), below);
    }
}
