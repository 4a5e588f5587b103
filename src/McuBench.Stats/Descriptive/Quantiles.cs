namespace McuBench.Stats.Descriptive;

/// <summary>Sample quantiles by any of the nine definitions in use (hyndman-fan-1996).</summary>
/// <remarks>
/// Results are in the unit of the values and never lie outside them; for one sample and definition they do not fall as
/// the probability rises. A product of count and probability that lies within 4 units in the last place of a whole
/// number is taken as that number, so that 7 % of 100 values is the 7th in spite of rounding.
/// </remarks>
public static class Quantiles
{
    /// <summary>The quantile of values. O(n) on average, with pooled scratch and no other allocation.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <param name="probability">The probability, from 0 to 1.</param>
    /// <param name="definition">Which of the nine quantiles is meant.</param>
    /// <exception cref="ArgumentException">There is no value.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, the probability lies outside [0, 1],
    /// or the definition is not one of the nine.</exception>
    public static double Of(
        ReadOnlySpan<double> values,
        double probability,
        QuantileDefinition definition = QuantileDefinition.HyndmanFan7
    )
    {
        Check.Finite(values);
        Check.Probability(probability);
        Check.Named(definition);
        var order = new SampledOrder(values);
        double quantile = Of(ref order, QuantilePosition.Of(values.Length, probability, definition));
        order.Return();
        return quantile;
    }

    /// <summary>The quantile of a sample. O(1) once the sample is sorted.</summary>
    /// <param name="sample">The sample.</param>
    /// <param name="probability">The probability, from 0 to 1.</param>
    /// <param name="definition">Which of the nine quantiles is meant.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sample"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The probability lies outside [0, 1], or the definition is not one
    /// of the nine.</exception>
    public static double Of(
        Sample sample,
        double probability,
        QuantileDefinition definition = QuantileDefinition.HyndmanFan7
    )
    {
        ArgumentNullException.ThrowIfNull(sample);
        Check.Probability(probability);
        Check.Named(definition);
        ReadOnlySpan<double> sorted = sample.Sorted;
        QuantilePosition position = QuantilePosition.Of(sorted.Length, probability, definition);
        double lower = sorted[position.Index];
        return position.Fraction == 0 ? lower : position.Between(lower, sorted[position.Index + 1]);
    }

    /// <summary>Several quantiles of values at once. O(n) on average for each, with pooled scratch and no other
    /// allocation.</summary>
    /// <param name="values">At least one value, each finite.</param>
    /// <param name="probabilities">The probabilities, each from 0 to 1, in any order.</param>
    /// <param name="results">Where the quantiles go, one for each probability in the same order.</param>
    /// <param name="definition">Which of the nine quantiles is meant.</param>
    /// <exception cref="ArgumentException">There is no value, or the results are not as many as the probabilities.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or infinite, a probability lies outside [0, 1],
    /// or the definition is not one of the nine.</exception>
    public static void Of(
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> probabilities,
        Span<double> results,
        QuantileDefinition definition = QuantileDefinition.HyndmanFan7
    )
    {
        Check.Finite(values);
        Check.Named(definition);
        if (results.Length != probabilities.Length)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Count of results must be {probabilities.Length}, one for each probability; was {results.Length}."
                ),
                nameof(results)
            );
        }

        foreach (double probability in probabilities)
        {
            Check.Probability(probability, nameof(probabilities));
        }

        var order = new SampledOrder(values);
        for (int i = 0; i < probabilities.Length; i++)
        {
            results[i] = Of(ref order, QuantilePosition.Of(values.Length, probabilities[i], definition));
        }

        order.Return();
    }

    private static double Of(ref SampledOrder order, QuantilePosition position)
    {
        (double at, double next) = order.Of(position.Index);
        return position.Between(at, next);
    }
}
