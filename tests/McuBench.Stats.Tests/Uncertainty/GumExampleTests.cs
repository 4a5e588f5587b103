using McuBench.Stats.Distributions;
using McuBench.Stats.Regression;
using McuBench.Stats.Uncertainty;

namespace McuBench.Stats.Tests.Uncertainty;

/// <summary>The worked examples of JCGM 100:2008; tolerances are half a unit of the last printed digit, or 1e-9 against
/// the recomputed values.</summary>
public sealed class GumExampleTests
{
    private const double Digits = 1e-9;

    [Fact]
    public void FromReadings_TwentyTemperatures_AreThoseOfSection443()
    {
        var example = ReferenceCase.Of("gum", "gum-4.4.3-temperature");
        var input = InputQuantity.FromReadings("t", Sample.Of(example.Numbers("input", "t_celsius")));

        Assert.Equal(example.Number("expected", "mean"), input.Value, 5e-4);
        Assert.Equal(example.Number("expected", "s"), input.Stated, 5e-4);
        Assert.Equal(example.Number("expected", "u_mean"), input.StandardUncertainty, 5e-4);
        Agree.Relative(example.Number("recomputed", "u_mean"), input.StandardUncertainty, Digits);
        Assert.Equal(19, input.DegreesOfFreedom);
        Assert.Equal(EvaluationType.TypeA, input.Evaluation);
    }

    [Fact]
    public void FirstOrder_ProductOfThree_HasTheEffectiveFreedomOfG41()
    {
        var example = ReferenceCase.Of("gum", "gum-g4-welch-satterthwaite");
        double[] percent = example.Numbers("input", "relative_u_percent");
        double[] counts = example.Numbers("input", "n");
        InputQuantity[] inputs =
        [
            .. percent.Select(
                (u, i) => InputQuantity.FromStandardUncertainty($"x{i}", 2 + i, (2 + i) * u / 100, counts[i] - 1)
            ),
        ];
        UncertaintyBudget budget = Propagation.FirstOrder(inputs, x => 7 * x[0] * x[1] * x[2]);
        double relative = 100 * budget.StandardUncertainty / budget.Value;

        Assert.Equal(example.Number("expected", "relative_uc_percent"), relative, 0.005);
        Assert.Equal(example.Number("expected", "nu_eff"), budget.DegreesOfFreedom!.Value, 0.05);
        Assert.Equal(example.Number("expected", "t_95"), budget.CoverageFactor()!.Value, 0.005);
        Assert.Equal(
            example.Number("expected", "relative_U95_percent"),
            100 * budget.ExpandedUncertainty()!.Value / budget.Value,
            0.05
        );
        Agree.Relative(example.Number("recomputed", "relative_uc_percent"), relative, Digits);
        Agree.Relative(example.Number("recomputed", "nu_eff"), budget.DegreesOfFreedom.Value, Digits);
    }

    [Fact]
    public void CoverageFactor_TableG2_HoldsEveryEntry()
    {
        var table = ReferenceCase.Of("gum", "gum-table-g2");
        double[] freedoms = table.Numbers("input", "nu");
        double[] fractions = table.Numbers("input", "p");
        double[][] exact = table.Rows("recomputed", "rows");
        for (int i = 0; i < freedoms.Length; i++)
        {
            var input = InputQuantity.FromStandardUncertainty("x", 1, 1, freedoms[i]);
            UncertaintyBudget budget = Propagation.FirstOrder([input], x => x[0]);
            for (int j = 0; j < fractions.Length; j++)
            {
                // The table was computed to 9 digits.
                Agree.Relative(exact[i][j], budget.CoverageFactor(fractions[j])!.Value, 5e-9);
            }
        }
    }

    [Fact]
    public void FirstOrder_EndGauge_IsThatOfH1()
    {
        var example = ReferenceCase.Of("gum", "gum-h1-end-gauge");
        UncertaintyBudget budget = Propagation.FirstOrder(EndGaugeInputs(example), EndGauge);
        BudgetComponent Part(string name) => budget.Components.Single(part => part.Input.Name == name);

        Agree.Relative(example.Number("recomputed", "l_nm"), budget.Value, 1e-15);
        Agree.Relative(example.Number("recomputed", "uc"), budget.StandardUncertainty, Digits);
        Agree.Relative(example.Number("recomputed", "nu_eff"), budget.DegreesOfFreedom!.Value, Digits);
        Agree.Relative(example.Number("recomputed", "contribution_d_alpha"), Part("d_alpha").Contribution, 1e-8);
        Agree.Relative(example.Number("recomputed", "contribution_d_theta"), Part("d_theta").Contribution, 1e-8);
        Agree.Relative(example.Number("recomputed", "u_alpha_s"), Part("alpha_s").Input.StandardUncertainty, Digits);
        Assert.Equal(0, Part("theta_mean").Contribution);
        Agree.Relative(
            ReferenceCase.Of("gum-r", "coverage").Number("k99_at_16.75"),
            budget.CoverageFactor(0.99)!.Value,
            Digits
        );
        // With degrees of freedom truncated as the guide does.
        double truncated = StudentT.Of(Math.Floor(budget.DegreesOfFreedom.Value)).UpperQuantile(0.005);
        Agree.Relative(example.Number("recomputed", "t_99_16"), truncated, Digits);
        Agree.Relative(example.Number("recomputed", "U_99"), truncated * budget.StandardUncertainty, Digits);
    }

    [Fact]
    public void FirstOrder_DifferenceOfEndGauges_CombinesItsPartsAsH1()
    {
        var example = ReferenceCase.Of("gum", "gum-h1-end-gauge");
        InputQuantity[] parts = [.. EndGaugeInputs(example).Skip(1).Take(3)];
        UncertaintyBudget budget = Propagation.WithSensitivities(parts, 215, [1, 1, 1]);

        Agree.Relative(example.Number("recomputed", "u_d"), budget.StandardUncertainty, Digits);
        Agree.Relative(example.Number("recomputed", "nu_d"), budget.DegreesOfFreedom!.Value, Digits);
    }

    [Fact]
    public void SecondOrder_EndGauge_IsThatOfH1()
    {
        var example = ReferenceCase.Of("gum", "gum-h1-end-gauge");
        UncertaintyBudget budget = Propagation.SecondOrder(EndGaugeInputs(example), EndGauge);
        double terms =
            Math.Pow(example.Number("recomputed", "second_order_term_d_alpha_theta"), 2)
            + Math.Pow(example.Number("recomputed", "second_order_term_alpha_s_d_theta"), 2);

        Agree.Relative(terms, budget.SecondOrderVariance!.Value, 1e-6);
        Agree.Relative(example.Number("recomputed", "uc_second_order"), budget.StandardUncertainty, 1e-8);
        Assert.Equal(example.Number("expected", "uc_second_order"), budget.StandardUncertainty, 0.5);
    }

    [Fact]
    public void Joint_Impedance_HasTheCorrelationsOfH2()
    {
        var example = ReferenceCase.Of("gum", "gum-h2-impedance");
        string[] names = ["V", "I", "phi"];
        Sample[] readings =
        [
            Sample.Of(example.Numbers("input", "V_volt")),
            Sample.Of([.. example.Numbers("input", "I_milliampere").Select(i => i / 1000)]),
            Sample.Of(example.Numbers("input", "phi_radian")),
        ];
        InputQuantity[] inputs = [.. names.Zip(readings, InputQuantity.FromReadings)];
        Correlation Pair(int i, int j) => Correlation.FromReadings(names[i], readings[i], names[j], readings[j]);
        Correlation[] correlations = [Pair(0, 1), Pair(0, 2), Pair(1, 2)];
        MeasurementModel[] models =
        [
            x => x[0] / x[1] * Math.Cos(x[2]),
            x => x[0] / x[1] * Math.Sin(x[2]),
            x => x[0] / x[1],
        ];
        JointBudget joint = Propagation.Joint(inputs, models, correlations);

        Agree.Relative(example.Number("recomputed", "r_V_I"), correlations[0].Coefficient, Digits);
        Agree.Relative(example.Number("recomputed", "r_V_phi"), correlations[1].Coefficient, Digits);
        Agree.Relative(example.Number("recomputed", "r_I_phi"), correlations[2].Coefficient, Digits);
        string[] results = ["R", "X", "Z"];
        for (int i = 0; i < results.Length; i++)
        {
            UncertaintyBudget budget = joint.Budgets[i];
            Assert.Equal(example.Number("expected", results[i]), budget.Value, 0.001);
            Assert.Equal(example.Number("expected", "u_" + results[i]), budget.StandardUncertainty, 0.001);
            Agree.Relative(example.Number("recomputed", "approach1", results[i]), budget.Value, Digits);
            Agree.Relative(
                example.Number("recomputed", "approach1", "u_" + results[i]),
                budget.StandardUncertainty,
                Digits
            );
            // Five triples read side by side: any combination of their means has 4 degrees of freedom.
            Agree.Relative(4, budget.DegreesOfFreedom!.Value, Digits);
            Agree.Relative(1, budget.Components.Sum(part => part.Share), Digits);
            UncertaintyBudget apart = Propagation.FirstOrder(inputs, models[i]);
            Agree.Relative(example.Numbers("recomputed", "u_if_uncorrelated")[i], apart.StandardUncertainty, Digits);
        }

        Agree.Relative(example.Number("recomputed", "approach1", "r_R_X"), joint.CorrelationOf(0, 1)!.Value, 1e-8);
        Agree.Relative(example.Number("recomputed", "approach1", "r_R_Z"), joint.CorrelationOf(0, 2)!.Value, 1e-8);
        Agree.Relative(example.Number("recomputed", "approach1", "r_X_Z"), joint.CorrelationOf(1, 2)!.Value, 1e-8);
        Assert.Equal(example.Number("expected", "r_R_X"), joint.CorrelationOf(0, 1)!.Value, 0.001);
    }

    [Fact]
    public void FirstOrder_CalibrationLine_PredictsAsH3()
    {
        var example = ReferenceCase.Of("gum", "gum-h3-thermometer");
        double start = example.Number("input", "t0");
        LineFit line = StraightLine.Fit(
            [.. example.Numbers("input", "t_celsius").Select(t => t - start)],
            example.Numbers("input", "b_celsius")
        );
        double uIntercept = line.InterceptStandardError!.Value;
        double uSlope = line.SlopeStandardError!.Value;
        double r = line.Covariance!.Value / (uIntercept * uSlope);
        InputQuantity[] inputs =
        [
            InputQuantity.FromStandardUncertainty("y1", line.Intercept, uIntercept, 9, EvaluationType.TypeA),
            InputQuantity.FromStandardUncertainty("y2", line.Slope, uSlope, 9, EvaluationType.TypeA),
        ];
        double away = example.Number("input", "predict_at") - start;
        UncertaintyBudget budget = Propagation.FirstOrder(
            inputs,
            y => y[0] + y[1] * away,
            [new Correlation("y1", "y2", r)]
        );

        Agree.Relative(example.Number("recomputed", "y1"), line.Intercept, Digits);
        Agree.Relative(example.Number("recomputed", "y2"), line.Slope, Digits);
        Agree.Relative(example.Number("recomputed", "u_y1"), uIntercept, Digits);
        Agree.Relative(example.Number("recomputed", "u_y2"), uSlope, Digits);
        Agree.Relative(example.Number("recomputed", "r"), r, Digits);
        Agree.Relative(example.Number("recomputed", "s"), line.ResidualStandardDeviation!.Value, Digits);
        Agree.Relative(example.Number("recomputed", "b_30"), budget.Value, Digits);
        Agree.Relative(example.Number("recomputed", "u_b_30"), budget.StandardUncertainty, 1e-8);
        Assert.Equal(example.Number("expected", "b_30"), budget.Value, 5e-5);
        Assert.Equal(example.Number("expected", "u_b_30"), budget.StandardUncertainty, 5e-5);
        Agree.Relative(example.Number("expected", "nu"), budget.DegreesOfFreedom!.Value, Digits);
    }

    [Fact]
    public void FromReadings_TenDaysOfAVoltageStandard_AreThoseOfH5()
    {
        var example = ReferenceCase.Of("gum", "gum-h5-zener");
        // In microvolts above 10 V, so that no digits are lost.
        double[] days = [.. example.Numbers("input", "day_mean_volt").Select(v => Math.Round((v - 10) * 1e6))];
        double[] within = example.Numbers("input", "day_sd_microvolt");
        double readings = example.Number("input", "readings_per_day");
        var mean = InputQuantity.FromReadings("V", Sample.Of(days));
        double betweenVariance = readings * mean.Stated * mean.Stated;
        double withinVariance = within.Average(s => s * s);

        Agree.Relative(example.Number("recomputed", "mean_volt_minus_10_uV"), mean.Value, Digits);
        Agree.Relative(example.Number("recomputed", "s_of_day_means_uV"), mean.Stated, Digits);
        Agree.Relative(example.Number("recomputed", "u_mean_uV"), mean.StandardUncertainty, Digits);
        Assert.Equal(example.Number("expected", "u_mean_uV"), mean.StandardUncertainty, 0.5);
        Assert.Equal(9, mean.DegreesOfFreedom);
        Agree.Relative(example.Number("recomputed", "s_a_uV"), Math.Sqrt(betweenVariance), Digits);
        Agree.Relative(example.Number("recomputed", "F"), betweenVariance / withinVariance, Digits);
        Agree.Relative(example.Number("recomputed", "F_0.95_9_40"), FisherF.Of(9, 40).UpperQuantile(0.05), Digits);
        Agree.Relative(example.Number("recomputed", "F_0.975_9_40"), FisherF.Of(9, 40).UpperQuantile(0.025), Digits);
    }

    private static double EndGauge(ReadOnlySpan<double> x) =>
        x[0] + (x[1] + x[2] + x[3]) - x[0] * (x[7] * (x[5] + x[6]) + x[4] * x[8]);

    private static InputQuantity[] EndGaugeInputs(ReferenceCase example)
    {
        double In(string quantity, string part) => example.Number("input", quantity, part);
        InputQuantity Plain(string name) =>
            InputQuantity.FromStandardUncertainty(name, In(name, "value"), In(name, "u"), In(name, "nu"));
        return
        [
            Plain("ls"),
            Plain("d_mean"),
            Plain("d_random"),
            Plain("d_systematic"),
            InputQuantity.FromRectangular("alpha_s", In("alpha_s", "value"), In("alpha_s", "rectangular_half_width")),
            InputQuantity.FromStandardUncertainty("theta_mean", In("theta_mean", "value"), In("theta_mean", "u")),
            InputQuantity.FromUShaped(
                "theta_cyclic",
                In("theta_cyclic", "value"),
                In("theta_cyclic", "arcsine_half_width")
            ),
            InputQuantity.FromRectangular(
                "d_alpha",
                In("d_alpha", "value"),
                In("d_alpha", "rectangular_half_width"),
                In("d_alpha", "nu")
            ),
            InputQuantity.FromRectangular(
                "d_theta",
                In("d_theta", "value"),
                In("d_theta", "rectangular_half_width"),
                In("d_theta", "nu")
            ),
        ];
    }
}
