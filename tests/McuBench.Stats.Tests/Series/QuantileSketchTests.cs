using FsCheck.Xunit;
using McuBench.Stats.Series;

namespace McuBench.Stats.Tests.Series;

public sealed class QuantileSketchTests
{
    private static readonly double[] Shares = [0, 0.001, 0.01, 0.25, 0.5, 0.9, 0.999, 1];

    [Property(Arbitrary = [typeof(ExactSumTests.Terms)])]
    public void Quantile_FewValues_IsOneOfThem(ExactSumTests.Terms terms, byte percent)
    {
        var sketch = new QuantileSketch();
        sketch.Add(terms.Values);
        double share = percent % 101 / 100.0;

        Assert.True(sketch.IsExact);
        Assert.Equal(Sorted(terms.Values, share), sketch.Quantile(share));
    }

    [Fact]
    public void Quantile_ManyValues_IsWithinTheStatedError()
    {
        // Idle, running, and noise on both sides of 0.
        double[] values =
        [
            .. TraceRule.Decimals(50_000),
            .. TraceRule.Decimals(20_000).Select((value, i) => (i % 2 - 0.5) * value * 1e-3),
            .. new double[500],
        ];
        var sketch = new QuantileSketch();
        sketch.Add(values);

        Assert.False(sketch.IsExact);
        foreach (double share in Shares)
        {
            double exact = Sorted(values, share);
            Assert.Equal(exact, sketch.Quantile(share), QuantileSketch.RelativeError * Math.Abs(exact));
        }

        Assert.Equal(values.Min(), sketch.Quantile(0));
        Assert.Equal(values.Max(), sketch.Quantile(1));
    }

    [Fact]
    public void Merge_PartsInAnyOrder_GivesTheSame()
    {
        double[] values = TraceRule.Volts(12_000);
        var whole = new QuantileSketch();
        whole.Add(values);
        var parts = new QuantileSketch();
        foreach (int from in (int[])[9_000, 0, 3_000, 6_000])
        {
            var part = new QuantileSketch();
            part.Add(values.AsSpan(from, 3_000));
            parts.Merge(part);
        }

        var twice = new QuantileSketch();
        twice.Merge(parts);
        Assert.Equal(whole.Count, twice.Count);
        Assert.All(Shares, share => Assert.Equal(whole.Quantile(share), twice.Quantile(share)));
    }

    [Fact]
    public void Misuse_IsRefusedWithWhatWouldDo()
    {
        var sketch = new QuantileSketch();
        ArgumentException value = Assert.Throws<ArgumentOutOfRangeException>(
            "values",
            () => sketch.Add([1, double.NaN])
        );
        ArgumentException self = Assert.Throws<ArgumentException>("other", () => sketch.Merge(sketch));
        InvalidOperationException none = Assert.Throws<InvalidOperationException>(() => sketch.Quantile(0.5));

        Assert.StartsWith(
            "Value at index 1 must be a finite number; was NaN.",
            value.Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith("Sketch to merge must be another one; was this one.", self.Message, StringComparison.Ordinal);
        Assert.Equal("Count of values must be at least 1; was 0.", none.Message);
    }

    private static double Sorted(double[] values, double share)
    {
        double[] sorted = [.. values.Order()];
        return sorted[Math.Clamp((int)Math.Ceiling(share * sorted.Length), 1, sorted.Length) - 1];
    }
}
