using System.Globalization;

namespace McuBench.Stats.Distributions;

/// <summary>The binomial distribution of the successes in a number of trials.</summary>
/// <remarks>
/// <para>Immutable; equal when trials and success probability are equal. Safe to use from many threads. Mass and tails
/// take O(1) steps (at most some dozens), a quantile O(log trials) tails at worst; nothing is allocated.</para>
/// <para>Mass and both tails hold a relative accuracy of 1e-12 or better down to 1e-300, at up to 1e8 trials. A tail too
/// small for a double is 0. Sources: Loader 2000; DLMF 8.17.5.</para>
/// </remarks>
public sealed record Binomial
{
    // 2^53: up to here a count is a double.
    private const long MostTrials = 1L << 53;

    // A tail that equals the probability asked for, but for its rounding, has reached it.
    private const double Slack = 1e-13;

    private Binomial(long trials, double successProbability)
    {
        Trials = trials;
        SuccessProbability = successProbability;
    }

    /// <summary>The number of trials, 0 or more.</summary>
    public long Trials { get; }

    /// <summary>The probability of success in each trial, between 0 and 1.</summary>
    public double SuccessProbability { get; }

    /// <summary>The binomial distribution of a number of trials and a success probability.</summary>
    /// <param name="trials">The number of trials; from 0 to 2^53.</param>
    /// <param name="successProbability">The probability of success in each trial; from 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is NaN or out of its range.</exception>
    public static Binomial Of(long trials, double successProbability)
    {
        if (trials is < 0 or > MostTrials)
        {
            throw new ArgumentOutOfRangeException(
                nameof(trials),
                trials,
                string.Create(CultureInfo.InvariantCulture, $"Trials must be between 0 and {MostTrials}; was {trials}.")
            );
        }

        Check.Probability(successProbability);
        return new Binomial(trials, successProbability);
    }

    /// <summary>The probability of exactly so many successes; 0 for a count below 0 or above the trials.</summary>
    /// <param name="successes">Any count.</param>
    public double Mass(long successes)
    {
        if (successes < 0 || successes > Trials)
        {
            return 0;
        }

        var failures = Trials - successes;
        var (n, p) = ((double)Trials, SuccessProbability);
        if (successes == 0)
        {
            return p == 1 && failures > 0 ? 0 : Math.Exp(n * Elementary.Log1p(-p));
        }

        if (failures == 0)
        {
            return Math.Pow(p, n);
        }

        if (p is 0 or 1)
        {
            return 0;
        }

        var excess = Math.FusedMultiplyAdd(-n, p, successes);
        return new IncompleteBeta(successes, failures).Prefactor(p, 1 - p, excess) * (n / successes / failures);
    }

    /// <summary>The probability of at most so many successes.</summary>
    /// <param name="successes">Any count.</param>
    public double Cdf(long successes) => Tails(successes).Lower;

    /// <summary>The probability of more than so many successes; not 1 − CDF, so that small ones keep their
    /// digits.</summary>
    /// <param name="successes">Any count.</param>
    public double UpperTail(long successes) => Tails(successes).Upper;

    /// <summary>The smallest count that the successes stay at or below with at least this probability.</summary>
    /// <param name="probability">Above 0 and below 1. A cumulative probability that equals it to 13 digits has reached
    /// it.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below
    /// 1.</exception>
    public long Quantile(double probability) => Smallest(Argument.Probability(probability), 1 - probability);

    /// <summary>The smallest count that the successes exceed with at most this probability.</summary>
    /// <param name="probability">Above 0 and below 1. A tail that equals it to 13 digits has reached it.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="probability"/> is not above 0 and below
    /// 1.</exception>
    public long UpperQuantile(double probability) => Smallest(1 - Argument.Probability(probability), probability);

    private (double Lower, double Upper) Tails(long successes)
    {
        if (successes < 0)
        {
            return (0, 1);
        }

        if (successes >= Trials || SuccessProbability == 0)
        {
            return (1, 0);
        }

        if (SuccessProbability == 1)
        {
            return (0, 1);
        }

        // P(X > k) = I_p(k + 1, n − k).
        var (a, p) = (successes + 1.0, SuccessProbability);
        var excess = Math.FusedMultiplyAdd(-(Trials + 1.0), p, a);
        var (atLeast, below, _) = new IncompleteBeta(a, Trials - successes).Tails(p, 1 - p, excess);
        return (below, atLeast);
    }

    /// <summary>The smallest count whose lower tail reaches, or whose upper tail is down to; the smaller of the two
    /// probabilities is the one compared, because it is the exact one.</summary>
    private long Smallest(double lower, double upper)
    {
        // Invariant: the count at high has reached it, the one below low hasn't.
        var (low, high) = (0L, Trials);
        var sd = Math.Sqrt(Trials * SuccessProbability * (1 - SuccessProbability));
        var guess = (Trials * SuccessProbability) + (sd * Spread(lower, upper));
        var reach = (long)(0.1 * sd) + 1;
        var middle = (long)Math.Clamp(guess, 0, Trials);
        while (low < high)
        {
            if (HasReached(middle, lower, upper))
            {
                high = middle;
                middle = Math.Max(high - reach, low + ((high - low) / 2));
            }
            else
            {
                low = middle + 1;
                middle = Math.Min(low + reach, low + ((high - low) / 2));
            }

            reach *= 2;
        }

        return high;
    }

    private static double Spread(double lower, double upper) =>
        lower < upper ? -Normal.StandardUpperQuantile(lower) : Normal.StandardUpperQuantile(upper);

    private bool HasReached(long successes, double lower, double upper)
    {
        var tails = Tails(successes);
        return lower < upper ? tails.Lower >= lower * (1 - Slack) : tails.Upper <= upper * (1 + Slack);
    }
}
