namespace McuBench.Stats.Uncertainty;

/// <summary>What makes the measured quantity out of its inputs, y = f(x₁, …, xₙ).</summary>
/// <param name="inputs">A value for each input, in the order in which the inputs were given.</param>
/// <returns>The value of the measured quantity.</returns>
/// <remarks>Must give the same value for the same inputs and touch nothing else: Monte Carlo calls it from several
/// threads at once.</remarks>
public delegate double MeasurementModel(ReadOnlySpan<double> inputs);
