namespace McuBench.Stats.Resampling;

/// <summary>How an interval is made of resamples.</summary>
public enum BootstrapMethod
{
    /// <summary>Bias-corrected and accelerated (efron-1987): quantiles of the resamples at probabilities that make up for
    /// median bias and for a spread that follows the value. Keeps to the range of the statistic and follows
    /// transformations.</summary>
    BiasCorrectedAccelerated,

    /// <summary>The quantiles of the resamples themselves. Follows transformations; too narrow for few values.</summary>
    Percentile,

    /// <summary>The quantiles of the resamples mirrored at the estimate (davison-hinkley-1997, 5.2).</summary>
    Basic,

    /// <summary>Quantiles of each resample's deviation over its own standard error (bootstrap t; davison-hinkley-1997,
    /// 5.2). Good coverage for means of skewed data, erratic where standard errors of resamples near 0.</summary>
    Studentized,
}
