using McuBench.Stats.Distributions;

namespace McuBench.Stats.Planning;

/// <summary>Says after each value whether the mean is known as closely as wanted, and is honest about having looked
/// many times.</summary>
/// <remarks>
/// <para>
/// The rule: from <see cref="SequentialOptions.Minimum"/> values on, stop at the first count at which the t interval of
/// the mean is as narrow as wanted, and take <see cref="SequentialOptions.Confirming"/> values more (chow-robbins-1965,
/// simons-1968). Stopping at once would end more often where the spread looks smaller than it is: at 95 %, the plain
/// interval then holds 93 % at worst. With the defaults, the interval of the decision holds at least 95 % whatever the
/// wanted width, for independent values from a normal population; the script <c>sequential_mean.py</c> simulates it.
/// </para>
/// <para>The decision is a function of the values and their order alone: looking twice, or again from the first value
/// after an interruption, changes nothing.</para>
/// </remarks>
public static class SequentialMean
{
    /// <summary>Looks at the values taken so far. O(n).</summary>
    /// <param name="values">The values in the order taken; may be empty.</param>
    /// <param name="halfWidth">The wanted half-width, in the values' unit, above 0.</param>
    /// <param name="options">How to look; <see cref="SequentialOptions.Default"/> when null.</param>
    /// <exception cref="ArgumentException">A value is NaN or infinite, or the minimum is above the maximum.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The half-width is not above 0.</exception>
    public static SequentialDecision Judge(
        ReadOnlySpan<double> values,
        double halfWidth,
        SequentialOptions? options = null
    )
    {
        options ??= SequentialOptions.Default;
        if (!values.IsEmpty)
        {
            Check.Finite(values, nameof(values));
        }

        Check.Positive(halfWidth, "Half-width");
        if (options.Minimum > options.Maximum)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Minimum must not be above the maximum of {options.Maximum}; was {options.Minimum}."
                ),
                nameof(options)
            );
        }

        var looks = new Looks(options, halfWidth);
        foreach (var value in values)
        {
            looks.Add(value);
        }

        return looks.Decision();
    }

    // Running mean and sum of squares (Welford), so that every prefix is looked at in one pass.
    private struct Looks(SequentialOptions options, double wanted)
    {
        private int count;
        private double mean;
        private double squares;
        private int? reachedAt;

        public void Add(double value)
        {
            count++;
            var off = value - mean;
            mean += off / count;
            squares += off * (value - mean);
            if (reachedAt is null && count >= options.Minimum && Half() <= wanted)
            {
                reachedAt = count;
            }
        }

        public readonly SequentialDecision Decision()
        {
            var outlook = reachedAt switch
            {
                { } at when count >= at + options.Confirming => SequentialOutlook.Enough,
                _ when count >= options.Maximum => SequentialOutlook.AtMaximum,
                null => SequentialOutlook.GoOn,
                _ => SequentialOutlook.Confirm,
            };
            if (count < 2)
            {
                return new SequentialDecision(outlook, count, null, null, null, null);
            }

            var half = Check.Representable(Half(), "Half-width", "values");
            var claimed = Math.Max(half, wanted);
            return new SequentialDecision(
                outlook,
                count,
                half,
                reachedAt,
                outlook is SequentialOutlook.Enough or SequentialOutlook.AtMaximum
                    ? new Interval(mean - claimed, mean + claimed, options.Confidence)
                    : null,
                Expected(half)
            );
        }

        private readonly int Expected(double half)
        {
            if (reachedAt is { } at)
            {
                return Math.Min(at + options.Confirming, options.Maximum);
            }

            // t falls with the count, so that this is a little too many rather than too few.
            var needed = Math.Ceiling(count * (half / wanted) * (half / wanted));
            return (int)Math.Min(Math.Max(needed, options.Minimum) + options.Confirming, options.Maximum);
        }

        private readonly double Half() =>
            StudentT.Of(count - 1).UpperQuantile((1 - options.Confidence) / 2)
            * Math.Sqrt(squares / (count - 1) / count);
    }
}
