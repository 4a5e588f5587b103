using McuBench.Stats.Distributions;
using static McuBench.Stats.Tests.Distributions.DistributionReference;

namespace McuBench.Stats.Tests.Distributions;

public class ElementaryTests
{
    [Fact]
    public void Functions_AgainstHighPrecision_HoldFifteenDigits()
    {
        foreach (var c in Cases("distributions-t.json", "elementary"))
        {
            var x = c.Number("x");
            AssertClose(c.Number("log1p"), Elementary.Log1p(x), 3e-16, c.ToString());
            if (Math.Abs(x) > 1e-150)
            {
                // Its square underflows below.
                AssertClose(c.Number("log1pMinusX"), Elementary.Log1pMinusX(x), 2e-15, c.ToString());
            }

            if (c.TryGetProperty("expm1", out _))
            {
                AssertClose(c.Number("expm1"), Elementary.Expm1(x), 5e-16, c.ToString());
            }
        }
    }
}
