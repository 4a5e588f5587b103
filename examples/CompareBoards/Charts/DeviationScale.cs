using System.Globalization;
using ScottPlot.TickGenerators;

namespace CompareBoards.Charts;

/// <summary>
/// A scale around zero on which a spread of 0.1 % and an outlier of 10 % can both be seen: even near zero, and
/// compressed outwards (inverse hyperbolic sine) where the largest deviation exceeds the middling one by far.
/// </summary>
public sealed class DeviationScale
{
    /// <summary>Beyond this ratio of the largest to the middling deviation an even scale would hide the trials.</summary>
    private const double EvenUpTo = 10;

    private readonly double knee;
    private readonly double[] ticks;

    /// <summary>Makes a scale that shows all of the deviations, given as shares.</summary>
    public DeviationScale(IEnumerable<double> deviations)
    {
        var sizes = deviations.Select(Math.Abs).Where(size => size > 0).Order().ToArray();
        var largest = sizes is [] ? 1e-3 : sizes[^1];
        var middling = sizes is [] ? largest : sizes[sizes.Length / 2];
        IsCompressed = largest > EvenUpTo * middling;
        knee = IsCompressed ? middling : largest * 1e3;
        var most = largest * 1.2;
        Reach = most;
        Limit = Place(most);
        double[] positive = IsCompressed ? Decades(Decade(most)) : [Round(most)];
        ticks = [.. positive.Reverse().Select(tick => -tick), 0, .. positive];
    }

    /// <summary>Whether the scale is compressed outwards.</summary>
    public bool IsCompressed { get; }

    /// <summary>The deviation at either end of the scale, as a share.</summary>
    public double Reach { get; }

    /// <summary>How far the scale reaches on either side.</summary>
    public double Limit { get; }

    /// <summary>Where the ticks stand on the scale.</summary>
    public IEnumerable<double> TickPlaces => ticks.Select(Place);

    /// <summary>The ticks, in percent.</summary>
    public NumericManual Ticks =>
        new(
            [.. TickPlaces],
            [
                .. ticks.Select(tick =>
                    Math.Round(100 * tick, 9).ToString("+0.######;−0.######;0", CultureInfo.InvariantCulture)
                ),
            ]
        );

    /// <summary>Where a deviation stands on the scale.</summary>
    public double Place(double deviation) => Math.Asinh(deviation / knee);

    /// <summary>The decades from the largest down, as far as their numbers have room.</summary>
    private double[] Decades(double largest)
    {
        const double leastGap = 0.34;
        var found = new Stack<double>();
        for (var tick = largest; Place(tick) > leastGap * Limit; tick /= 10)
        {
            if (!found.TryPeek(out var above) || Place(above) - Place(tick) > leastGap * Limit)
            {
                found.Push(tick);
            }
        }

        return [.. found];
    }

    /// <summary>The largest of 1, 2 and 5 times a power of ten that is not above a number.</summary>
    private static double Round(double most)
    {
        var decade = Decade(most);
        return most >= 5 * decade ? 5 * decade
            : most >= 2 * decade ? 2 * decade
            : decade;
    }

    private static double Decade(double value) => Math.Pow(10, Math.Floor(Math.Log10(value)));
}
