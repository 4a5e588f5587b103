using System.Collections.Immutable;
using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Trials;

/// <summary>A counter of clock ticks that begins again at zero when its bits are used up.</summary>
/// <remarks>
/// <para>Two counts give the ticks between them only up to whole turns of the counter. How many turns there were has to be
/// known from elsewhere: from the longest time that can lie between two readings, or from the times of the readings by a
/// coarser timer. What these leave open is refused, never guessed.</para>
/// <para>Immutable; equal when all properties are equal. Safe to use from many threads.</para>
/// </remarks>
public sealed record TickCounter
{
    private const int FewestBits = 16;
    private const int MostBits = 64;

    /// <summary>Makes a counter.</summary>
    /// <param name="bits">Its bits, 16 to 64.</param>
    /// <param name="clock">The clock that it counts, behind any divider.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bits are not 16 to 64.</exception>
    public TickCounter(int bits, Clock clock)
    {
        Bits = bits is >= FewestBits and <= MostBits
            ? bits
            : throw new ArgumentOutOfRangeException(
                nameof(bits),
                bits,
                FormattableString.Invariant($"Counter's bits must be {FewestBits} to {MostBits}; were {bits}.")
            );
        Clock = Require.Given(clock, nameof(clock));
    }

    /// <summary>Its bits, 16 to 64.</summary>
    public int Bits { get; }

    /// <summary>The clock that it counts, behind any divider.</summary>
    public Clock Clock { get; }

    /// <summary>The time of one turn at the nominal clock, in seconds.</summary>
    public Duration Turn => Si.Duration(Math.ScaleB(1, Bits) / Hertz);

    /// <summary>The ticks from the first count to each of a series. O(n).</summary>
    /// <param name="counts">At least one count, in the order in which they were read.</param>
    /// <param name="longestGap">The longest time that can lie between one reading and the next, above zero and shorter than
    /// a turn of the counter at the fastest clock within its tolerance.</param>
    /// <returns>As many numbers as counts, the first of them 0.</returns>
    /// <exception cref="ArgumentException">A count has more bits than the counter, lies further from the one before than
    /// the longest gap allows (a lost reading, or counts out of order), or the counts together pass 64 bits.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A gap may hold a whole turn, so that turns can't be counted.</exception>
    public ImmutableArray<ulong> Unwrap(ReadOnlySpan<ulong> counts, Duration longestGap)
    {
        var most = MostTicks(longestGap, nameof(longestGap));
        var ticks = Started(counts);
        for (var i = 1; i < counts.Length; i++)
        {
            var step = Difference(counts[i - 1], counts[i]);
            if (step > most)
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"Count at position {i} must lie within {QuantityText.Format(longestGap)} of the one before; it comes {step} ticks after it, which takes {Time(step)}: a reading was lost, or counts are out of order."
                    ),
                    nameof(counts)
                );
            }

            ticks.Add(Sum(ticks[i - 1], step, i));
        }

        return ticks.MoveToImmutable();
    }

    /// <summary>The ticks from the first count to each of a series, with turns counted by a coarser timer. O(n).</summary>
    /// <param name="counts">At least one count, in the order in which they were read.</param>
    /// <param name="times">When each was read, by the coarser timer, in rising order.</param>
    /// <param name="timeError">The most by which each of these times may be off, at least zero.</param>
    /// <returns>As many numbers as counts, the first of them 0.</returns>
    /// <exception cref="ArgumentException">A count has more bits than the counter, there are not as many times as counts,
    /// or between two readings no number of turns agrees with the times, or more than one does.</exception>
    public ImmutableArray<ulong> Unwrap(ReadOnlySpan<ulong> counts, ReadOnlySpan<Duration> times, Duration timeError)
    {
        var error = Si.Seconds(timeError, nameof(timeError));
        if (error < 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(timeError),
                timeError,
                $"Error of the times must not be negative; was {QuantityText.Format(timeError)}."
            );
        }

        if (times.Length != counts.Length)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Count of times must be {counts.Length}, one for each count; was {times.Length}."
                ),
                nameof(times)
            );
        }

        var ticks = Started(counts);
        for (var i = 1; i < counts.Length; i++)
        {
            var elapsed = Si.Seconds(times[i], nameof(times)) - Si.Seconds(times[i - 1], nameof(times));
            var turns = Turns(Difference(counts[i - 1], counts[i]), elapsed, 2 * error, i);
            ticks.Add(Sum(ticks[i - 1], turns, i));
        }

        return ticks.MoveToImmutable();
    }

    /// <summary>The time that a number of ticks stands for: the counts may have been read anywhere within a tick, and the
    /// clock may be off by its tolerance.</summary>
    public TickSpan SpanOf(ulong ticks)
    {
        var fewest = ticks > 0 ? ticks - 1 : 0;
        return new TickSpan(
            ticks,
            Si.Duration(ticks / Hertz),
            Si.Duration(fewest / (Hertz * (1 + Tolerance))),
            Si.Duration((ticks + 1.0) / (Hertz * (1 - Tolerance)))
        );
    }

    /// <summary>The run times between pairs of counts, for a series of trials timed by <see cref="ToTimer"/>. O(n).</summary>
    /// <param name="runs">The count at the start and at the end of each run.</param>
    /// <param name="longestRun">The longest time that a run can have taken, shorter than a turn of the counter.</param>
    /// <exception cref="ArgumentException">A count has more bits than the counter, a run takes longer than the longest
    /// time or ends within the tick in which it began.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A run may hold a whole turn, so that turns can't be counted.</exception>
    public ImmutableArray<Duration> RunTimes(ReadOnlySpan<(ulong Start, ulong End)> runs, Duration longestRun)
    {
        var most = MostTicks(longestRun, nameof(longestRun));
        var durations = ImmutableArray.CreateBuilder<Duration>(runs.Length);
        for (var i = 0; i < runs.Length; i++)
        {
            RefuseBeyondBits(runs[i].Start, i, nameof(runs));
            RefuseBeyondBits(runs[i].End, i, nameof(runs));
            var step = Difference(runs[i].Start, runs[i].End);
            if (step == 0 || step > most)
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"Run at position {i} must take a tick or more and at most {QuantityText.Format(longestRun)}; its counts {runs[i].Start} and {runs[i].End} are {step} ticks apart, {Time(step)}."
                    ),
                    nameof(runs)
                );
            }

            durations.Add(Si.Duration(step / Hertz));
        }

        return durations.MoveToImmutable();
    }

    /// <summary>The counter as what times trials: a difference of two counts, started anywhere within a tick.</summary>
    /// <param name="name">The timer's name.</param>
    /// <param name="place">Where its oscillator sits.</param>
    public TrialTimer ToTimer(string name, TimerPlace place = TimerPlace.OnBoard) =>
        new(name, Si.Duration(1 / Hertz), TimerReading.TickDifferenceRandomStart)
        {
            Tolerance = Clock.Tolerance,
            Place = place,
        };

    private double Hertz => Si.Hertz(Clock.Nominal);

    private double Tolerance => Clock.Tolerance is { } tolerance ? Si.Fraction(tolerance) : 0;

    private ulong Mask => ulong.MaxValue >> (MostBits - Bits);

    private ulong Difference(ulong before, ulong after) => unchecked(after - before) & Mask;

    private string Time(ulong ticks) => QuantityDisplay.Rounded(Si.Duration(ticks / Hertz), 4, TextForm.Plain);

    /// <summary>The most ticks that a time can hold, refused where that is a whole turn.</summary>
    private double MostTicks(Duration time, string parameter)
    {
        var most = Math.Floor(
            Si.Seconds(Require.Positive(time, "Longest time between counts", parameter)) * Hertz * (1 + Tolerance) + 1
        );
        return most < Math.ScaleB(1, Bits)
            ? most
            : throw new ArgumentOutOfRangeException(
                parameter,
                time,
                FormattableString.Invariant(
                    $"Longest time between counts must be shorter than a turn of the {Bits} bit counter, {QuantityDisplay.Rounded(Turn, 4, TextForm.Plain)}; was {QuantityText.Format(time)}, and turns can't be counted: read it more often, or give times of a coarser timer."
                )
            );
    }

    /// <summary>The ticks of a gap: what the counts show and as many turns as agree with the time.</summary>
    private ulong Turns(ulong shown, double elapsed, double error, int position)
    {
        var least = (elapsed - error) * Hertz * (1 - Tolerance) - 1;
        var most = (elapsed + error) * Hertz * (1 + Tolerance) + 1;
        var turn = Math.ScaleB(1, Bits);
        var fewest = Math.Max(0, Math.Ceiling((least - shown) / turn));
        var highest = Math.Floor((most - shown) / turn);
        if (fewest == highest && shown + fewest * turn < Math.ScaleB(1, MostBits))
        {
            return Bits == MostBits ? shown : shown + ((ulong)fewest << Bits);
        }

        throw new ArgumentException(
            FormattableString.Invariant(
                $"Count at position {position} must agree with one number of turns of the {Bits} bit counter; in {QuantityDisplay.Rounded(Si.Duration(elapsed), 4, TextForm.Plain)} within {QuantityDisplay.Rounded(Si.Duration(error), 2, TextForm.Plain)} after the one before "
            ) + (highest < fewest ? "none does." : FormattableString.Invariant($"{fewest} to {highest} do.")),
            "counts"
        );
    }

    private ImmutableArray<ulong>.Builder Started(ReadOnlySpan<ulong> counts)
    {
        if (counts.Length == 0)
        {
            throw new ArgumentException("A series must hold at least one count; the list was empty.", nameof(counts));
        }

        for (var i = 0; i < counts.Length; i++)
        {
            RefuseBeyondBits(counts[i], i, nameof(counts));
        }

        var ticks = ImmutableArray.CreateBuilder<ulong>(counts.Length);
        ticks.Add(0);
        return ticks;
    }

    private void RefuseBeyondBits(ulong count, int position, string parameter)
    {
        if (count > Mask)
        {
            throw new ArgumentOutOfRangeException(
                parameter,
                FormattableString.Invariant(
                    $"Count at position {position} must fit the counter's {Bits} bits, at most {Mask}; was {count}."
                )
            );
        }
    }

    private static ulong Sum(ulong ticks, ulong step, int position) =>
        ticks <= ulong.MaxValue - step
            ? ticks + step
            : throw new ArgumentException(
                FormattableString.Invariant(
                    $"Counts must span fewer than 2^64 ticks together; at position {position} they don't."
                ),
                "counts"
            );
}
