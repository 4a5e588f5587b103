using McuBench.Stats.Uncertainty;

namespace McuBench.Stats.Tests.Uncertainty;

public sealed class ModelDerivativesTests
{
    // Values by symbolic differentiation in R, confirmed in mpmath (scripts/gum.R). Tolerances are what rounding leaves of a
    // difference of the first, second and third order.
    [Fact]
    public void FirstSecondThird_SmoothModel_AgreeWithSymbolicDerivatives()
    {
        var exact = ReferenceCase.Of("gum-r", "derivatives");
        ModelDerivatives found = Of(
            x => Math.Exp(-x[0] * x[1]) * Math.Sin(x[0]) / Math.Sqrt(x[1]),
            (0.7, 0.01),
            (1.3, 0.02)
        );

        Agree.Relative(exact.Number("x"), found.First(0).Value, 1e-11);
        Agree.Relative(exact.Number("y"), found.First(1).Value, 1e-11);
        Agree.Relative(exact.Number("xx"), found.Second(0, 0).Value, 1e-8);
        Agree.Relative(exact.Number("xy"), found.Second(0, 1).Value, 1e-8);
        Agree.Relative(exact.Number("yy"), found.Second(1, 1).Value, 1e-8);
        Agree.Relative(exact.Number("xxx"), found.Third(0, 0).Value, 1e-5);
        Agree.Relative(exact.Number("xyy"), found.Third(0, 1).Value, 1e-5);
        Agree.Relative(exact.Number("yxx"), found.Third(1, 0).Value, 1e-5);
        Agree.Relative(exact.Number("yyy"), found.Third(1, 1).Value, 1e-5);
    }

    [Theory]
    [InlineData(1e-3)]
    [InlineData(1.0)]
    [InlineData(1e6)]
    public void First_SmoothModel_ErrorEstimateHoldsTheError(double scale)
    {
        DerivativeEstimate slope = Of(x => Math.Exp(x[0] / scale), (scale, 0.1 * scale)).First(0);
        double error = Math.Abs(slope.Value - Math.E / scale);

        Assert.InRange(error, 0, slope.Error + 1e-12 / scale);
        Assert.InRange(slope.Error, 0, 1e-8 / scale);
    }

    [Fact]
    public void First_UncertaintyReachesOutOfTheDomain_StepsInsideIt()
    {
        DerivativeEstimate slope = Of(x => Math.Sqrt(x[0]), (1e-4, 1)).First(0);

        Agree.Relative(50, slope.Value, 1e-9);
    }

    [Fact]
    public void First_CornerAtTheEstimate_SaysThatItIsUncertain()
    {
        UncertaintyBudget budget = Propagation.FirstOrder(
            [InputQuantity.FromStandardUncertainty("x", 0, 1), InputQuantity.FromStandardUncertainty("z", 0, 0.1)],
            x => (x[0] > 0 ? Math.Sqrt(x[0]) : x[0]) + x[1]
        );

        Assert.StartsWith("The sensitivity to 'x' was found to within", budget.Notes.First(), StringComparison.Ordinal);
    }

    [Fact]
    public void First_EstimateAtTheEdgeOfTheDomain_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() =>
            Propagation.FirstOrder([InputQuantity.FromStandardUncertainty("x", 0, 1)], x => Math.Sqrt(x[0]))
        );

        Assert.Equal("model", refusal.ParamName);
        Assert.StartsWith(
            "Model must be finite on both sides of the estimate of 'x'; was not at any distance from 0: give the sensitivities, or use Monte Carlo.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    private static ModelDerivatives Of(MeasurementModel model, params (double Value, double U)[] inputs) =>
        new(
            model,
            new InputSet(
                [.. inputs.Select((x, i) => InputQuantity.FromStandardUncertainty($"x{i}", x.Value, x.U))],
                null
            )
        );
}
