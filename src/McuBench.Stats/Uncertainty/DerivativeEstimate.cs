namespace McuBench.Stats.Uncertainty;

/// <summary>A derivative found from differences, and about how far it may be off.</summary>
internal readonly record struct DerivativeEstimate(double Value, double Error);
