using McuBench.Stats.Regression;

namespace McuBench.Stats.Tests.Regression;

public sealed class LackOfFitTests
{
    [Fact]
    public void OfStraightLine_TiedAbscissas_AgreesWithR()
    {
        var data = ReferenceCase.Of("slopes-scipy", "data");
        LackOfFitResult test = LackOfFit.OfStraightLine(data.Numbers("ties", "x"), data.Numbers("ties", "y"));

        Agree.Relative(
            ReferenceCase.Of("slopes-r", "lack_of_fit").Numbers(),
            [
                test.Statistic,
                test.LackOfFitDegreesOfFreedom,
                test.PureErrorDegreesOfFreedom,
                test.PValue,
                test.PureErrorStandardDeviation,
            ],
            1e-11
        );
    }

    [Fact]
    public void OfStraightLine_NothingToJudgeBy_IsRefused()
    {
        Assert.StartsWith(
            "Count of different x must be at least 3; was 2.",
            Assert.Throws<ArgumentException>(() => LackOfFit.OfStraightLine([1, 1, 2, 2], [1, 2, 3, 4])).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Values of x must repeat at least once; all were different.",
            Assert.Throws<ArgumentException>(() => LackOfFit.OfStraightLine([1, 2, 3], [1, 2, 4])).Message,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "Repeated readings must differ at one x at least",
            Assert.Throws<ArgumentException>(() => LackOfFit.OfStraightLine([1, 1, 2, 3], [2, 2, 3, 5])).Message,
            StringComparison.Ordinal
        );
    }
}
