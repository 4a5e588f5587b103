namespace McuBench.Stats.Series;

/// <summary>The integral of a sampled series over time, and what is needed to judge it.</summary>
/// <remarks>
/// Immutable; equal when all properties are equal. Times are in one unit that the caller knows, and integrals in that unit
/// times the unit of the samples. A gap is where samples are missing, or the next one is too late: the integral leaves it
/// out, <see cref="Bridged"/> says what a straight line across it would add, and it can't be more than the length of the
/// gap times what the series could have been meanwhile.
/// </remarks>
public sealed record IntegralFigures
{
    internal IntegralFigures() { }

    /// <summary>The number of samples that are there.</summary>
    public required long Count { get; init; }

    /// <summary>The number of samples that are not finite, and so count as missing.</summary>
    public required long Missing { get; init; }

    /// <summary>The number of gaps between samples that are there.</summary>
    public required long Gaps { get; init; }

    /// <summary>The time from the first sample that is there to the last one, gaps included.</summary>
    public required double Span { get; init; }

    /// <summary>The part of <see cref="Span"/> that lies in gaps.</summary>
    public required double Uncovered { get; init; }

    /// <summary>The integral by the trapezoidal rule, gaps left out.</summary>
    public required double Trapezoid { get; init; }

    /// <summary>The integral where each sample holds until the next one, gaps left out.</summary>
    public required double Held { get; init; }

    /// <summary>What straight lines across all gaps would add.</summary>
    public required double Bridged { get; init; }

    /// <summary>The least sample.</summary>
    public required double Minimum { get; init; }

    /// <summary>The greatest sample.</summary>
    public required double Maximum { get; init; }

    /// <summary>
    /// The trapezoidal rule on all samples less that on every other one, over the same time: where the series is smooth,
    /// the error of the former is a third of this (davis-1984, section 2.9); where it jumps between samples, about as
    /// large as this. Null where there are gaps, or fewer than three samples.
    /// </summary>
    public required double? HalvingDifference { get; init; }

    /// <summary>The mean over the time that is covered, by the trapezoidal rule; null where no time is.</summary>
    public double? Mean => Span > Uncovered ? Trapezoid / (Span - Uncovered) : null;
}
