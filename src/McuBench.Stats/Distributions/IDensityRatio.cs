namespace McuBench.Stats.Distributions;

/// <summary>A log-concave density at a distance from a place, over the density at the place.</summary>
internal interface IDensityRatio
{
    /// <summary>How fast the logarithm falls at distance 0.</summary>
    double Fall { get; }

    /// <summary>How strongly the logarithm bends downwards at distance 0; above 0.</summary>
    double Curvature { get; }

    /// <summary>The distance at which the density ends; may be infinite.</summary>
    double Limit { get; }

    /// <summary>The logarithm of the ratio at a distance.</summary>
    double Log(double distance);
}
