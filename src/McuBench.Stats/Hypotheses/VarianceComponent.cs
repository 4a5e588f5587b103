namespace McuBench.Stats.Hypotheses;

/// <summary>How much of the variance one source contributes.</summary>
/// <param name="Source">The source, as in "factor 1" or "within".</param>
/// <param name="Variance">The variance that one draw of the source adds to a value: 0 or more, with its interval, in the
/// square of the data's unit. Where the mean squares ask for a negative one it is 0, and a note says so.</param>
/// <param name="MomentEstimate">What the mean squares ask for, below 0 at times: unbiased, so the one to average over
/// several studies.</param>
public sealed record VarianceComponent(string Source, Estimate Variance, double MomentEstimate)
{
    /// <summary>The standard deviation of the source, 0 or more, in the unit of the data.</summary>
    public double StandardDeviation => Math.Sqrt(Variance.Value);
}
