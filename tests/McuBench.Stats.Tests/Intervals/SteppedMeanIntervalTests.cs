using FsCheck.Xunit;
using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Intervals;

public sealed class SteppedMeanIntervalTests
{
    private static readonly double[] Thirty =
    [
        .. Enumerable.Repeat(0.0, 2),
        .. Enumerable.Repeat(1.0, 9),
        .. Enumerable.Repeat(2.0, 12),
        .. Enumerable.Repeat(3.0, 6),
        4,
    ];

    private static readonly Dictionary<string, double[]> Cases = new(StringComparer.Ordinal)
    {
        ["rounded 0 0 1"] = [0, 0, 1],
        ["rounded 0 1"] = [0, 1],
        ["rounded 0 0 0 0 1"] = [0, 0, 0, 0, 1],
        ["rounded 0 1 1 2 3"] = [0, 1, 1, 2, 3],
        ["rounded, two and eight"] = [0, 0, 1, 1, 1, 1, 1, 1, 1, 1],
        ["rounded, one, eight and one"] = [0, 1, 1, 1, 1, 1, 1, 1, 1, 2],
        ["rounded, thirty"] = Thirty,
        ["random start 0 0 1"] = [0, 0, 1],
        ["random start 0 0 0 0 0"] = [0, 0, 0, 0, 0],
        ["random start 0 1 1 2 2"] = [0, 1, 1, 2, 2],
        ["random start, three and seven"] = [0, 0, 0, 1, 1, 1, 1, 1, 1, 1],
    };

    public static TheoryData<string> Names => [.. Cases.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Of_FewSteps_AgreesWithTwoSumsOnDenseGrids(string name)
    {
        var reading = name.StartsWith("random", StringComparison.Ordinal)
            ? SteppedReading.RandomStart
            : SteppedReading.Rounded;
        Estimate wide = SteppedMeanInterval.Of(Cases[name], 1, reading);
        Estimate narrow = SteppedMeanInterval.Of(Cases[name], 1, reading, 0.682689492137086);

        // The sums differ from each other by up to 1E-4 of a step where two readings make tails of 1/x.
        foreach (string file in (string[])["steps-scipy", "steps-r"])
        {
            double[] expected = ReferenceCase.Of(file, "quantiles").Numbers(name);
            double[] actual =
            [
                wide.Interval!.Lower,
                narrow.Interval!.Lower,
                narrow.Interval.Upper,
                wide.Interval.Upper,
            ];
            for (int i = 0; i < expected.Length; i++)
            {
                Assert.Equal(expected[i], actual[i], 1e-3 * (expected[^1] - expected[0]));
            }
        }
    }

    [Fact]
    public void Of_ThreeEqualReadings_IsTheStepAsTwoSumsOnDenseGridsNearlyFind()
    {
        Estimate mean = SteppedMeanInterval.Of([5, 5, 5], 1, confidence: 0.95);

        Assert.Equal(1, mean.Interval!.Width, 1e-12);

        foreach (string file in (string[])["steps-scipy", "steps-r"])
        {
            Assert.Equal(0.5, ReferenceCase.Of(file, "quantiles").Numbers("rounded 0 0 0")[^1], 5e-3);
        }
    }

    [Theory]
    [InlineData(10)]
    [InlineData(500)]
    public void Of_EqualReadings_IsTheStepThatTheyStandFor(int count)
    {
        Estimate mean = SteppedMeanInterval.Of([.. Enumerable.Repeat(2.4, count)], 0.1);

        Assert.Equal(2.4, mean.Value, 1e-12);
        Assert.Equal(0.1 / Math.Sqrt(12) / 0.95, mean.StandardError!.Value, 1e-15);
        Assert.Equal(double.PositiveInfinity, mean.DegreesOfFreedom);
        Assert.Equal(0.1, mean.Interval!.Width, 1e-12);
    }

    [Fact]
    public void Of_ReadingsOverManySteps_IsStudents()
    {
        double[] readings = [20, 22, 24, 26, 28, 20, 22, 24, 26, 29];
        Estimate student = MeanInterval.StudentT(Sample.Of(readings));

        Estimate stepped = SteppedMeanInterval.Of(readings, 1);

        Assert.Equal(student.Value, stepped.Value);
        Assert.Equal(student.Interval!.Lower, stepped.Interval!.Lower, 1e-12);
        Assert.Equal(9, stepped.DegreesOfFreedom);
        Assert.Equal("mean, Student t", stepped.Method);
    }

    [Fact]
    public void Of_ReadingsOverJustManySteps_IsNearStudents()
    {
        double[] readings = [20, 22, 24, 26, 23, 21, 22, 24, 25, 22];
        Estimate student = MeanInterval.StudentT(Sample.Of(readings));
        Estimate stepped = SteppedMeanInterval.Of(readings, 1);

        Assert.Equal(student.Value, stepped.Value, 0.01);
        Assert.Equal(1, stepped.Interval!.Width / student.Interval!.Width, 0.03);
        Assert.Equal(9, stepped.DegreesOfFreedom!.Value, 1.0);
    }

    [Fact]
    public void Of_OneWildReading_DoesNotDitherTheOthers()
    {
        double[] readings = [.. Enumerable.Repeat(24.0, 999), 31];
        Estimate mean = SteppedMeanInterval.Of(readings, 1);

        Assert.Equal(Math.Sqrt(1.0 / 12), mean.StandardError!.Value, 1e-12);
        Assert.Equal("mean, Student t on the step, since most readings are equal", mean.Method);
    }

    [Fact]
    public void Of_OneOfFiveBeyondTheEdge_LiesNearerToTheEdgeThanTheReadingsMean()
    {
        Estimate mean = SteppedMeanInterval.Of([24, 24, 24, 24, 25], 1);

        Assert.InRange(mean.Value, 24.2 + 1e-3, 24.5);
        Assert.True(mean.Interval!.Width < MeanInterval.StudentT(Sample.Of(24, 24, 24, 24, 25)).Interval!.Width);
    }

    [Fact]
    public void Of_NarrowerConfidence_IsInsideTheWider()
    {
        Interval wide = SteppedMeanInterval.Of([1, 1, 2, 3], 1, confidence: 0.99).Interval!;
        Interval narrow = SteppedMeanInterval.Of([1, 1, 2, 3], 1, confidence: 0.9).Interval!;

        Assert.True(wide.Lower < narrow.Lower && narrow.Upper < wide.Upper);
    }

    [Property(MaxTest = 30)]
    public void Of_ShiftScaleOrderAndMirror_FollowTheReadings(byte[] places)
    {
        double[] readings = [0, 1, .. places.Take(6).Select(p => (double)(p % 4))];
        Estimate plain = SteppedMeanInterval.Of(readings, 1);
        Estimate moved = SteppedMeanInterval.Of([.. readings.Reverse().Select(r => 0.25 * r + 12)], 0.25);
        Estimate turned = SteppedMeanInterval.Of([.. readings.Select(r => -r)], 1);

        Assert.Equal(0.25 * plain.Interval!.Lower + 12, moved.Interval!.Lower, 1e-9);
        Assert.Equal(0.25 * plain.Value + 12, moved.Value, 1e-9);
        Assert.Equal(0.25 * plain.StandardError!.Value, moved.StandardError!.Value, 1e-9);
        Assert.Equal(-plain.Interval.Lower, turned.Interval!.Upper, 1e-6);
        Assert.Equal(
            plain.DegreesOfFreedom!.Value,
            turned.DegreesOfFreedom!.Value,
            1e-3 * plain.DegreesOfFreedom.Value
        );
    }

    [Fact]
    public void Of_OneReading_IsRefused()
    {
        var fault = Assert.Throws<ArgumentException>(() => SteppedMeanInterval.Of([24], 1));

        Assert.Equal("readings", fault.ParamName);
        Assert.StartsWith("Count of values must be at least 2; was 1.", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_NoStep_IsRefused() =>
        Distributions.Refusal.Of(
            () => SteppedMeanInterval.Of([24, 25], 0),
            "step",
            "Step must be a finite number above 0; was 0."
        );
}
