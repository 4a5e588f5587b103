using McuBench.Stats.Uncertainty;

namespace McuBench.Stats.Tests.Uncertainty;

/// <summary>The worked examples of JCGM 101:2008, with its million draws; tolerances are those stated with the cases for so
/// many draws.</summary>
public sealed class SupplementExampleTests
{
    private static readonly MonteCarloOptions Seeded = new() { Seed = 101 };

    // At a million the ends in 9.2.3 scatter by 0.0048, half the case's tolerance; four million leave a quarter.
    private static readonly MonteCarloOptions FourMillion = Seeded with { Draws = 4_000_000 };

    [Theory]
    [InlineData("9.2.2", 0.01)]
    [InlineData("9.2.3", 0.01)]
    [InlineData("9.2.4", 0.03)]
    public void Run_SumOfFour_HasTheExactEnds(string section, double tolerance)
    {
        var example = ReferenceCase.Of("gum", "s1-9.2-additive");
        InputQuantity[] inputs = [.. Enumerable.Range(1, 4).Select(i => SummandOf(section, i))];
        MonteCarloResult drawn = MonteCarlo.Run(
            inputs,
            x => x[0] + x[1] + x[2] + x[3],
            options: FourMillion,
            cancellation: Token
        );
        UncertaintyBudget budget = Propagation.FirstOrder(inputs, x => x[0] + x[1] + x[2] + x[3]);
        double end = example.Number("recomputed", section, "endpoint");

        Assert.Equal(0, drawn.Value, tolerance);
        Assert.Equal(budget.StandardUncertainty, drawn.StandardUncertainty, tolerance);
        Assert.Equal(-end, drawn.Symmetric!.Lower, tolerance);
        Assert.Equal(end, drawn.Symmetric.Upper, tolerance);
        Assert.Equal(example.Number("expected", section, "u"), budget.StandardUncertainty, 0.05);
        string firstOrder = section == "9.2.2" ? "interval95" : "interval95_first_order";
        Agree.Relative(
            example.Numbers("expected", section, firstOrder),
            [budget.IntervalAt()!.Lower, budget.IntervalAt()!.Upper],
            // Half a unit of the last printed digit.
            0.0026
        );
    }

    [Fact]
    public void RunAndSecondOrder_MassCalibration_AreThoseOf93()
    {
        var example = ReferenceCase.Of("gum", "s1-9.3-mass");
        InputQuantity[] inputs =
        [
            InputQuantity.FromStandardUncertainty("m_R", 100_000, 0.050),
            InputQuantity.FromStandardUncertainty("dm_R", 1.234, 0.020),
            InputQuantity.FromRectangular("rho_a", 1.2, 0.1),
            InputQuantity.FromRectangular("rho_W", 8000, 1000),
            InputQuantity.FromRectangular("rho_R", 8000, 50),
        ];
        MeasurementModel model = x => (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000;
        UncertaintyBudget first = Propagation.FirstOrder(inputs, model);
        UncertaintyBudget second = Propagation.SecondOrder(inputs, model);
        MonteCarloResult drawn = MonteCarlo.Run(inputs, model, options: Seeded, cancellation: Token);

        // The model's last step takes 1e5 from 1e5, which leaves some 1e-11 of a sensitivity's digits.
        Agree.Relative(example.Number("expected", "estimate"), first.Value, 1e-10);
        Agree.Relative(example.Number("recomputed", "u_first_order"), first.StandardUncertainty, 1e-8);
        AgreeOn(example.Numbers("recomputed", "interval95_first_order"), first.IntervalAt(), 1e-6);
        Assert.Equal(example.Number("expected", "u_second_order"), second.StandardUncertainty, 0.0002);
        Agree.Relative(
            ReferenceCase.Of("gum-mpmath", "mass").Number("u_second_order"),
            second.StandardUncertainty,
            1e-8
        );
        AgreeOn(example.Numbers("recomputed", "interval95_second_order"), second.IntervalAt(), 1e-6);
        Assert.Equal(example.Number("recomputed", "exact_mean"), drawn.Value, 0.0003);
        Assert.Equal(example.Number("recomputed", "exact_u"), drawn.StandardUncertainty, 0.0002);
        AgreeOn(example.Numbers("recomputed", "exact_interval95"), drawn.Symmetric, 0.0015);
        AgreeOn(example.Numbers("recomputed", "exact_interval95"), drawn.Shortest, 0.0015);
    }

    [Theory]
    [InlineData("s1-9.4-loss-r0", "0", 0)]
    [InlineData("s1-9.4-loss-r0", "0.010", 0.010)]
    [InlineData("s1-9.4-loss-r0", "0.050", 0.050)]
    [InlineData("s1-9.4-loss-r09", "0", 0)]
    [InlineData("s1-9.4-loss-r09", "0.010", 0.010)]
    [InlineData("s1-9.4-loss-r09", "0.050", 0.050)]
    public void Run_ComparisonLoss_HasTheMomentsAndEndsOf94(string key, string place, double x1)
    {
        var example = ReferenceCase.Of("gum", key);
        double r = example.Number("input", "correlation");
        MonteCarloResult drawn = MonteCarlo.Run(
            Reflection(x1),
            Loss,
            r == 0 ? null : [new Correlation("x1", "x2", r)],
            Seeded,
            Token
        );

        double[] symmetric = example.Numbers("recomputed", place, "symmetric95");
        double[] shortest = example.Numbers("recomputed", place, "shortest95");
        Agree.Relative(example.Number("recomputed", place, "mean"), 1e6 * drawn.Value, 0.005);
        Agree.Relative(example.Number("recomputed", place, "u"), 1e6 * drawn.StandardUncertainty, 0.005);
        // 2 % of an end, and of the width where the end lies near 0.
        double width = shortest[1] - shortest[0];
        Agree.Relative(symmetric[1], 1e6 * drawn.Symmetric!.Upper, 0.02);
        Assert.Equal(symmetric[0], 1e6 * drawn.Symmetric.Lower, Math.Max(0.02 * symmetric[0], 1e-3 * width));
        Agree.Relative(shortest[1], 1e6 * drawn.Shortest!.Upper, 0.02);
        Assert.Equal(shortest[0], 1e6 * drawn.Shortest.Lower, Math.Max(0.02 * shortest[0], 0.01 * width));
    }

    [Theory]
    [InlineData("0", 0)]
    [InlineData("0.010", 0.010)]
    [InlineData("0.050", 0.050)]
    public void FirstAndSecondOrder_ComparisonLoss_AreThoseOf94(string place, double x1)
    {
        var example = ReferenceCase.Of("gum", "s1-9.4-loss-r0");
        UncertaintyBudget first = Propagation.FirstOrder(Reflection(x1), Loss);
        UncertaintyBudget second = Propagation.SecondOrder(Reflection(x1), Loss);

        Assert.Equal(example.Number("expected", place, "estimate_first_order"), 1e6 * first.Value, 1e-9);
        Agree.Relative(example.Number("recomputed", place, "u_first_order"), 1e6 * first.StandardUncertainty, 1e-8);
        Agree.Relative(example.Number("recomputed", place, "u_second_order"), 1e6 * second.StandardUncertainty, 1e-8);
        double[] ends = example.Numbers("recomputed", place, "interval95_second_order");
        Agree.Relative(ends, [1e6 * second.IntervalAt()!.Lower, 1e6 * second.IntervalAt()!.Upper], 1e-5);
        if (x1 == 0)
        {
            Assert.Null(first.IntervalAt());
            Assert.Equal(
                "To the first order the inputs' uncertainties leave the result unmoved: take the second order or Monte Carlo.",
                Assert.Single(first.Notes)
            );
            Assert.Empty(second.Notes);
        }
    }

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    private static double Loss(ReadOnlySpan<double> x) => x[0] * x[0] + x[1] * x[1];

    private static InputQuantity[] Reflection(double x1) =>
        [InputQuantity.FromStandardUncertainty("x1", x1, 0.005), InputQuantity.FromStandardUncertainty("x2", 0, 0.005)];

    private static InputQuantity SummandOf(string section, int i) =>
        section == "9.2.2"
            ? InputQuantity.FromStandardUncertainty($"x{i}", 0, 1)
            : InputQuantity.FromRectangular($"x{i}", 0, Math.Sqrt(3) * (section == "9.2.4" && i == 4 ? 10 : 1));

    private static void AgreeOn(double[] ends, Interval? interval, double tolerance)
    {
        Assert.Equal(ends[0], interval!.Lower, tolerance);
        Assert.Equal(ends[1], interval.Upper, tolerance);
    }
}
