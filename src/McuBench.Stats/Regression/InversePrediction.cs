namespace McuBench.Stats.Regression;

/// <summary>The abscissa at which a straight line takes a value that was read: calibration the other way round.</summary>
public static class InversePrediction
{
    /// <summary>The abscissa of a reading, or of the mean of several, with Fieller's interval (draper-smith-1998, section
    /// 3.2): all abscissas at which a prediction from the line would not reject it. O(1).</summary>
    /// <remarks>Where the slope is not clearly away from 0 (g = t²·var(slope)/slope² of 1 or more), those abscissas have no
    /// bounds; the interval is then absent and a note says so.</remarks>
    /// <param name="line">An unweighted line.</param>
    /// <param name="y">The reading or mean of readings, finite.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <param name="readings">How many readings the mean is of, 1 or more.</param>
    /// <exception cref="ArgumentNullException"><paramref name="line"/> is null.</exception>
    /// <exception cref="ArgumentException">The line is weighted, or its slope is 0.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Estimate Of(LineFit line, double y, double confidence = 0.95, int readings = 1)
    {
        const string method = "inverse prediction from a straight line, Fieller";
        ArgumentNullException.ThrowIfNull(line);
        Check.Finite(y, "Reading");
        Check.Confidence(confidence);
        if (readings < 1)
        {
            throw Check.OutOfRange(nameof(readings), "Count of readings", "1 or more", readings);
        }

        LineFit.Centre centre = line.Middle;
        if (centre.Weighted || line.Slope == 0)
        {
            throw new ArgumentException(
                centre.Weighted
                    ? "Line must have equal weights; was a weighted fit."
                    : "Slope of the line must be other than 0; was 0.",
                nameof(line)
            );
        }

        double away = (y - centre.Y) / line.Slope;
        double x = Check.Representable(centre.X + away, "Abscissa", nameof(y));
        if (line.ResidualStandardDeviation is not > 0)
        {
            string why = line.Count == 2 ? "Two points show no scatter" : "The points lie on the line";
            return new Estimate(x, line.Count, method) { Notes = [why + ": no interval."] };
        }

        double s = line.ResidualStandardDeviation.Value / Math.Abs(line.Slope);
        double t = LineFit.FactorOf(confidence, line.DegreesOfFreedom!.Value);
        double spread = 1.0 / readings + 1.0 / line.Count;
        double g = t * t * s * s / centre.SumOfSquares;
        var estimate = new Estimate(x, line.Count, method)
        {
            StandardError = s * Math.Sqrt(spread + away * away / centre.SumOfSquares),
            DegreesOfFreedom = line.DegreesOfFreedom,
        };
        if (g >= 1)
        {
            string note = FormattableString.Invariant(
                $"The slope is not resolved from 0 (g = {g:0.###}): the abscissa has no bounds."
            );
            return estimate with { Notes = [note] };
        }

        double middle = centre.X + away / (1 - g);
        double reach = t * s / (1 - g) * Math.Sqrt(away * away / centre.SumOfSquares + (1 - g) * spread);
        return estimate with { Interval = new Interval(middle - reach, middle + reach, confidence) };
    }
}
