namespace McuBench.Stats.Regression;

/// <summary>A test of a straight line against the scatter of repeated readings.</summary>
/// <param name="Statistic">F: the mean square of the groups' means about the line over that within the groups.</param>
/// <param name="LackOfFitDegreesOfFreedom">Different abscissas less 2.</param>
/// <param name="PureErrorDegreesOfFreedom">Points less different abscissas.</param>
/// <param name="PValue">The probability of such an F or a larger one if the line is right.</param>
/// <param name="PureErrorStandardDeviation">The standard deviation of repeated readings, in the unit of y.</param>
public sealed record LackOfFitResult(
    double Statistic,
    int LackOfFitDegreesOfFreedom,
    int PureErrorDegreesOfFreedom,
    double PValue,
    double PureErrorStandardDeviation
);
