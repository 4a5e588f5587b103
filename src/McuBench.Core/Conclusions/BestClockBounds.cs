using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Stats.Regression;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>The bounds of a best clock from single readings: f² = (I_c/k_w)·(N/t₀) is monotonic in each of its parts, so
/// its extremes lie at corners of the polygons that the readings leave.</summary>
/// <remarks>A reading of current stands for half a last digit and the meter's whole accuracy on either side; that a gain is
/// shared by all readings is left unused, which makes bounds wider and never wrong.</remarks>
internal static class BestClockBounds
{
    /// <summary>The bounds, or null where a clock has several readings, no line agrees with all, or nothing rises.</summary>
    public static ClockInterval? Of(ClockSplit split, CurrentAgainstClock waiting, CurrentAgainstClock computing)
    {
        if (split.Bounds is not { IsEmpty: false } time || Lines(waiting) is not { } ofWaiting)
        {
            return null;
        }

        var ofComputing = ReferenceEquals(waiting, computing) ? ofWaiting : Lines(computing);
        if (ofComputing is null)
        {
            return null;
        }

        // N/t₀ at the corners of one polygon; I_c/k_w at those of another, or anywhere in two that are independent.
        var ofTime = Extremes(time.Corners.Select(c => (c.Cycles, Si.Seconds(c.FixedTime))));
        var ofCurrent = Extremes(
            ReferenceEquals(ofWaiting, ofComputing)
                ? ofWaiting.Vertices.Select(v => (v.Intercept, v.Slope))
                :
                [
                    (ofComputing.Intercept.Lower, ofWaiting.Slope.Upper),
                    (ofComputing.Intercept.Upper, ofWaiting.Slope.Lower),
                ]
        );
        var lower = Math.Sqrt(ofTime.Lower * ofCurrent.Lower);
        var upper = Math.Sqrt(ofTime.Upper * ofCurrent.Upper);
        return double.IsFinite(lower) ? new ClockInterval(lower, double.IsNaN(upper) ? 0 : upper, null) : null;
    }

    /// <summary>The least and the greatest ratio of what falls to what rises: 0 where nothing may fall, infinite where
    /// nothing may rise.</summary>
    private static (double Lower, double Upper) Extremes(IEnumerable<(double Falls, double Rises)> corners)
    {
        double[] ratios =
        [
            .. corners.Select(c =>
                c.Rises <= 0 ? double.PositiveInfinity
                : c.Falls <= 0 ? 0
                : c.Falls / c.Rises
            ),
        ];
        return (ratios.Min(), ratios.Max());
    }

    private static FeasibleLines? Lines(CurrentAgainstClock line)
    {
        (double Hertz, IReadOnlyList<SupplyReading> Readings)[] points =
        [
            .. line.Summaries.Select(s =>
                (Si.Hertz(s.Setup.Clock.Nominal), CurrentAgainstClock.ReadingsOf(s, line.Phase))
            ),
        ];
        if (Array.Exists(points, p => p.Readings.Count != 1))
        {
            return null;
        }

        double[] read = [.. points.Select(p => Si.Amperes(p.Readings[0].Current))];
        double[] reach = [.. points.Select(p => ReachOf(p.Readings[0]))];
        var lines = FeasibleLines.Of(
            [.. points.Select(p => p.Hertz)],
            [.. read.Zip(reach, (r, off) => r - off)],
            [.. read.Zip(reach, (r, off) => r + off)]
        );
        return lines.IsEmpty ? null : lines;
    }

    private static double ReachOf(SupplyReading reading)
    {
        var range = reading.MeterRange;
        return Si.Amperes(range.Resolution) * (0.5 + range.Digits)
            + Si.Fraction(range.OfReading) * Si.Amperes(reading.Current)
            + Si.Fraction(range.OfRange) * Si.Amperes(range.FullScale);
    }
}
