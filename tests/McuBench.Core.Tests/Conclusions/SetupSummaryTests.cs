using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats;
using McuBench.Stats.Intervals;
using UnitsNet;

namespace McuBench.Core.Tests.Conclusions;

public class SetupSummaryTests
{
    [Fact]
    public void Of_FineTimer_IntervalIsStudents()
    {
        double[] seconds = [2.41, 2.38, 2.44, 2.40, 2.39];
        var summary = SetupSummary.Of(Bench.Series(Bench.At(Bench.Marl, 100), Bench.Fine, seconds));

        var student = MeanInterval.StudentT(Sample.Of(seconds));
        Assert.Equal(student.Value, Si.Seconds(summary.RunTime.Value), 1e-14);
        Assert.Equal(student.Interval!.Lower, Si.Seconds(summary.RunTime.Lower!.Value), 1e-12);
        Assert.Equal(student.Interval.Upper, Si.Seconds(summary.RunTime.Upper!.Value), 1e-12);
        Assert.Equal(4, summary.RunTime.DegreesOfFreedom!.Value, 1e-9);
        Assert.Equal(5, summary.RunTime.Trials);
    }
}
