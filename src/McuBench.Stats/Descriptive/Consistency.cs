namespace McuBench.Stats.Descriptive;

/// <summary>By what a robust measure of scale is multiplied.</summary>
public enum Consistency
{
    /// <summary>By nothing: the raw order statistic.</summary>
    None,

    /// <summary>By the constant that makes it estimate the standard deviation of a normal population as the count
    /// grows.</summary>
    Normal,

    /// <summary>As <see cref="Normal"/>, and by a factor of the count that takes out the bias which small normal
    /// samples have.</summary>
    NormalSmallSample,
}
