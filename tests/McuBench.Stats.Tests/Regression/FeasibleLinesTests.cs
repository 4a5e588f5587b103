using FsCheck.Xunit;
using McuBench.Stats.Regression;
using McuBench.Stats.Resampling;

namespace McuBench.Stats.Tests.Regression;

public sealed class FeasibleLinesTests
{
    private static readonly double[] Two = [1, 2];
    private static readonly double[] OneTwice = [1, 1];
    private static readonly double[] Ones = [1, 1];
    private static readonly double[] Zeros = [0, 0];
    private static readonly double[] Single = [1];
    private static readonly double[] WithNaN = [0, double.NaN];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Of_Bars_HasTheExtremesOfLinearPrograms(int index)
    {
        FeasibleLines lines = Clocks(index, out ReferenceCase reference);
        double[] expected = reference.NumbersIn("extremes", index);

        Assert.False(lines.IsEmpty);
        Agree.Relative(
            expected,
            [lines.Intercept.Lower, lines.Intercept.Upper, lines.Slope.Lower, lines.Slope.Upper],
            1e-9
        );
    }

    [Fact]
    public void Of_BarsThatNoLineMeets_IsEmptyAndHasNoBounds()
    {
        FeasibleLines lines = Clocks(3, out _);

        Assert.True(lines.IsEmpty);
        Assert.Empty(lines.Vertices);
        Assert.Equal(
            "No line passes through all bars: there are no bounds.",
            Assert.Throws<InvalidOperationException>(() => lines.Intercept).Message
        );
        Assert.Throws<InvalidOperationException>(() => lines.Slope);
    }

    [Fact]
    public void Of_TwoBars_HasFourCorners() =>
        // Heights 0 or 1 at x of 1 and 2.
        Assert.Equal(
            [(-1, 1), (0, 0), (1, 0), (2, -1)],
            FeasibleLines
                .Of(Two, Zeros, Ones)
                .Vertices.Select(v => ((int)Math.Round(v.Intercept), (int)Math.Round(v.Slope)))
                .Order()
        );

    [Fact]
    public void Of_ReadingsOnALine_HoldsThatLineEvenWithoutAnyWidth()
    {
        double[] x = [1, 3, 7];
        double[] y = [3, 7, 15];
        FeasibleLines lines = FeasibleLines.Of(x, y, y);

        Assert.Equal(1, lines.Intercept.Lower, 1e-12);
        Assert.Equal(1, lines.Intercept.Upper, 1e-12);
        Assert.Equal(2, lines.Slope.Lower, 1e-12);
        Assert.Equal((21.0, 21.0), (Math.Round(lines.At(10).Lower, 9), Math.Round(lines.At(10).Upper, 9)));
    }

    [Property]
    public bool Of_RoundedReadingsOfALine_AlwaysHoldsTheLine(ulong seed)
    {
        var random = RandomStream.Of(seed);
        double intercept = random.Rectangular(-2, 2);
        double slope = random.Rectangular(-5, 5);
        double[] x = [1, .. Enumerable.Range(0, random.Index(6) + 1).Select(_ => random.Rectangular(0, 4))];
        double[] read = [.. x.Select(v => Math.Round((intercept + slope * v) * 8) / 8)];
        FeasibleLines lines = FeasibleLines.Of(x, [.. read.Select(r => r - 0.0625)], [.. read.Select(r => r + 0.0625)]);

        return !lines.IsEmpty
            && Holds(lines.Intercept, intercept)
            && Holds(lines.Slope, slope)
            && Holds(lines.At(9), intercept + 9 * slope);

        static bool Holds((double Lower, double Upper) bounds, double value) =>
            bounds.Lower <= value + 1e-9 && value <= bounds.Upper + 1e-9;
    }

    [Property]
    public bool Of_OtherUnits_ScalesAndKeepsItsShape(ulong seed)
    {
        var random = RandomStream.Of(seed);
        double[] x = [1, 2, 3 + random.Uniform()];
        double[] y = [.. x.Select(v => 1 + v + 0.1 * random.Uniform())];
        double[] upper = [.. y.Select(v => v + 0.2)];
        FeasibleLines plain = FeasibleLines.Of(x, y, upper);
        FeasibleLines scaled = FeasibleLines.Of(
            [.. x.Select(v => v * 1e-9)],
            [.. y.Select(v => v * 1e-6)],
            [.. upper.Select(v => v * 1e-6)]
        );

        return plain.Vertices.Length == scaled.Vertices.Length
            && Near(plain.Intercept.Lower * 1e-6, scaled.Intercept.Lower)
            && Near(plain.Slope.Upper * 1e3, scaled.Slope.Upper);

        static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-9 * Math.Max(Math.Abs(a), 1e-6);
    }

    [Fact]
    public void Of_Nonsense_IsRefused()
    {
        Refused<ArgumentException>(
            () => FeasibleLines.Of(Single, Single, Single),
            "x",
            "Count of values must be at least 2; was 1."
        );
        Refused<ArgumentException>(
            () => FeasibleLines.Of(Two, Single, Two),
            "lower",
            "Count of lower limits must be 2, one for each bar; was 1."
        );
        Refused<ArgumentException>(
            () => FeasibleLines.Of(OneTwice, Zeros, Ones),
            "x",
            "Bars must stand at two different places at least; all stood at 1."
        );
        Refused<ArgumentOutOfRangeException>(
            () => FeasibleLines.Of(Two, Ones, Zeros),
            "upper",
            "Upper limit at index 0 must be at or above the lower one, 1; was 0."
        );
        Refused<ArgumentOutOfRangeException>(
            () => FeasibleLines.Of(Two, Zeros, WithNaN),
            "upper",
            "Value at index 1 must be a finite number; was NaN."
        );
    }

    private static FeasibleLines Clocks(int index, out ReferenceCase reference)
    {
        reference = ReferenceCase.Of("clock", "bounds");
        double half = reference.NumbersIn("step", index)[0] / 2;
        double[] seconds = reference.NumbersIn("seconds", index);
        return FeasibleLines.Of(
            [.. reference.NumbersIn("megahertz", index).Select(m => 1 / (m * 1e6))],
            [.. seconds.Select(s => s - half)],
            [.. seconds.Select(s => s + half)]
        );
    }

    private static void Refused<T>(Action act, string parameter, string message)
        where T : ArgumentException
    {
        var refused = Assert.Throws<T>(act);
        Assert.Equal(parameter, refused.ParamName);
        Assert.StartsWith(message, refused.Message, StringComparison.Ordinal);
    }
}
