using System.Buffers;

namespace McuBench.Stats.Descriptive;

/// <summary>Sample quantiles by any of the nine definitions in use (hyndman-fan-1996).</summary>
/// <remarks>
/// Results are in the unit of the values and never lie outside them; for one sample and definition they do not fall as
/// the probability rises. A product of count and probability that lies within 4 units in the last place of a whole
/// number is taken as that number, so that 7 % of 100 values is the 7th in spite of rounding.
/// </remarks>
public static class Quantiles
{
    /// <summary>The quantile of values. O(n) on average, with a pooled copy of the values and no other allocation.</summary>
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
        QuantilePosition position = QuantilePosition.Of(values.Length, probability, definition);
        double[] scratch = ArrayPool<double>.Shared.Rent(values.Length);
        Span<double> copy = scratch.AsSpan(0, values.Length);
        values.CopyTo(copy);
        double lower = Selection.Nth(copy, position.Index);
        double upper = position.Fraction == 0 ? lower : Least(copy[(position.Index + 1)..]);
        ArrayPool<double>.Shared.Return(scratch);
        return position.Between(lower, upper);
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

    /// <summary>Several quantiles of values at once. O(n log k) on average for k probabilities, with a pooled copy of the
    /// values and no other allocation.</summary>
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

        int n = values.Length;
        int[] scratchRanks = ArrayPool<int>.Shared.Rent(probabilities.Length);
        Span<int> ranks = scratchRanks.AsSpan(0, probabilities.Length);
        for (int i = 0; i < probabilities.Length; i++)
        {
            Check.Probability(probabilities[i], nameof(probabilities));
            ranks[i] = QuantilePosition.Of(n, probabilities[i], definition).Index;
        }

        double[] scratch = ArrayPool<double>.Shared.Rent(n);
        Span<double> copy = scratch.AsSpan(0, n);
        values.CopyTo(copy);
        ranks.Sort();
        Selection.Many(copy, ranks);
        for (int i = 0; i < probabilities.Length; i++)
        {
            QuantilePosition position = QuantilePosition.Of(n, probabilities[i], definition);
            double lower = copy[position.Index];
            results[i] = position.Fraction == 0 ? lower : position.Between(lower, After(copy, position.Index, ranks));
        }

        ArrayPool<int>.Shared.Return(scratchRanks);
        ArrayPool<double>.Shared.Return(scratch);
    }

    /// <summary>The value of the rank after a selected one: the least up to the next selected one.</summary>
    private static double After(ReadOnlySpan<double> selected, int rank, ReadOnlySpan<int> ranks)
    {
        int last = selected.Length - 1;
        foreach (int other in ranks)
        {
            if (other > rank)
            {
                last = other;
                break;
            }
        }

        return Least(selected[(rank + 1)..(last + 1)]);
    }

    private static double Least(ReadOnlySpan<double> values)
    {
        double least = values[0];
        foreach (double value in values[1..])
        {
            least = Math.Min(least, value);
        }

        return least;
    }
}
