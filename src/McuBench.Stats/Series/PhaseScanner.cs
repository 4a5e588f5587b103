using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>
/// Divides a series into phases by two thresholds: the signal goes high with the first sample at or above the upper one,
/// and low with the first below the lower one. In between it stays what it was.
/// </summary>
/// <remarks>
/// <para>A change counts once it has lasted for the least length; what is shorter belongs to the phase that it interrupts,
/// and a first phase that is shorter to the second. Before the first change the signal is high if its first sample is at or
/// above the upper threshold. A sample that is not a number changes nothing.</para>
/// <para>O(n), at about the speed of reading where changes are some hundred samples apart; memory grows with the number of
/// phases alone. Sums are compensated (neumaier-1974). It changes as samples are added, and is not safe to use from two
/// threads at once.</para>
/// </remarks>
public sealed class PhaseScanner
{
    private readonly List<SeriesPhase> _phases = [];
    private SeriesPhase _current;
    private SeriesPhase _candidate;
    private bool _isHigh;
    private long _places;

    /// <summary>Begins a series.</summary>
    /// <param name="low">Below this the signal goes low; finite.</param>
    /// <param name="high">At and above this the signal goes high; finite, not below <paramref name="low"/>.</param>
    /// <param name="leastLength">How many samples a change has to last to count, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A threshold is not finite, the upper is below the lower, or the length
    /// below 1.</exception>
    public PhaseScanner(double low, double high, long leastLength = 1)
    {
        Check.Finite(low, "Lower threshold");
        Check.Finite(high, "Upper threshold");
        if (high < low)
        {
            throw Check.OutOfRange(
                nameof(high),
                "Upper threshold",
                FormattableString.Invariant($"at least the lower one of {low}"),
                high
            );
        }

        if (leastLength < 1)
        {
            throw Check.OutOfRange(nameof(leastLength), "Least length", "1 or more", leastLength);
        }

        Low = low;
        High = high;
        LeastLength = leastLength;
    }

    /// <summary>Below this the signal goes low.</summary>
    public double Low { get; }

    /// <summary>At and above this the signal goes high.</summary>
    public double High { get; }

    /// <summary>How many samples a change has to last to count.</summary>
    public long LeastLength { get; }

    /// <summary>Adds samples of the signal, which is also what is summed.</summary>
    /// <param name="signal">The samples.</param>
    public void Add(ReadOnlySpan<double> signal) => Add(signal, signal, [], []);

    /// <summary>Adds samples of the signal with amounts that are summed over each phase.</summary>
    /// <param name="signal">The samples.</param>
    /// <param name="first">As many first amounts, or none.</param>
    /// <param name="second">As many second amounts, or none.</param>
    /// <param name="third">As many third amounts, or none.</param>
    /// <exception cref="ArgumentException">There are amounts, but not one for each sample.</exception>
    public void Add(
        ReadOnlySpan<double> signal,
        ReadOnlySpan<double> first,
        ReadOnlySpan<double> second = default,
        ReadOnlySpan<double> third = default
    )
    {
        CheckAmounts(signal.Length, first.Length, nameof(first));
        CheckAmounts(signal.Length, second.Length, nameof(second));
        CheckAmounts(signal.Length, third.Length, nameof(third));
        if (_places == 0 && signal.Length > 0)
        {
            _isHigh = signal[0] >= High;
        }

        int from = 0;
        while (from < signal.Length)
        {
            int length = LengthOfRun(signal[from..]);
            var run = new SeriesPhase(
                _isHigh,
                _places,
                length,
                Sum(first, from, length),
                Sum(second, from, length),
                Sum(third, from, length)
            );
            Take(run);
            _places += length;
            from += length;
            if (from < signal.Length)
            {
                _isHigh = !_isHigh;
            }
        }
    }

    /// <summary>The phases so far, the one that lasts included. O(k) for k phases.</summary>
    public IReadOnlyList<SeriesPhase> Phases()
    {
        if (_places == 0)
        {
            return [];
        }

        // A change that has not lasted long enough yet is no change.
        SeriesPhase last = _current.Count == 0 ? _candidate : Joined(_current, _candidate);
        return [.. _phases, last];
    }

    /// <summary>How many samples from the first on keep the state that the signal is in.</summary>
    private int LengthOfRun(ReadOnlySpan<double> signal)
    {
        ref double first = ref MemoryMarshal.GetReference(signal);
        Vector256<double> threshold = Vector256.Create(_isHigh ? Low : High);
        int i = 0;
        while (i + 4 * Vector256<double>.Count <= signal.Length)
        {
            Vector256<double> s0 = Vector256.LoadUnsafe(ref first, (nuint)i);
            Vector256<double> s1 = Vector256.LoadUnsafe(ref first, (nuint)i + 4);
            Vector256<double> s2 = Vector256.LoadUnsafe(ref first, (nuint)i + 8);
            Vector256<double> s3 = Vector256.LoadUnsafe(ref first, (nuint)i + 12);
            Vector256<double> changes = _isHigh
                ? Below(s0, threshold) | Below(s1, threshold) | Below(s2, threshold) | Below(s3, threshold)
                : NotBelow(s0, threshold) | NotBelow(s1, threshold) | NotBelow(s2, threshold) | NotBelow(s3, threshold);
            // As bits: all ones make no number.
            if (changes.AsInt64() != Vector256<long>.Zero)
            {
                break;
            }

            i += 4 * Vector256<double>.Count;
        }

        while (i < signal.Length && !(_isHigh ? signal[i] < Low : signal[i] >= High))
        {
            i++;
        }

        return i;
    }

    private static Vector256<double> Below(Vector256<double> samples, Vector256<double> threshold) =>
        Vector256.LessThan(samples, threshold);

    private static Vector256<double> NotBelow(Vector256<double> samples, Vector256<double> threshold) =>
        Vector256.GreaterThanOrEqual(samples, threshold);

    private void Take(SeriesPhase run)
    {
        if (run.Count == 0)
        {
            return;
        }

        if (_candidate.Count > 0 && _candidate.IsHigh == run.IsHigh)
        {
            _candidate = Joined(_candidate, run);
        }
        else if (_current.Count == 0)
        {
            // The first phase is too short to stand alone: what comes next decides what it is.
            _candidate = _candidate.Count == 0 ? run : Joined(run, _candidate) with { First = _candidate.First };
        }
        else if (_current.IsHigh == run.IsHigh)
        {
            _current = Joined(Joined(_current, _candidate), run);
            _candidate = default;
        }
        else
        {
            _candidate = run;
        }

        if (_candidate.Count >= LeastLength)
        {
            if (_current.Count > 0)
            {
                _phases.Add(_current);
            }

            _current = _candidate;
            _candidate = default;
        }
    }

    private static SeriesPhase Joined(SeriesPhase phase, SeriesPhase more) =>
        phase with
        {
            Count = phase.Count + more.Count,
            FirstSum = phase.FirstSum + more.FirstSum,
            SecondSum = phase.SecondSum + more.SecondSum,
            ThirdSum = phase.ThirdSum + more.ThirdSum,
        };

    private static double Sum(ReadOnlySpan<double> amounts, int from, int length) =>
        amounts.IsEmpty ? 0 : CompensatedSum.Of(amounts.Slice(from, length));

    private static void CheckAmounts(int samples, int count, string name)
    {
        if (count > 0)
        {
            Check.SameCount(count, samples, "Count of amounts", "sample", name);
        }
    }
}
