namespace McuBench.Stats.Resampling;

/// <summary>What a bootstrap found.</summary>
/// <param name="Estimate">The statistic of the data, not corrected for bias; the standard error is the standard deviation
/// of the resamples; the interval is that of the options.</param>
/// <param name="Bias">The mean of the resamples less the estimate.</param>
/// <param name="Options">What was asked, the seed included.</param>
public sealed record BootstrapResult(Estimate Estimate, double Bias, BootstrapOptions Options);
