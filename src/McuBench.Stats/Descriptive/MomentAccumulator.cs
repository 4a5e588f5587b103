namespace McuBench.Stats.Descriptive;

/// <summary>
/// Count, least and greatest value and the first four moments of values that come one at a time or in parts, without
/// keeping them.
/// </summary>
/// <remarks>
/// <para>Updates and merges follow pebay-2008, with the mean held in two doubles, so that a mean far from 0 costs the
/// higher moments no digits. Adding the same values in another order, or in parts merged in any order, changes the last
/// few digits at most. Each step is O(1) and allocates nothing.</para>
/// <para>It changes as values are added, and is not safe to change from two threads at once: give each its own and merge
/// them.</para>
/// </remarks>
public sealed class MomentAccumulator
{
    private const double Largest = 1e300;

    private double _mean;
    private double _meanRest;
    private double _m2;
    private double _m3;
    private double _m4;
    private double _least = double.PositiveInfinity;
    private double _greatest = double.NegativeInfinity;

    /// <summary>The number of values so far.</summary>
    public long Count { get; private set; }

    /// <summary>The least value so far.</summary>
    /// <exception cref="InvalidOperationException">There is no value yet.</exception>
    public double Minimum => After(1, _least);

    /// <summary>The greatest value so far.</summary>
    /// <exception cref="InvalidOperationException">There is no value yet.</exception>
    public double Maximum => After(1, _greatest);

    /// <summary>The mean so far.</summary>
    /// <exception cref="InvalidOperationException">There is no value yet.</exception>
    public double Mean => After(1, _mean + _meanRest);

    /// <summary>The variance so far, with divisor n − 1.</summary>
    /// <exception cref="InvalidOperationException">There are fewer than two values, or it is above the greatest number.</exception>
    public double Variance => After(2, _m2 / (Count - 1));

    /// <summary>The standard deviation so far, with divisor n − 1.</summary>
    /// <exception cref="InvalidOperationException">There are fewer than two values, or the variance is above the greatest
    /// number.</exception>
    public double StandardDeviation => Math.Sqrt(Variance);

    /// <summary>The skewness of the values as they are, m₃/m₂^(3/2) with moments of divisor n; for the estimate of a
    /// population's see <see cref="Shape.Skewness"/>.</summary>
    /// <exception cref="InvalidOperationException">There are fewer than two values, all are equal, or a moment is above
    /// the greatest number.</exception>
    public double Skewness => Spread(_m3 / _m2 / Math.Sqrt(_m2) * Math.Sqrt(Count));

    /// <summary>The excess kurtosis of the values as they are, m₄/m₂² − 3 with moments of divisor n; for the estimate of
    /// a population's see <see cref="Shape.ExcessKurtosis"/>.</summary>
    /// <exception cref="InvalidOperationException">There are fewer than two values, all are equal, or a moment is above
    /// the greatest number.</exception>
    public double ExcessKurtosis => Spread(_m4 / _m2 / _m2 * Count - 3);

    /// <summary>Adds a value.</summary>
    /// <param name="value">The value, from −1E300 to 1E300.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN, infinite or outside that range; nothing is added.</exception>
    public void Add(double value)
    {
        if (!(Math.Abs(value) <= Largest))
        {
            throw Check.OutOfRange(nameof(value), "Value", "a finite number from -1E300 to 1E300", value);
        }

        long before = Count++;
        _least = Math.Min(_least, value);
        _greatest = Math.Max(_greatest, value);
        double n = Count;
        double delta = value - _mean - _meanRest;
        double step = delta / n;
        double term = delta * step * before;
        // pebay-2008, eqs. 2.1 to 2.4 with one set of size 1.
        _m4 += term * step * step * (n * n - 3 * n + 3) + 6 * step * step * _m2 - 4 * step * _m3;
        _m3 += term * step * (n - 2) - 3 * step * _m2;
        _m2 += term;
        MoveMean(step);
    }

    /// <summary>Adds values.</summary>
    /// <param name="values">The values, each from −1E300 to 1E300; may be empty.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN, infinite or outside that range; the message names
    /// its index, and nothing is added.</exception>
    public void Add(ReadOnlySpan<double> values)
    {
        for (int i = 0; i < values.Length; i++)
        {
            if (!(Math.Abs(values[i]) <= Largest))
            {
                string what = FormattableString.Invariant($"Value at index {i}");
                throw Check.OutOfRange(nameof(values), what, "a finite number from -1E300 to 1E300", values[i]);
            }
        }

        foreach (double value in values)
        {
            Add(value);
        }
    }

    /// <summary>Adds all that another accumulator has seen; the other stays as it is.</summary>
    /// <param name="other">The other accumulator; itself is allowed, and doubles each value.</param>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    public void Merge(MomentAccumulator other)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.Count == 0)
        {
            return;
        }

        if (Count == 0)
        {
            // By the formulas below the mean would be rounded to one double.
            (_mean, _meanRest) = (other._mean, other._meanRest);
        }

        double a = Count;
        double b = other.Count;
        double n = a + b;
        double delta = other._mean - _mean + (other._meanRest - _meanRest);
        double step = delta / n;
        double squares = delta * step * a * b;
        // pebay-2008, eqs. 2.1 to 2.4.
        double m4 =
            _m4
            + other._m4
            + squares * step * step * (a * a - a * b + b * b)
            + 6 * step * step * (a * a * other._m2 + b * b * _m2)
            + 4 * step * (a * other._m3 - b * _m3);
        double m3 = _m3 + other._m3 + squares * step * (a - b) + 3 * step * (a * other._m2 - b * _m2);
        _m4 = m4;
        _m3 = m3;
        _m2 += other._m2 + squares;
        _least = Math.Min(_least, other._least);
        _greatest = Math.Max(_greatest, other._greatest);
        Count += other.Count;
        MoveMean(step * b);
    }

    private void MoveMean(double step)
    {
        double sum = _mean + step;
        double back = sum - _mean;
        _meanRest += _mean - (sum - back) + (step - back);
        _mean = sum;
    }

    private double Spread(double moment)
    {
        After(2, _m2);
        return _m2 > 0
            ? After(2, moment)
            : throw new InvalidOperationException("Values must differ for a measure of shape; all were equal.");
    }

    private double After(long minimum, double value)
    {
        if (Count < minimum)
        {
            throw new InvalidOperationException(
                FormattableString.Invariant($"Count of values must be at least {minimum}; was {Count}.")
            );
        }

        return double.IsFinite(value)
            ? value
            : throw new InvalidOperationException(
                "Moments of the values must be below 1.8E308; were above it, so give the values in a larger unit."
            );
    }
}
