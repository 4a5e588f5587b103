using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class GammaFunctionTests
{
    [Fact]
    public void Functions_AgainstHighPrecision_HoldFifteenDigits()
    {
        foreach (var c in Cases("distributions-t.json", "gamma"))
        {
            var z = c.Number("z");
            // δ enters as an exponent: its absolute error counts.
            Assert.Equal(c.Number("stirlingError"), GammaFunction.StirlingError(z), 1e-15);
            AssertClose(c.Number("halfStepRatio"), GammaFunction.HalfStepRatio(z), 2e-15, c.ToString());
        }
    }
}
