using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace McuBench.Stats.Series;

/// <summary>
/// What a drawing of a long series needs: the least and the greatest sample of each of some hundred or thousand stretches
/// of equal length, found in one pass over a series whose length nobody knows beforehand.
/// </summary>
/// <remarks>Stretches begin with one sample each; whenever there are twice as many as asked for, neighbours are put
/// together. No peak is lost. O(n), at about the speed of reading; memory is constant. NaN counts as missing. It changes as
/// samples are added, and is not safe to use from two threads at once.</remarks>
public sealed class Envelope
{
    private readonly EnvelopeStretch[] _stretches;
    private EnvelopeStretch _last = Empty(0);
    private int _count;

    /// <summary>Begins a series.</summary>
    /// <param name="width">How many stretches there are at least, once there are as many samples: the width of the drawing;
    /// from 1 to 1,000,000.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is outside that range.</exception>
    public Envelope(int width)
    {
        if (width is < 1 or > 1_000_000)
        {
            throw Check.OutOfRange(nameof(width), "Width", "from 1 to 1000000", width);
        }

        Width = width;
        _stretches = new EnvelopeStretch[2 * width];
    }

    /// <summary>How many stretches there are at least, once there are as many samples.</summary>
    public int Width { get; }

    /// <summary>The number of samples in a stretch; the last one may have fewer.</summary>
    public long StretchLength { get; private set; } = 1;

    /// <summary>Adds samples. O(n).</summary>
    /// <param name="samples">The samples; NaN is missing.</param>
    public void Add(ReadOnlySpan<double> samples)
    {
        while (!samples.IsEmpty)
        {
            int count = (int)Math.Min(samples.Length, StretchLength - _last.Count);
            (double least, double greatest) = Range(samples[..count]);
            _last = Joined(_last, new EnvelopeStretch(_last.First, count, least, greatest));
            samples = samples[count..];
            if (_last.Count == StretchLength)
            {
                Close();
            }
        }
    }

    /// <summary>The stretches so far, in order.</summary>
    public IReadOnlyList<EnvelopeStretch> Stretches() =>
        _last.Count > 0 ? [.. _stretches.AsSpan(0, _count), _last] : [.. _stretches.AsSpan(0, _count)];

    private void Close()
    {
        _stretches[_count++] = _last;
        _last = Empty(_last.First + _last.Count);
        if (_count < _stretches.Length)
        {
            return;
        }

        for (int i = 0; i < Width; i++)
        {
            _stretches[i] = Joined(_stretches[2 * i], _stretches[2 * i + 1]);
        }

        _count = Width;
        StretchLength *= 2;
    }

    private static EnvelopeStretch Empty(long first) => new(first, 0, double.PositiveInfinity, double.NegativeInfinity);

    private static EnvelopeStretch Joined(EnvelopeStretch stretch, EnvelopeStretch next) =>
        new(
            stretch.First,
            stretch.Count + next.Count,
            Math.Min(stretch.Least, next.Least),
            Math.Max(stretch.Greatest, next.Greatest)
        );

    private static (double Least, double Greatest) Range(ReadOnlySpan<double> samples)
    {
        Vector256<double> least = Vector256.Create(double.PositiveInfinity);
        Vector256<double> greatest = -least;
        ReadOnlySpan<Vector256<double>> fours = MemoryMarshal.Cast<double, Vector256<double>>(samples);
        foreach (Vector256<double> four in fours)
        {
            // Of a number and NaN, these are the number.
            least = Vector256.MinNumber(least, four);
            greatest = Vector256.MaxNumber(greatest, four);
        }

        double lowest = Lanes.Least(least);
        double highest = Lanes.Greatest(greatest);
        foreach (double sample in samples[(fours.Length * Vector256<double>.Count)..])
        {
            lowest = double.MinNumber(lowest, sample);
            highest = double.MaxNumber(highest, sample);
        }

        return (lowest, highest);
    }
}
