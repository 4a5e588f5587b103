namespace McuBench.Stats.Tests.Hypotheses;

/// <summary>What R, SciPy and statsmodels found for trend, order and effect sizes.</summary>
internal static class OrderReference
{
    public static TheoryData<string> Series => [.. ReferenceCase.Of("order-r", "lag_one_kept_adjusted").Names()];

    public static TheoryData<string> LongerSeries => [.. ReferenceCase.Of("order-r", "ljung_box_3_q_p").Names()];

    public static TheoryData<string> Pairs => [.. ReferenceCase.Of("order-r", "hedges_g_low_high_90").Names()];

    /// <summary>The values of a series, in order.</summary>
    internal static double[] Values(string name) =>
        name is "rising" or "mixed" or "steps" ? ReferenceCase.Of("trends", name).Numbers() : Datasets.Values(name);

    /// <summary>What both programs found, having asserted that they agree.</summary>
    internal static double[] Expected(string part, string name)
    {
        double[] r = ReferenceCase.Of("order-r", part).Numbers(name);
        Agree.Relative(r, ReferenceCase.Of("order-scipy", part).Numbers(name), 1e-11);
        return r;
    }
}
