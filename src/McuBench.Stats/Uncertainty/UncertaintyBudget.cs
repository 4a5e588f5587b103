using System.Collections.Immutable;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Uncertainty;

/// <summary>A result with its combined standard uncertainty and what each input contributes to it. Made by
/// <see cref="Propagation"/>.</summary>
/// <remarks>
/// Immutable; equal when all properties are equal, components and notes one by one. All figures are in the unit of the
/// result. Where the first order says nothing (every sensitivity is 0) the standard uncertainty is 0, a note says so and
/// interval, coverage factor and expanded uncertainty are absent.
/// </remarks>
public sealed record UncertaintyBudget
{
    internal UncertaintyBudget(double value, double firstOrderVariance, ImmutableArray<BudgetComponent> components)
    {
        Value = value;
        FirstOrderVariance = firstOrderVariance;
        Components = components;
    }

    /// <summary>The result, f at the estimates of the inputs.</summary>
    public double Value { get; }

    /// <summary>The components, in the order of the inputs.</summary>
    public ImmutableArray<BudgetComponent> Components { get; }

    /// <summary>The variance by the first order, Σᵢ Σⱼ cᵢ cⱼ uᵢ uⱼ rᵢⱼ (gum-2008, eq. 16).</summary>
    public double FirstOrderVariance { get; }

    /// <summary>What the second order adds to the variance (gum-2008, 5.1.2, note); may be below 0. Null where it was not
    /// asked for.</summary>
    public double? SecondOrderVariance { get; internal init; }

    /// <summary>The combined standard uncertainty.</summary>
    public double StandardUncertainty => Math.Sqrt(FirstOrderVariance + (SecondOrderVariance ?? 0));

    /// <summary>The effective degrees of freedom, not rounded, possibly infinite; null where they can't be had, which a
    /// note explains.</summary>
    public double? DegreesOfFreedom { get; internal init; }

    /// <summary>What a reader has to know besides; empty where there is nothing.</summary>
    public ImmutableArray<string> Notes { get; internal init; } = [];

    /// <summary>The coverage factor: the two-sided quantile of Student's t at the effective degrees of freedom
    /// (gum-2008, G.3.2 and G.6.4); null without these.</summary>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <remarks>The guide lets one truncate the degrees of freedom to a whole number or interpolate; they are used as
    /// they are. To truncate, take <c>StudentT.Of(Math.Floor(…))</c>.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1).</exception>
    public double? CoverageFactor(double confidence = 0.95)
    {
        Check.Confidence(confidence);
        double tail = (1 - confidence) / 2;
        return DegreesOfFreedom switch
        {
            null => null,
            double.PositiveInfinity => Normal.Standard.UpperQuantile(tail),
            { } freedom => StudentT.Of(freedom).UpperQuantile(tail),
        };
    }

    /// <summary>The expanded uncertainty, coverage factor times standard uncertainty; null without a coverage
    /// factor.</summary>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1).</exception>
    public double? ExpandedUncertainty(double confidence = 0.95) => CoverageFactor(confidence) * StandardUncertainty;

    /// <summary>The coverage interval about the value; null where it can't be had.</summary>
    /// <param name="confidence">The confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence lies outside (0, 1).</exception>
    public Interval? IntervalAt(double confidence = 0.95) =>
        ExpandedUncertainty(confidence) is { } reach && reach > 0
            ? new Interval(Value - reach, Value + reach, confidence)
            : null;

    /// <summary>Whether all parts are equal, components and notes one by one.</summary>
    public bool Equals(UncertaintyBudget? other) =>
        other is not null
        && Value.Equals(other.Value)
        && FirstOrderVariance.Equals(other.FirstOrderVariance)
        && SecondOrderVariance.Equals(other.SecondOrderVariance)
        && DegreesOfFreedom.Equals(other.DegreesOfFreedom)
        && Components.SequenceEqual(other.Components)
        && Notes.SequenceEqual(other.Notes, StringComparer.Ordinal);

    /// <summary>A hash of the parts that tell budgets apart best.</summary>
    public override int GetHashCode() =>
        HashCode.Combine(Value, FirstOrderVariance, SecondOrderVariance, DegreesOfFreedom, Components.Length);
}
