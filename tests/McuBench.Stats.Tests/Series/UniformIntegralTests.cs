using FsCheck.Xunit;
using McuBench.Stats.Series;

namespace McuBench.Stats.Tests.Series;

public sealed class UniformIntegralTests
{
    // The sum in the integral is exact; the step and its rounding are what is left.
    private const double TwoRoundings = 4.5e-16;

    [Theory]
    [InlineData("decimal")]
    [InlineData("decimal-even-count")]
    [InlineData("wild")]
    public void Figures_Samples_AreRationalArithmetics(string set)
    {
        var reference = ReferenceCase.Of("series", set);
        int count = (int)reference.Number("count");
        var integral = new UniformIntegral(TraceRule.Step);
        integral.Add(set == "wild" ? TraceRule.Wild(count) : TraceRule.Decimals(count));

        IntegralFigures figures = integral.Figures()!;
        Agree.Relative(reference.Number("trapezoid"), figures.Trapezoid, TwoRoundings);
        Agree.Relative(reference.Number("held"), figures.Held, TwoRoundings);
        Agree.Relative(reference.Number("halving"), figures.HalvingDifference!.Value, TwoRoundings);
        // NumPy's times are rounded, and its sum is too.
        Agree.Relative(reference.Number("numpy"), figures.Trapezoid, 1e-12);
        Assert.Equal(count, figures.Count);
        Assert.Equal((count - 1) * TraceRule.Step, figures.Span);
        Assert.Equal((0, 0, 0, 0), (figures.Missing, figures.Gaps, figures.Uncovered, figures.Bridged));
    }

    [Fact]
    public void Figures_Products_AreRationalArithmetics()
    {
        var reference = ReferenceCase.Of("series", "product");
        int count = (int)reference.Number("count");
        var integral = new UniformIntegral(TraceRule.Step);
        integral.AddProducts(TraceRule.Volts(count), TraceRule.Decimals(count));

        IntegralFigures figures = integral.Figures()!;
        Agree.Relative(reference.Number("trapezoid"), figures.Trapezoid, TwoRoundings);
        Agree.Relative(reference.Number("held"), figures.Held, TwoRoundings);
        Agree.Relative(reference.Number("halving"), figures.HalvingDifference!.Value, TwoRoundings);
        Agree.Relative(reference.Number("numpy"), figures.Trapezoid, 1e-12);
    }

    [Fact]
    public void Figures_ParabolaOfThreePoints_IsAboveByTheTextbooksError()
    {
        // The trapezoidal rule on x² exceeds the integral by h² (b - a) / 6 (davis-1984, section 2.1).
        const int steps = 64;
        const double h = 1.0 / steps;
        var integral = new UniformIntegral(h);
        integral.Add([.. Enumerable.Range(0, steps + 1).Select(i => i * h * i * h)]);

        IntegralFigures figures = integral.Figures()!;
        Assert.Equal(1 / 3.0 + h * h / 6, figures.Trapezoid, 1e-16);
        Assert.Equal(h * h / 6 - 4 * h * h / 6, figures.HalvingDifference!.Value, 1e-16);
    }

    [Fact]
    public void Figures_RampAndDecay_AreTheClosedForms()
    {
        const int steps = 1_000_000;
        var ramp = new UniformIntegral(1e-3);
        ramp.Add([.. Enumerable.Range(0, steps + 1).Select(i => (double)i)]);
        var decay = new UniformIntegral(1e-5);
        decay.Add([.. Enumerable.Range(0, steps + 1).Select(i => Math.Exp(-i * 1e-5))]);

        Assert.Equal(steps * (double)steps / 2 * 1e-3, ramp.Figures()!.Trapezoid);
        Assert.Equal(0, ramp.Figures()!.HalvingDifference);
        // What the rule adds to the integral of exp(-t) is a twelfth of h² of it.
        Agree.Relative((1 - Math.Exp(-10)) * (1 + 1e-10 / 12), decay.Figures()!.Trapezoid, 1e-15);
        Agree.Relative(-3e-10 / 12, decay.Figures()!.HalvingDifference!.Value, 1e-4);
    }

    [Fact]
    public void Figures_WholePeriodsOfASine_AreTheMean()
    {
        const int perPeriod = 50;
        var integral = new UniformIntegral(1.0 / perPeriod);
        integral.Add([
            .. Enumerable.Range(0, 40 * perPeriod + 1).Select(i => 0.02 + 0.01 * Math.Sin(2 * Math.PI * i / perPeriod)),
        ]);

        Assert.Equal(0.8, integral.Figures()!.Trapezoid, 1e-15);
        Assert.Equal(0.02, integral.Figures()!.Mean!.Value, 1e-16);
    }

    [Property(Arbitrary = [typeof(ExactSumTests.Terms)])]
    public void Append_AnyCuts_GivesTheSameBytes(ExactSumTests.Terms terms, int seed, bool isGappy)
    {
        var random = new Random(seed);
        double[] samples =
        [
            .. Enumerable
                .Range(0, 60)
                .SelectMany(_ => terms.Values)
                .Select(value => isGappy && random.Next(300) == 0 ? double.NaN : Math.Clamp(value, -1e200, 1e200)),
        ];
        var whole = new UniformIntegral(0.25);
        whole.Add(samples);

        var pieced = new UniformIntegral(0.25);
        var appended = new UniformIntegral(0.25);
        int at = 0;
        while (at < samples.Length)
        {
            int count = Math.Min(random.Next(1, 3000), samples.Length - at);
            pieced.Add(samples.AsSpan(at, count));
            var part = new UniformIntegral(0.25);
            part.Add(samples.AsSpan(at, count));
            appended.Append(UniformIntegral.Read(Bytes(part)));
            at += count;
        }

        Assert.Equal(Bytes(whole), Bytes(pieced));
        Assert.Equal(Bytes(whole), Bytes(appended));
        Assert.Equal(whole.Figures(), appended.Figures());
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Figures_ScaledAndShifted_FollowExactly(Dyadic data)
    {
        IntegralFigures plain = Of(data.Values);
        IntegralFigures scaled = Of(data.Map(value => 4 * value + 3));

        Assert.Equal(4 * plain.Trapezoid + 3 * plain.Span, scaled.Trapezoid);
        Assert.Equal(4 * plain.Held + 3 * plain.Span, scaled.Held);
        Assert.Equal(4 * plain.HalvingDifference, scaled.HalvingDifference);
        Assert.Equal(4 * plain.Maximum + 3, scaled.Maximum);
        Assert.Equal(4 * plain.Minimum + 3, scaled.Minimum);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(15)]
    [InlineData(16)]
    [InlineData(1_100_001)]
    public void Add_CodesInAllForms_AgreeToTheBit(int count)
    {
        short[] codes = [.. Enumerable.Range(0, count).Select(i => (short)TraceRule.Random(3, i))];
        short[] others = [.. Enumerable.Range(0, count).Select(i => (short)TraceRule.Random(4, i))];
        codes[0] = others[0] = short.MinValue;
        double[] wide = [.. codes.Select(code => (double)code)];
        double[] wideOthers = [.. others.Select(code => (double)code)];
        IntegralFigures expected = Of(wide);
        IntegralFigures expectedProducts = OfProducts(wide, wideOthers);

        var ofShort = new UniformIntegral(0.25);
        ofShort.Add(codes);
        var ofInt = new UniformIntegral(0.25);
        ofInt.Add([.. codes.Select(code => (int)code)]);
        var ofSingle = new UniformIntegral(0.25);
        ofSingle.Add([.. codes.Select(code => (float)code)]);
        var shortProducts = new UniformIntegral(0.25);
        shortProducts.AddProducts(codes, others);
        var singleProducts = new UniformIntegral(0.25);
        singleProducts.AddProducts([.. codes.Select(code => (float)code)], [.. others.Select(code => (float)code)]);

        Assert.Equal(expected, ofShort.Figures());
        Assert.Equal(expected, ofInt.Figures());
        Assert.Equal(expected, ofSingle.Figures());
        Assert.Equal(expectedProducts, shortProducts.Figures());
        Assert.Equal(expectedProducts, singleProducts.Figures());
    }

    [Fact]
    public void Add_CodesFromAnOddPlace_KeepEvenAndOddApart()
    {
        short[] codes = [.. Enumerable.Range(0, 101).Select(i => (short)(i * i))];
        var pieced = new UniformIntegral(0.25);
        pieced.Add(codes.AsSpan(0, 33));
        pieced.Add(codes.AsSpan(33));

        Assert.Equal(Of([.. codes.Select(code => (double)code)]), pieced.Figures());
    }

    [Fact]
    public void Figures_MissingSamples_AreCountedBridgedAndLeftOut()
    {
        var integral = new UniformIntegral(0.5);
        integral.Add([double.NaN, 2, 4, double.NaN, double.PositiveInfinity, 10, 12, double.NaN]);

        IntegralFigures figures = integral.Figures()!;
        Assert.Equal((4, 4, 1), (figures.Count, figures.Missing, figures.Gaps));
        Assert.Equal((2.5, 1.5), (figures.Span, figures.Uncovered));
        Assert.Equal((3 + 11) * 0.5, figures.Trapezoid);
        Assert.Equal((2 + 10) * 0.5, figures.Held);
        Assert.Equal(7 * 1.5, figures.Bridged);
        Assert.Equal((2, 12), (figures.Minimum, figures.Maximum));
        Assert.Equal(7, figures.Mean);
        Assert.Null(figures.HalvingDifference);
    }

    [Fact]
    public void AddMissing_BetweenParts_IsAGapOfThatLength()
    {
        var integral = new UniformIntegral(1);
        integral.Add([1.0, 1]);
        integral.AddMissing(3);
        integral.Add([3.0, 3]);

        IntegralFigures figures = integral.Figures()!;
        Assert.Equal((3, 1, 4.0, 8.0), (figures.Missing, figures.Gaps, figures.Uncovered, figures.Bridged));
        Assert.Equal(4, figures.Trapezoid);
    }

    [Fact]
    public void Figures_OneSampleOrNone_HaveNoLength()
    {
        var integral = new UniformIntegral(1);
        Assert.Null(integral.Figures());
        integral.Add([double.NaN]);
        Assert.Null(integral.Figures());
        integral.Add([5.0]);

        IntegralFigures figures = integral.Figures()!;
        Assert.Equal((1, 0.0, 0.0), (figures.Count, figures.Span, figures.Trapezoid));
        Assert.Null(figures.Mean);
        Assert.Null(figures.HalvingDifference);
    }

    [Theory]
    [InlineData(0, "0")]
    [InlineData(double.NaN, "NaN")]
    public void Constructor_StepOutOfRange_IsRefused(double step, string shown)
    {
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(
            nameof(step),
            () => new UniformIntegral(step)
        );
        Assert.StartsWith(
            $"Step must be a finite number above 0; was {shown}.",
            refused.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Misuse_IsRefusedWithWhatWouldDo()
    {
        var integral = new UniformIntegral(1);
        ArgumentException pairs = Assert.Throws<ArgumentException>(
            "others",
            () => integral.AddProducts([1.0, 2], [1.0])
        );
        ArgumentException step = Assert.Throws<ArgumentException>(
            "next",
            () => integral.Append(new UniformIntegral(2))
        );
        ArgumentException count = Assert.Throws<ArgumentOutOfRangeException>("count", () => integral.AddMissing(-1));
        ArgumentException state = Assert.Throws<ArgumentException>(
            "source",
            () => UniformIntegral.Read(Bytes(integral).AsSpan(0, 20))
        );
        ArgumentException room = Assert.Throws<ArgumentException>("destination", () => integral.Write(new byte[7]));

        Assert.StartsWith("Count of the others must be 2, one for each sample; was 1.", pairs.Message, Ordinal);
        Assert.StartsWith("Step of the series that follows must be 1; was 2.", step.Message, Ordinal);
        Assert.StartsWith("Count of missing samples must be 0 or more; was -1.", count.Message, Ordinal);
        Assert.StartsWith("Source must be a state as written", state.Message, Ordinal);
        Assert.StartsWith("Destination must have room for the state", room.Message, Ordinal);
    }

    [Fact]
    public void Write_LongTrace_TakesSomeDozensOfBytes()
    {
        var integral = new UniformIntegral(TraceRule.Step);
        integral.Add(TraceRule.Decimals(100_000));

        Assert.InRange(Bytes(integral).Length, 100, 160);
    }

    private const StringComparison Ordinal = StringComparison.Ordinal;

    private static byte[] Bytes(UniformIntegral integral)
    {
        byte[] bytes = new byte[UniformIntegral.LargestState];
        return bytes[..integral.Write(bytes)];
    }

    private static IntegralFigures Of(double[] samples)
    {
        var integral = new UniformIntegral(0.25);
        integral.Add(samples);
        return integral.Figures()!;
    }

    private static IntegralFigures OfProducts(double[] samples, double[] others)
    {
        var integral = new UniformIntegral(0.25);
        integral.AddProducts(samples, others);
        return integral.Figures()!;
    }
}
