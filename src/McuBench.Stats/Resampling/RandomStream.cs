using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.CompilerServices;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Resampling;

/// <summary>
/// Random numbers of a seed and a stream number: each pair names a sequence of its own, so that work cut into numbered
/// pieces draws the same numbers in any order and on any number of threads.
/// </summary>
/// <remarks>
/// <para>The generator is Philox4x64-10 (salmon-2011): the seed and the stream number are its key, the place in the
/// stream its counter. A stream has 2^66 words; streams of one seed, and of different seeds, don't overlap. Not for
/// secrets.</para>
/// <para><see cref="Bits"/>, <see cref="Uniform"/>, <see cref="Index"/>, <see cref="Shuffle{T}"/>,
/// <see cref="Rectangular"/> and <see cref="Triangular"/> give the same bits on every machine. The others call the
/// platform's logarithm or sine, which may differ between platforms in the last digit. Every draw takes one word
/// (<see cref="StudentT"/> two), <see cref="Index"/> rarely more, so that draws keep step when parameters change.</para>
/// <para>Holds a place, so it is for one thread at a time: give each piece of work its own stream. A draw is O(1) and
/// allocates nothing.</para>
/// </remarks>
[SuppressMessage("Naming", "CA1711", Justification = "A stream of random numbers is the field's word.")]
public sealed class RandomStream
{
    private const int WordsInBlock = 4;

    private readonly ulong _seed;
    private Block _words;
    private ulong _block;
    private int _used = WordsInBlock;

    private RandomStream(ulong seed, ulong stream)
    {
        _seed = seed;
        Number = stream;
    }

    /// <summary>The start of a stream.</summary>
    /// <param name="seed">The seed; any number will do, 0 as well.</param>
    /// <param name="stream">The number of the stream among those of the seed.</param>
    public static RandomStream Of(ulong seed, ulong stream = 0) => new(seed, stream);

    /// <summary>The number of the stream among those of its seed.</summary>
    public ulong Number { get; private set; }

    /// <summary>Goes to the start of another stream of the same seed, as <see cref="Of"/> would, without a new
    /// object.</summary>
    /// <param name="stream">The number of the stream.</param>
    public void MoveTo(ulong stream)
    {
        Number = stream;
        _block = 0;
        _used = WordsInBlock;
    }

    /// <summary>64 random bits.</summary>
    public ulong Bits()
    {
        if (_used == WordsInBlock)
        {
            _words[0] = _block++;
            _words[1] = 0;
            _words[2] = 0;
            _words[3] = 0;
            Philox.Scramble(_words, _seed, Number);
            _used = 0;
        }

        return _words[_used++];
    }

    /// <summary>A number above 0 and below 1: one of 2^52 that lie evenly, half a step from the ends.</summary>
    public double Uniform() => ((Bits() >> 12) + 0.5) * (1.0 / (1UL << 52));

    /// <summary>A whole number from 0 to below a count, each as likely as another to the last bit (lemire-2019).</summary>
    /// <param name="count">How many numbers there are to choose from, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is below 1.</exception>
    public int Index(int count)
    {
        if (count < 1)
        {
            throw new ArgumentOutOfRangeException(
                nameof(count),
                count,
                string.Create(CultureInfo.InvariantCulture, $"Count to choose from must be at least 1; was {count}.")
            );
        }

        ulong choices = (ulong)count;
        ulong high = Math.BigMul(Bits(), choices, out ulong low);
        if (low < choices)
        {
            // 2^64 modulo the count: so many of the lowest products would make some numbers likelier.
            ulong excess = (0 - choices) % choices;
            while (low < excess)
            {
                high = Math.BigMul(Bits(), choices, out low);
            }
        }

        return (int)high;
    }

    /// <summary>Puts items into a random order, each order as likely as another (durstenfeld-1964). O(n).</summary>
    /// <param name="items">The items, reordered in place.</param>
    /// <typeparam name="T">The type of the items.</typeparam>
    public void Shuffle<T>(Span<T> items)
    {
        for (int last = items.Length - 1; last > 0; last--)
        {
            int other = Index(last + 1);
            (items[last], items[other]) = (items[other], items[last]);
        }
    }

    /// <summary>A draw from the rectangular distribution between two limits.</summary>
    /// <param name="lower">The lower limit, finite.</param>
    /// <param name="upper">The upper limit, finite and not below the lower.</param>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite, or the limits are in the wrong order.</exception>
    public double Rectangular(double lower, double upper)
    {
        Limits(lower, upper);
        // A weighted mean of the limits, since their difference may be too large for a number.
        double share = Uniform();
        return ((1 - share) * lower) + (share * upper);
    }

    /// <summary>A draw from the symmetric triangular distribution between two limits (gum-s1-2008, 6.4.5).</summary>
    /// <param name="lower">The lower limit, finite.</param>
    /// <param name="upper">The upper limit, finite and not below the lower.</param>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite, or the limits are in the wrong order.</exception>
    public double Triangular(double lower, double upper)
    {
        Limits(lower, upper);
        return Between(lower, upper, StandardTriangular());
    }

    /// <summary>A draw from the U-shaped (arc sine) distribution between two limits (gum-s1-2008, 6.4.6).</summary>
    /// <param name="lower">The lower limit, finite.</param>
    /// <param name="upper">The upper limit, finite and not below the lower.</param>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not finite, or the limits are in the wrong order.</exception>
    public double UShaped(double lower, double upper)
    {
        Limits(lower, upper);
        return Between(lower, upper, StandardUShaped());
    }

    /// <summary>A draw from the standard normal distribution, by its quantile function.</summary>
    public double Normal() => -Distributions.Normal.StandardUpperQuantile(Uniform());

    /// <summary>A draw from Student's t distribution (bailey-1994, in its form with two uniform numbers).</summary>
    /// <param name="degreesOfFreedom">The degrees of freedom, above 0; infinity gives a normal draw.</param>
    /// <exception cref="ArgumentOutOfRangeException">The degrees of freedom are not above 0.</exception>
    public double StudentT(double degreesOfFreedom)
    {
        Check.DegreesOfFreedom(degreesOfFreedom);
        double exponential = -2 * Math.Log(Uniform());
        double direction = Math.Cos(Math.PI * Uniform());
        // ν (U^(−2/ν) − 1), which nears −2 ln U as ν grows.
        double square = double.IsInfinity(degreesOfFreedom)
            ? exponential
            : degreesOfFreedom * Elementary.Expm1(exponential / degreesOfFreedom);
        return Math.Sqrt(square) * direction;
    }

    /// <summary>A triangular draw from −1 to 1.</summary>
    internal double StandardTriangular()
    {
        double share = Uniform();
        return share < 0.5 ? Math.Sqrt(2 * share) - 1 : 1 - Math.Sqrt(2 * (1 - share));
    }

    /// <summary>A U-shaped draw from −1 to 1.</summary>
    internal double StandardUShaped() => -Math.Cos(Math.PI * Uniform());

    /// <summary>A number from −1 to 1, moved to where it stands between two limits.</summary>
    private static double Between(double lower, double upper, double place) =>
        (0.5 * (1 - place) * lower) + (0.5 * (1 + place) * upper);

    private static void Limits(double lower, double upper)
    {
        Check.Finite(lower, "Lower limit");
        Check.Finite(upper, "Upper limit");
        if (upper < lower)
        {
            throw Check.OutOfRange(
                nameof(upper),
                "Upper limit",
                string.Create(CultureInfo.InvariantCulture, $"at or above the lower limit {lower}"),
                upper
            );
        }
    }

    [InlineArray(WordsInBlock)]
    private struct Block
    {
        private ulong _first;
    }
}
