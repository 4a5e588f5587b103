namespace McuBench.Stats.Hypotheses;

/// <summary>The outcome of von Neumann's test.</summary>
/// <param name="Ratio">The sum of squared differences of neighbours over that of squared deviations from the mean: 2 on average
/// in random order, below 2 where neighbours are alike, up to nearly 4 where values alternate.</param>
/// <param name="Z">The ratio less 2, in the standard deviations that independent normal values give; null for two values,
/// whose ratio is always 2.</param>
/// <param name="PValue">The probability, for independent normal values, of a ratio at least as far out.</param>
/// <param name="Count">The number of values.</param>
/// <param name="Alternative">Which departures counted: less for neighbours alike, greater for values that alternate.</param>
public sealed record VonNeumannResult(double Ratio, double? Z, double PValue, int Count, Alternative Alternative);
