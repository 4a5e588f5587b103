using System.Globalization;
using System.Runtime.InteropServices;
using McuBench.Stats.Descriptive;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Resampling;

/// <summary>The interval that resamples give, or the reason why they give none; or an interval with what to know of
/// it.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct BootstrapEnds(Interval? Interval, string? Note)
{
    /// <summary>davison-hinkley-1997, 5.3.</summary>
    internal static BootstrapEnds Percentile(Span<double> values, double confidence)
    {
        double tail = (1 - confidence) / 2;
        return Between(values, tail, 1 - tail, confidence);
    }

    /// <summary>davison-hinkley-1997, 5.2.</summary>
    internal static BootstrapEnds Basic(Span<double> values, double confidence, double observed)
    {
        BootstrapEnds ends = Percentile(values, confidence);
        return ends.Interval is { } direct
            ? Ordered(2 * observed - direct.Upper, 2 * observed - direct.Lower, confidence, ends.Note)
            : ends;
    }

    /// <summary>davison-hinkley-1997, 5.2.</summary>
    internal static BootstrapEnds Studentized(
        Span<double> values,
        Span<double> errors,
        double confidence,
        double observed,
        double error
    )
    {
        for (int i = 0; i < values.Length; i++)
        {
            double deviation = values[i] - observed;
            // A resample without spread lies infinitely far out, unless it hits the estimate.
            values[i] = deviation == 0 ? 0 : deviation / errors[i];
        }

        double tail = (1 - confidence) / 2;
        double low = Quantile(values, tail);
        double high = Quantile(values, 1 - tail);
        if (!double.IsFinite(low) || !double.IsFinite(high))
        {
            return new BootstrapEnds(
                null,
                "Too many resamples show no spread of their own: no studentized interval; take a percentile or BCa one."
            );
        }

        return Ordered(
            observed - high * error,
            observed - low * error,
            confidence,
            NoteFor(values.Length, tail, 1 - tail)
        );
    }

    /// <summary>efron-1987; davison-hinkley-1997, 5.3. Resamples equal to the estimate count half.</summary>
    internal static BootstrapEnds BiasCorrected(
        Span<double> values,
        double confidence,
        double observed,
        double? acceleration
    )
    {
        int below = 0;
        int equal = 0;
        foreach (double value in values)
        {
            below += value < observed ? 1 : 0;
            equal += value == observed ? 1 : 0;
        }

        double share = (below + 0.5 * equal) / values.Length;
        if (share is 0 or 1)
        {
            return new BootstrapEnds(
                null,
                "All resamples lie to one side of the estimate: no BCa interval; the bias is beyond correction."
            );
        }

        if (acceleration is not { } a)
        {
            return new BootstrapEnds(
                null,
                "A sample or stratum has one unit: no jackknife and no BCa interval; take a percentile one."
            );
        }

        double bias = -Normal.StandardUpperQuantile(share);
        double z = Normal.StandardUpperQuantile((1 - confidence) / 2);
        double low = Adjusted(bias, a, bias - z);
        double high = Adjusted(bias, a, bias + z);
        return double.IsNaN(low) || double.IsNaN(high) || low >= high
            ? new BootstrapEnds(null, "Bias and acceleration are too large for a BCa interval at this confidence.")
            : Between(values, low, high, confidence);
    }

    private static double Adjusted(double bias, double acceleration, double sum)
    {
        double scale = 1 - acceleration * sum;
        return scale > 0 ? Normal.StandardUpperTail(-(bias + sum / scale)) : double.NaN;
    }

    private static BootstrapEnds Between(Span<double> values, double low, double high, double confidence)
    {
        double lower = Quantile(values, low);
        return Ordered(lower, Quantile(values, high), confidence, NoteFor(values.Length, low, high));
    }

    private static BootstrapEnds Ordered(double low, double high, double confidence, string? note)
    {
        if (!double.IsFinite(low) || !double.IsFinite(high))
        {
            return new BootstrapEnds(null, "An end of the interval is above the greatest number: no interval.");
        }

        return low < high
            ? new BootstrapEnds(new Interval(low, high, confidence), note)
            : new BootstrapEnds(null, "Both ends fall on one value of the resamples: no interval.");
    }

    /// <summary>The quantile at rank (R + 1)·p of the resamples, between ranks by a straight line, at the ends the outermost
    /// one. Reorders the values.</summary>
    private static double Quantile(Span<double> values, double probability)
    {
        double rank = (values.Length + 1) * probability;
        // A product such as 10,000·0.025 may come out beside the whole number it is.
        double nearest = Math.Round(rank);
        rank = Math.Abs(rank - nearest) < 1e-9 * nearest ? nearest : rank;
        int below = (int)Math.Clamp(Math.Floor(rank), 1, values.Length);
        double low = Selection.Nth(values, below - 1);
        double part = rank - below;
        if (part <= 0 || below == values.Length)
        {
            return low;
        }

        // What selection leaves beyond the rank is not below it.
        double next = double.PositiveInfinity;
        foreach (double value in values[below..])
        {
            next = Math.Min(next, value);
        }

        return low + part * (next - low);
    }

    private static string? NoteFor(int resamples, double low, double high)
    {
        double tail = Math.Min(low, 1 - high);
        // The rounding of a tail such as (1 − 0.999)/2 must not ask for one more.
        double least = Math.Ceiling((1 - 1e-9) / tail) - 1;
        return resamples >= least
            ? null
            : string.Create(
                CultureInfo.InvariantCulture,
                $"The interval ends at the outermost resample; {least} resamples or more would reach beyond."
            );
    }
}
