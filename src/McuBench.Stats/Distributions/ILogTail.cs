namespace McuBench.Stats.Distributions;

/// <summary>The logarithm of a tail (or of another part of the distribution) as a function of a positive quantity.</summary>
internal interface ILogTail
{
    /// <summary>Where a tail that is too small for a double lies: 1 if below the quantile, −1 if above.</summary>
    int WayBack { get; }

    /// <summary>At a value: log of the tail over the tail that is looked for, its slope in the logarithm of the value,
    /// and the logarithmic slope of that slope.</summary>
    (double Error, double Slope, double Bend) At(double value);
}
