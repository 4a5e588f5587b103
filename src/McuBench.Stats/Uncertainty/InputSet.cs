using System.Collections.Immutable;
using System.Globalization;

namespace McuBench.Stats.Uncertainty;

/// <summary>Inputs with their correlations, checked: names that differ, correlations that can be true together.</summary>
internal sealed class InputSet
{
    // A pivot that exact arithmetic would make 0 comes out below this.
    private const double PivotTolerance = 1e-12;

    private readonly double[,] _correlation;

    internal InputSet(IReadOnlyList<InputQuantity> inputs, IReadOnlyList<Correlation>? correlations)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        if (inputs.Count == 0)
        {
            throw new ArgumentException("Count of inputs must be at least 1; was 0.", nameof(inputs));
        }

        Inputs = [.. inputs];
        _correlation = new double[Count, Count];
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int i = 0; i < Count; i++)
        {
            _correlation[i, i] = 1;
            if (!places.TryAdd(Inputs[i].Name, i))
            {
                throw new ArgumentException(
                    $"Names of the inputs must differ; '{Inputs[i].Name}' stands twice.",
                    nameof(inputs)
                );
            }
        }

        foreach (Correlation correlation in correlations ?? [])
        {
            int i = PlaceOf(places, correlation.First);
            int j = PlaceOf(places, correlation.Second);
            if (_correlation[i, j] != 0)
            {
                throw new ArgumentException(
                    $"Correlation of two inputs must be stated once; that of '{correlation.First}' and '{correlation.Second}' stands twice.",
                    nameof(correlations)
                );
            }

            _correlation[i, j] = _correlation[j, i] = correlation.Coefficient;
        }

        Factor = Factorise();
        Groups = Connected();
    }

    internal ImmutableArray<InputQuantity> Inputs { get; }

    internal int Count => Inputs.Length;

    /// <summary>The lower triangular factor of the correlation matrix (Cholesky).</summary>
    internal double[,] Factor { get; }

    /// <summary>The inputs by place, in groups that correlations hold together; most groups have one.</summary>
    internal ImmutableArray<ImmutableArray<int>> Groups { get; }

    internal double Correlation(int i, int j) => _correlation[i, j];

    private static int PlaceOf(Dictionary<string, int> places, string name) =>
        places.TryGetValue(name, out int place)
            ? place
            : throw new ArgumentException(
                $"Correlation must be of two of the inputs; none has the name '{name}'.",
                "correlations"
            );

    private double[,] Factorise()
    {
        var factor = new double[Count, Count];
        for (int j = 0; j < Count; j++)
        {
            for (int i = j; i < Count; i++)
            {
                double rest = _correlation[i, j];
                for (int k = 0; k < j; k++)
                {
                    rest -= factor[i, k] * factor[j, k];
                }

                if (i == j)
                {
                    RefuseNegative(rest, j);
                    factor[j, j] = rest > PivotTolerance ? Math.Sqrt(rest) : 0;
                }
                else if (factor[j, j] > 0)
                {
                    factor[i, j] = rest / factor[j, j];
                }
                else if (Math.Abs(rest) > Math.Sqrt(PivotTolerance))
                {
                    RefuseNegative(-1, i);
                }
            }
        }

        return factor;
    }

    private void RefuseNegative(double pivot, int place)
    {
        if (pivot < -PivotTolerance)
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Correlations must be such as can hold together (a positive semidefinite matrix); those of '{Inputs[place].Name}' with the inputs before it can't."
                ),
                "correlations"
            );
        }
    }

    private ImmutableArray<ImmutableArray<int>> Connected()
    {
        var groups = ImmutableArray.CreateBuilder<ImmutableArray<int>>();
        var seen = new bool[Count];
        for (int start = 0; start < Count; start++)
        {
            if (seen[start])
            {
                continue;
            }

            var group = new List<int> { start };
            seen[start] = true;
            for (int next = 0; next < group.Count; next++)
            {
                for (int j = 0; j < Count; j++)
                {
                    if (!seen[j] && _correlation[group[next], j] != 0)
                    {
                        seen[j] = true;
                        group.Add(j);
                    }
                }
            }

            groups.Add([.. group.Order()]);
        }

        return groups.ToImmutable();
    }
}
