namespace McuBench.Stats.Distributions;

/// <summary>
/// The exact distribution that a statistic of ranks or order has when nothing but chance orders the values: Mann and
/// Whitney's U, Wilcoxon's signed-rank sum, Kendall's S, the number of runs.
/// </summary>
/// <remarks>
/// <para>Immutable. Safe to use from many threads. The whole distribution is computed at construction, by sums of positive
/// terms alone, so that the smallest probability keeps 12 digits; a probability afterwards is O(1), a quantile
/// O(log n).</para>
/// <para>With ties it is the distribution given the ties, over all orders that are then equally likely. Sources: Mann and
/// Whitney 1947 (recursion); Streitberg and Röhmel 1986 (ties); Kendall 1938; Robillard 1972 (Kendall's S with
/// ties in one variable); Swed and Eisenhart 1943 (runs). A probability below 1e-308 may be 0.</para>
/// </remarks>
public sealed class RankDistribution
{
    // A tail that equals the probability asked for, but for its rounding, has reached it.
    private const double Slack = 1e-12;

    private readonly double[] _mass;
    private readonly double[] _atMost;
    private readonly double[] _atLeast;

    private RankDistribution(double[] mass, double smallest, double step)
    {
        (Smallest, Step) = (smallest, step);
        _mass = mass;
        _atMost = new double[mass.Length];
        _atLeast = new double[mass.Length];
        var (below, above) = (0.0, 0.0);
        for (var i = 0; i < mass.Length; i++)
        {
            // Each sum starts at its own end, with the smallest masses.
            _atMost[i] = Math.Min(1, below += mass[i]);
            _atLeast[^(i + 1)] = Math.Min(1, above += mass[^(i + 1)]);
        }
    }

    /// <summary>The most values whose signed-rank sum has an exact distribution here.</summary>
    internal const int MostSignedRanks = SignedRankMasses.MostValues;

    /// <summary>The smallest value the statistic can have.</summary>
    public double Smallest { get; }

    /// <summary>The largest value the statistic can have.</summary>
    public double Largest => Smallest + (Step * (_mass.Length - 1));

    /// <summary>The distance of neighbouring values: 1 for U, the signed-rank sum and runs, ½ with ties, 2 for S.</summary>
    public double Step { get; }

    /// <summary>
    /// U of two samples without ties: the number of pairs, one value from each, in which the first sample's is larger.
    /// </summary>
    /// <param name="first">The size of the first sample; 1 or more.</param>
    /// <param name="second">The size of the second sample; 1 or more. The product of the two is at most 20,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is below 1, or the product is above 20,000.</exception>
    /// <remarks>O(first² second²) time, less than a millisecond for twice 50.</remarks>
    public static RankDistribution MannWhitney(int first, int second)
    {
        MannWhitneyMasses.CheckSizes(first, second);
        return new RankDistribution(MannWhitneyMasses.WithoutTies(first, second), 0, 1);
    }

    /// <summary>U of two samples with ties; a tied pair counts ½.</summary>
    /// <param name="first">The size of the first sample; 1 or more.</param>
    /// <param name="second">The size of the second sample; 1 or more. The product of the two is at most 20,000.</param>
    /// <param name="groups">How many values are equal, for each distinct value of both samples together, from the smallest
    /// value to the largest; single values count 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size or group is below 1, or the product is above
    /// 20,000.</exception>
    /// <exception cref="ArgumentException">The groups don't sum to both sizes.</exception>
    /// <remarks>O(first² second²) time at most.</remarks>
    public static RankDistribution MannWhitney(int first, int second, ReadOnlySpan<int> groups)
    {
        MannWhitneyMasses.CheckSizes(first, second);
        CheckGroups(groups, first + second);
        var mass = MannWhitneyMasses.WithTies(first, second, groups);
        // Where the outermost values are tied the ends can't be reached.
        var (from, to) = (mass.AsSpan().IndexOfAnyExcept(0), mass.AsSpan().LastIndexOfAnyExcept(0));
        return new RankDistribution(mass[from..(to + 1)], 0.5 * from, 0.5);
    }

    /// <summary>The signed-rank sum without ties: the sum of the ranks of the magnitudes of the positive values.</summary>
    /// <param name="count">How many values, zeros left out; from 1 to 1000.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is out of its range.</exception>
    /// <remarks>O(count³) time.</remarks>
    public static RankDistribution SignedRank(int count)
    {
        CheckCount(count, SignedRankMasses.MostValues, nameof(count));
        return new RankDistribution(SignedRankMasses.WithoutTies(count), 0, 1);
    }

    /// <summary>The signed-rank sum with ties among the magnitudes, which then have their mean rank.</summary>
    /// <param name="groups">How many magnitudes are equal, for each distinct magnitude from the smallest to the largest,
    /// zeros left out; single ones count 1. At most 1000 in sum, zeros included.</param>
    /// <param name="zeros">How many zeros were ranked before them and then left out, as Pratt 1959 has it; 0 where zeros were
    /// left out before ranking.</param>
    /// <exception cref="ArgumentOutOfRangeException">A group is below 1, the zeros below 0, or the sum out of its
    /// range.</exception>
    /// <remarks>O(count³) time.</remarks>
    public static RankDistribution SignedRank(ReadOnlySpan<int> groups, int zeros = 0)
    {
        if (zeros is < 0 or > SignedRankMasses.MostValues)
        {
            throw Check.OutOfRange(
                nameof(zeros),
                "Count of zeros",
                FormattableString.Invariant($"between 0 and {SignedRankMasses.MostValues}"),
                zeros
            );
        }

        var count = SumOfGroups(groups);
        CheckCount(count, SignedRankMasses.MostValues - zeros, nameof(groups));
        return new RankDistribution(SignedRankMasses.WithTies(groups, zeros), 0, 0.5);
    }

    /// <summary>Kendall's S without ties: concordant less discordant pairs.</summary>
    /// <param name="count">How many pairs of values; from 2 to 200.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is out of its range.</exception>
    /// <remarks>O(count⁴) time.</remarks>
    public static RankDistribution Kendall(int count)
    {
        CheckCount(count, KendallMasses.MostValues, nameof(count), least: 2);
        var groups = new int[count];
        Array.Fill(groups, 1);
        return Kendall(groups);
    }

    /// <summary>Kendall's S with ties in one of the two variables (as for a trend of tied values over time); a tied pair
    /// counts 0.</summary>
    /// <param name="groups">How many values are equal, for each distinct value of the variable that has ties; single ones
    /// count 1. From 2 to 200 in sum, in two groups at least.</param>
    /// <exception cref="ArgumentOutOfRangeException">A group is below 1, or the sum out of its range.</exception>
    /// <exception cref="ArgumentException">There is one group only: S is then always 0.</exception>
    /// <remarks>O(count⁴) time.</remarks>
    public static RankDistribution Kendall(ReadOnlySpan<int> groups)
    {
        CheckCount(SumOfGroups(groups), KendallMasses.MostValues, nameof(groups), least: 2);
        Check.AtLeast(groups.Length, 2, nameof(groups));
        var mass = KendallMasses.WithTies(groups);
        return new RankDistribution(mass, -(mass.Length - 1), 2);
    }

    /// <summary>The number of runs: of stretches of values of one kind, where two kinds stand in random order.</summary>
    /// <param name="first">How many values are of the first kind; 1 or more.</param>
    /// <param name="second">How many values are of the second kind; 1 or more. At most 1000 of both.</param>
    /// <exception cref="ArgumentOutOfRangeException">A count is below 1, or the sum above 1000.</exception>
    /// <remarks>O(n) time.</remarks>
    public static RankDistribution Runs(int first, int second)
    {
        CheckCount(first, RunsMasses.MostValues - 1, nameof(first));
        CheckCount(second, RunsMasses.MostValues - first, nameof(second));
        return new RankDistribution(RunsMasses.Of(first, second), 2, 1);
    }

    /// <summary>The probability of exactly this value; 0 for one the statistic can't have.</summary>
    /// <param name="value">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or infinite.</exception>
    public double Mass(double value)
    {
        var place = Place(value);
        return place >= 0 && place < _mass.Length && Math.Floor(place) == place ? _mass[(int)place] : 0;
    }

    /// <summary>The probability of at most this value.</summary>
    /// <param name="value">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or infinite.</exception>
    public double Cdf(double value)
    {
        var place = Math.Floor(Place(value));
        return place < 0 ? 0
            : place >= _atMost.Length - 1 ? 1
            : _atMost[(int)place];
    }

    /// <summary>The probability of at least this value; not 1 − CDF, so that small ones keep their digits.</summary>
    /// <param name="value">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or infinite.</exception>
    public double AtLeast(double value) => AtLeastPlace(Math.Ceiling(Place(value)));

    /// <summary>The probability of more than this value.</summary>
    /// <param name="value">A finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="value"/> is NaN or infinite.</exception>
    public double UpperTail(double value) => AtLeastPlace(Math.Floor(Place(value)) + 1);

    /// <summary>The smallest value that the statistic stays at or below with at least this probability.</summary>
    /// <param name="probability">Above 0 and below 1. A cumulative probability that equals it to 12 digits has reached
    /// it.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below
    /// 1.</exception>
    public double Quantile(double probability) =>
        // The smaller of the two probabilities is compared, because it is the exact one.
        Argument.Probability(probability) <= 0.5
            ? FirstWhere(i => _atMost[i] >= probability * (1 - Slack))
            : FirstWhere(i => _atLeast[i + 1] <= (1 - probability) * (1 + Slack));

    /// <summary>The smallest value that the statistic exceeds with at most this probability.</summary>
    /// <param name="probability">Above 0 and below 1. A tail that equals it to 12 digits has reached it.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below
    /// 1.</exception>
    public double UpperQuantile(double probability) =>
        Argument.Probability(probability) > 0.5
            ? FirstWhere(i => _atMost[i] >= (1 - probability) * (1 - Slack))
            : FirstWhere(i => _atLeast[i + 1] <= probability * (1 + Slack));

    private static void CheckCount(int count, int most, string name, int least = 1)
    {
        if (count < least || count > most)
        {
            throw Check.OutOfRange(
                name,
                "Count of values",
                FormattableString.Invariant($"between {least} and {most}"),
                count
            );
        }
    }

    private static void CheckGroups(ReadOnlySpan<int> groups, int expected)
    {
        var sum = SumOfGroups(groups);
        if (sum != expected)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Sum of the groups must be {expected}, the count of all values; was {sum}."
                ),
                nameof(groups)
            );
        }
    }

    private static int SumOfGroups(ReadOnlySpan<int> groups)
    {
        var sum = 0;
        for (var i = 0; i < groups.Length; i++)
        {
            if (groups[i] < 1)
            {
                throw Check.OutOfRange(
                    nameof(groups),
                    FormattableString.Invariant($"Group at index {i}"),
                    "at least 1",
                    groups[i]
                );
            }

            // A sum beyond an int is far beyond every limit, and must not come back as a small one.
            sum = (int)Math.Min(int.MaxValue, (long)sum + groups[i]);
        }

        return sum;
    }

    private double Place(double value) => (Argument.Finite(value, "Value") - Smallest) / Step;

    private double AtLeastPlace(double place) =>
        place >= _atLeast.Length ? 0
        : place <= 0 ? 1
        : _atLeast[(int)place];

    private double FirstWhere(Func<int, bool> hasReached)
    {
        var (low, high) = (0, _mass.Length - 1);
        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            (low, high) = hasReached(middle) ? (low, middle) : (middle + 1, high);
        }

        return Smallest + (Step * low);
    }
}
