using McuBench.Stats;
using McuBench.Stats.Uncertainty;

namespace McuBench.Core.Conclusions;

/// <summary>Propagation of distributions for values that share sources: each source is drawn once, with its own degrees of
/// freedom, and moves every value that holds it (gum-s1-2008).</summary>
internal sealed class SourceDraws
{
    private readonly double[] centres;
    private readonly double[][] amounts;
    private readonly InputQuantity[] inputs;

    public SourceDraws(params IReadOnlyList<UncertainValue> values)
    {
        Source[] sources =
        [
            .. values
                .SelectMany(v => v.Contributions.Select(c => c.Source))
                .DistinctBy(s => s.Key, StringComparer.Ordinal)
                .OrderBy(s => s.Key, StringComparer.Ordinal),
        ];
        centres = [.. values.Select(v => v.Value)];
        amounts = [.. values.Select(v => AmountsOf(v, sources))];
        inputs = [.. sources.Select(s => InputQuantity.FromStandardUncertainty(s.Key, 0, 1, s.DegreesOfFreedom))];
        IsPossible = inputs.Length > 0 && values.All(v => v.Missing is null);
    }

    /// <summary>Whether there is anything to draw, and nothing unknown in it.</summary>
    public bool IsPossible { get; }

    /// <summary>The symmetric interval of what is computed of the values; null where all draws give the same.</summary>
    public Interval? Interval(MeasurementModel of, ulong seed, int draws, double confidence) =>
        MonteCarlo
            .Run(
                inputs,
                sources =>
                {
                    Span<double> values = stackalloc double[centres.Length];
                    Fill(values, sources);
                    return of(values);
                },
                options: new MonteCarloOptions
                {
                    Seed = seed,
                    Draws = draws,
                    Confidence = confidence,
                }
            )
            .Symmetric;

    private void Fill(Span<double> values, ReadOnlySpan<double> sources)
    {
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = centres[i];
            for (var k = 0; k < sources.Length; k++)
            {
                values[i] += amounts[i][k] * sources[k];
            }
        }
    }

    private static double[] AmountsOf(UncertainValue value, Source[] sources)
    {
        var own = value.Contributions.ToDictionary(c => c.Source.Key, c => c.Amount, StringComparer.Ordinal);
        return [.. sources.Select(s => own.GetValueOrDefault(s.Key))];
    }
}
