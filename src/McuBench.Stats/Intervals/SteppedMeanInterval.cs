using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Intervals;

/// <summary>Confidence intervals for the mean of normal values that are read in whole steps.</summary>
public static class SteppedMeanInterval
{
    /// <summary>Over so many steps readings are dithered beyond doubt: Student's t on them is the same to a few percent
    /// of its width.</summary>
    public const double DitheredSteps = 6;

    private const double Level = 0.95;
    private const double HalfStep = 0.5;

    /// <summary>Of readings that are all equal: the uniform distribution that reaches half a step at 95 %.</summary>
    private static readonly double ErrorOfStep = HalfStep / Level / Math.Sqrt(3);

    private const double OneSigma = 0.682689492137086;

    /// <summary>Of the uniform distribution: the reach of 95 % over that of one sigma, and the standard deviation over
    /// the latter.</summary>
    private const double UniformReach = Level / OneSigma;
    private const double UniformDeviation = 0.577350269189626 / OneSigma;

    /// <summary>
    /// The mean of values of which only the steps are known. Where readings spread over more than six steps it is Student's
    /// t on them; where they spread over fewer it is the likelihood of the cells they stand for, integrated over the unknown
    /// spread (elster-2000; lira-woger-1997 for readings that are all equal). O(n + k√n) for readings at k different
    /// steps, a millisecond for few.
    /// </summary>
    /// <remarks>
    /// <para>Rounding hides where between two steps a mean lies unless the spread moves readings over several; the plain
    /// interval then claims what the data can't show, down to an interval of no width for equal readings. Averaged over
    /// all places of the mean between two steps, this one holds its confidence for any spread.</para>
    /// <para>The value is the middle of the 95 % interval: from 24, 24, 24, 24, 25 it lies nearer to 24.5 than the
    /// readings' own mean does, since one of five beyond the edge speaks for a mean close to it. Standard error and
    /// degrees of freedom are those with which Student's t reaches as far at 68.27 % and at 95 %; where it falls off faster
    /// than a normal distribution does, the degrees of freedom are infinite and the standard error that of a shape between
    /// normal and uniform. The interval is the integrated likelihood's own, equal tails; for rounded readings that are all
    /// equal it is at least the step that they stand for, half of it on either side, and the standard error that of the
    /// uniform distribution of which this is the 95 % interval.</para>
    /// <para>Where readings span more than six steps and yet more than half of them are equal, a few wild ones don't
    /// dither the rest: the standard error is not taken below that of the step, r/√12.</para>
    /// </remarks>
    /// <param name="readings">At least two, in multiples of the step or finer.</param>
    /// <param name="step">The step, above 0, in the readings' unit.</param>
    /// <param name="reading">How values become readings.</param>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There are fewer than two readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite, the step not finite and above 0, the
    /// confidence not above 0 and below 1, or the reading not one of its named values.</exception>
    public static Estimate Of(
        ReadOnlySpan<double> readings,
        double step,
        SteppedReading reading = SteppedReading.Rounded,
        double confidence = Level
    )
    {
        Check.Finite(readings);
        Check.AtLeast(readings.Length, 2, nameof(readings));
        Check.Positive(step, "Step");
        Check.Named(reading);
        Check.Confidence(confidence);
        double mean = Location.Mean(readings);
        double variance = Scale.Variance(readings);
        double least = readings[0];
        double most = readings[0];
        foreach (double value in readings)
        {
            least = Math.Min(least, value);
            most = Math.Max(most, value);
        }

        return (most - least) / step > DitheredSteps
            ? Dithered(readings, mean, variance, step, reading, confidence)
            : Stepped(StepCells.Of(readings, least, step, variance, reading), least, step, reading, confidence);
    }

    private static Estimate Dithered(
        ReadOnlySpan<double> readings,
        double mean,
        double variance,
        double step,
        SteppedReading reading,
        double confidence
    )
    {
        int n = readings.Length;
        double error = Math.Sqrt(variance / n);
        double ofStep = step * Math.Sqrt(StepCells.OfReadingIn(reading));
        bool isStuck = error < ofStep && MoreThanHalfAreEqual(readings);
        return TInterval.Of(
            mean,
            isStuck ? ofStep : error,
            n - 1,
            confidence,
            n,
            isStuck ? "mean, Student t on the step, since most readings are equal" : "mean, Student t"
        );
    }

    private static bool MoreThanHalfAreEqual(ReadOnlySpan<double> readings)
    {
        // What more than half of the values are is also their median.
        double median = Location.Median(readings);
        int equal = 0;
        foreach (double value in readings)
        {
            equal += value == median ? 1 : 0;
        }

        return 2 * equal > readings.Length;
    }

    private static Estimate Stepped(
        StepCells cells,
        double origin,
        double step,
        SteppedReading reading,
        double confidence
    )
    {
        var posterior = new CellPosterior(cells);
        var (middle, reach) = Reach(posterior, Level);
        double oneSigma = Reach(posterior, OneSigma).Half;
        var (error, freedom) = StudentOf(oneSigma, reach);
        var (centre, half) = confidence == Level ? (middle, reach) : Reach(posterior, confidence);
        if (cells.Span == 0)
        {
            // By symmetry, to the last digit.
            (middle, centre) = (0, 0);
            if (reading == SteppedReading.Rounded)
            {
                half = Math.Max(half, HalfStep);
                (error, freedom) =
                    reach < HalfStep ? (ErrorOfStep, double.PositiveInfinity) : (Math.Max(error, ErrorOfStep), freedom);
            }
        }

        return new Estimate(
            origin + step * middle,
            cells.Count,
            "mean of normal values read in steps, likelihood integrated over the spread"
        )
        {
            StandardError = step * error,
            DegreesOfFreedom = freedom,
            Interval = new Interval(origin + step * (centre - half), origin + step * (centre + half), confidence),
        };
    }

    private static (double Middle, double Half) Reach(CellPosterior posterior, double share)
    {
        double lower = posterior.Quantile(0.5 * (1 - share));
        double upper = posterior.Quantile(0.5 * (1 + share));
        return (0.5 * (lower + upper), 0.5 * (upper - lower));
    }

    /// <summary>Standard error and degrees of freedom of the Student's t that reaches as far at two levels.</summary>
    private static (double Error, double Freedom) StudentOf(double oneSigma, double reach)
    {
        double ratio = reach / oneSigma;
        double normal = Normal.StandardUpperQuantile(0.5 * (1 - Level));
        if (ratio <= normal)
        {
            double towardsNormal = Math.Clamp((ratio - UniformReach) / (normal - UniformReach), 0, 1);
            return (oneSigma * (UniformDeviation + towardsNormal * (1 - UniformDeviation)), double.PositiveInfinity);
        }

        // The ratio grows with 1/ν, from the normal's to that of one degree of freedom.
        (double low, double high) = (0, 1);
        const int halvings = 30;
        for (int i = 0; i < halvings; i++)
        {
            double middle = 0.5 * (low + high);
            var student = StudentT.Of(1 / middle);
            bool isBeyond =
                student.UpperQuantile(0.5 * (1 - Level)) > ratio * student.UpperQuantile(0.5 * (1 - OneSigma));
            (low, high) = isBeyond ? (low, middle) : (middle, high);
        }

        double freedom = 2 / (low + high);
        return (reach / StudentT.Of(freedom).UpperQuantile(0.5 * (1 - Level)), freedom);
    }
}
