namespace McuBench.Stats.Descriptive;

/// <summary>A location and a scale found together by iteration.</summary>
/// <param name="Location">The location, in the unit of the values.</param>
/// <param name="Scale">The scale, in the unit of the values; 0 where so many values are equal that it shrinks to nothing.</param>
/// <param name="Iterations">How many rounds it took.</param>
/// <param name="Converged">Whether the last round changed neither by more than 1E−14 of the scale.</param>
public sealed record LocationAndScale(double Location, double Scale, int Iterations, bool Converged);
