using FsCheck.Xunit;
using McuBench.Stats.Series;

namespace McuBench.Stats.Tests.Series;

public sealed class UnevenIntegralTests
{
    private const StringComparison Ordinal = StringComparison.Ordinal;

    [Theory]
    [InlineData("uneven")]
    [InlineData("uneven-even-count")]
    public void Figures_Samples_AreRationalArithmetics(string set)
    {
        var reference = ReferenceCase.Of("series", set);
        int count = (int)reference.Number("count");
        var integral = new UnevenIntegral();
        integral.Add(TraceRule.UnevenTimes(count), TraceRule.Decimals(count));

        IntegralFigures figures = integral.Figures()!;
        // Each area is rounded: at most four times in a row, at random.
        Agree.Relative(reference.Number("trapezoid"), figures.Trapezoid, 4.5e-16);
        Agree.Relative(reference.Number("held"), figures.Held, 4.5e-16);
        Assert.Equal(reference.Number("halving"), figures.HalvingDifference!.Value, 4.5e-16 * figures.Trapezoid);
        Agree.Relative(reference.Number("numpy"), figures.Trapezoid, 1e-14);
        Assert.Equal(count, figures.Count);
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Append_AnyCuts_GivesTheSameBytes(Dyadic data, int seed, bool isGappy)
    {
        var random = new Random(seed);
        double[] samples =
        [
            .. Enumerable
                .Range(0, 150)
                .SelectMany(_ => data.Values)
                .Select(value => isGappy && random.Next(40) == 0 ? double.NaN : value),
        ];
        double time = 0;
        double[] times = [.. samples.Select(_ => time += random.Next(1, 100) / 7.0)];
        var whole = new UnevenIntegral(longestStep: isGappy ? 13 : double.PositiveInfinity);
        whole.Add(times, samples);

        var pieced = new UnevenIntegral(whole.LongestStep);
        var appended = new UnevenIntegral(whole.LongestStep);
        int at = 0;
        while (at < samples.Length)
        {
            int count = Math.Min(random.Next(1, random.Next(2) == 0 ? 4 : 3000), samples.Length - at);
            pieced.Add(times.AsSpan(at, count), samples.AsSpan(at, count));
            var part = new UnevenIntegral(whole.LongestStep);
            part.Add(times.AsSpan(at, count), samples.AsSpan(at, count));
            appended.Append(UnevenIntegral.Read(Bytes(part)));
            at += count;
        }

        Assert.Equal(whole.Figures(), pieced.Figures());
        Assert.Equal(whole.Figures(), appended.Figures());
        Assert.Equal(Bytes(whole), Bytes(appended));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Figures_EvenTimes_AreThoseOfTheUniformIntegral(Dyadic data)
    {
        double[] times = [.. Enumerable.Range(0, data.Values.Length).Select(i => 7 + i * 0.25)];
        var uneven = new UnevenIntegral();
        uneven.Add(times, data.Values);
        var uniform = new UniformIntegral(0.25);
        uniform.Add(data.Values);

        Assert.Equal(uniform.Figures(), uneven.Figures());
    }

    [Fact]
    public void Figures_LongStepsAndMissingSamples_AreGaps()
    {
        var integral = new UnevenIntegral(longestStep: 2);
        integral.Add([0, 1, 2, 3, 10, 11, 12], [double.NaN, 2, double.NaN, 4, 6, 6, double.NaN]);

        IntegralFigures figures = integral.Figures()!;
        Assert.Equal((4, 3, 2), (figures.Count, figures.Missing, figures.Gaps));
        Assert.Equal((10.0, 9.0), (figures.Span, figures.Uncovered));
        Assert.Equal((6.0, 6.0), (figures.Trapezoid, figures.Held));
        Assert.Equal(2 * 3 + 7 * 5, figures.Bridged);
        Assert.Null(figures.HalvingDifference);
    }

    [Theory]
    [InlineData(new[] { 0.0, 1, 1 }, "Time at index 2 must be finite and after 1; was 1.")]
    [InlineData(new[] { 0.0, -1, 1 }, "Time at index 1 must be finite and after 0; was -1.")]
    [InlineData(new[] { double.NaN, 1, 2 }, "Time at index 0 must be finite and after -Infinity; was NaN.")]
    [InlineData(new[] { 0, 1, double.PositiveInfinity }, "Time at index 2 must be finite and after 1; was Infinity.")]
    public void Add_TimesOutOfOrder_IsRefusedAndAddsNothing(double[] times, string message)
    {
        var integral = new UnevenIntegral();

        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(
            nameof(times),
            () => integral.Add(times, [1, 1, 1])
        );
        Assert.StartsWith(message, refused.Message, Ordinal);
        Assert.Equal(0, integral.Count);
    }

    [Fact]
    public void Misuse_IsRefusedWithWhatWouldDo()
    {
        var integral = new UnevenIntegral();
        integral.Add([5.0, 6], [1.0, double.NaN]);
        var early = new UnevenIntegral();
        early.Add([6.0], [1.0]);

        ArgumentException counts = Assert.Throws<ArgumentException>("samples", () => integral.Add([7.0], []));
        ArgumentException order = Assert.Throws<ArgumentOutOfRangeException>("next", () => integral.Append(early));
        ArgumentException step = Assert.Throws<ArgumentException>("next", () => integral.Append(new UnevenIntegral(3)));
        ArgumentException zero = Assert.Throws<ArgumentOutOfRangeException>("longestStep", () => new UnevenIntegral(0));

        Assert.StartsWith("Count of samples must be 1, one for each time; was 0.", counts.Message, Ordinal);
        Assert.StartsWith("First time of the series that follows must be after 6; was 6.", order.Message, Ordinal);
        Assert.StartsWith("Longest step of the series that follows must be Infinity; was 3.", step.Message, Ordinal);
        Assert.StartsWith("Longest step must be above 0; was 0.", zero.Message, Ordinal);
    }

    private static byte[] Bytes(UnevenIntegral integral)
    {
        byte[] bytes = new byte[UnevenIntegral.LargestState];
        return bytes[..integral.Write(bytes)];
    }
}
