namespace McuBench.Stats.Regression;

/// <summary>A straight line through points that are uncertain in both directions. Made by <see cref="ErrorsInVariables"/>.</summary>
/// <param name="Slope">The slope, with its standard error and interval where they can be had.</param>
/// <param name="Intercept">The value at x = 0, likewise.</param>
/// <param name="ChiSquared">The weighted sum of squared distances of the points from the line, with n − 2 degrees of freedom;
/// null where no uncertainties were given.</param>
public sealed record ErrorsInVariablesFit(Estimate Slope, Estimate Intercept, double? ChiSquared);
