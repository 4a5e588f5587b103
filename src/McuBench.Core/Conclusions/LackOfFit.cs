namespace McuBench.Core.Conclusions;

/// <summary>A test of whether points at three or more clocks lie on a line within their own uncertainties.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record LackOfFit
{
    internal LackOfFit(double statistic, int pointsToSpare, double? denominatorDegreesOfFreedom, double pValue)
    {
        Statistic = statistic;
        PointsToSpare = pointsToSpare;
        DenominatorDegreesOfFreedom = denominatorDegreesOfFreedom;
        PValue = pValue;
    }

    /// <summary>The mean squared residual in units of the points' own uncertainty; near 1 where a line fits.</summary>
    public double Statistic { get; }

    /// <summary>The number of clocks less two: the numerator's degrees of freedom.</summary>
    public int PointsToSpare { get; }

    /// <summary>The degrees of freedom behind the points' uncertainties; null where these rest on instrument data alone.</summary>
    public double? DenominatorDegreesOfFreedom { get; }

    /// <summary>The probability of so large a misfit if the line holds.</summary>
    public double PValue { get; }

    /// <summary>Whether the line is refuted at the 5 % level.</summary>
    public bool IsRefuted => PValue < 0.05;
}
