using FsCheck.Xunit;
using McuBench.Stats.Series;

namespace McuBench.Stats.Tests.Series;

public sealed class EnvelopeTests
{
    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Stretches_AnyPieces_AreTheRangesOfTheirSamples(Dyadic data, int seed, byte width)
    {
        var random = new Random(seed);
        double[] samples =
        [
            .. Enumerable
                .Range(0, random.Next(1, 60))
                .SelectMany(_ => data.Values)
                .Select(value => random.Next(20) == 0 ? double.NaN : value),
        ];
        var envelope = new Envelope(1 + width % 50);
        int at = 0;
        while (at < samples.Length)
        {
            int count = Math.Min(random.Next(1, 70), samples.Length - at);
            envelope.Add(samples.AsSpan(at, count));
            at += count;
        }

        IReadOnlyList<EnvelopeStretch> stretches = envelope.Stretches();
        Assert.Equal(samples.Length, stretches.Sum(stretch => stretch.Count));
        Assert.InRange(stretches.Count, Math.Min(samples.Length, envelope.Width), 2 * envelope.Width);
        Assert.All(stretches.SkipLast(1), stretch => Assert.Equal(envelope.StretchLength, stretch.Count));
        Assert.All(
            stretches,
            stretch =>
            {
                double[] there =
                [
                    .. samples.Skip((int)stretch.First).Take((int)stretch.Count).Where(value => !double.IsNaN(value)),
                ];
                Assert.Equal(there.DefaultIfEmpty(double.PositiveInfinity).Min(), stretch.Least);
                Assert.Equal(there.DefaultIfEmpty(double.NegativeInfinity).Max(), stretch.Greatest);
            }
        );
    }

    [Fact]
    public void Stretches_OnePeakInAMillion_IsInOneOfThem()
    {
        double[] samples = new double[1_000_000];
        samples[777_777] = 5;
        var envelope = new Envelope(100);
        envelope.Add(samples);

        EnvelopeStretch peak = Assert.Single(envelope.Stretches(), stretch => stretch.Greatest == 5);
        Assert.InRange(777_777, peak.First, peak.First + peak.Count - 1);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1_000_001)]
    public void Constructor_WidthOutOfRange_IsRefused(int width)
    {
        ArgumentException refused = Assert.Throws<ArgumentOutOfRangeException>(
            nameof(width),
            () => new Envelope(width)
        );
        Assert.StartsWith($"Width must be from 1 to 1000000; was {width}.", refused.Message, StringComparison.Ordinal);
    }
}
