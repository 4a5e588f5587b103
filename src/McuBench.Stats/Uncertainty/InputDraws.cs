using McuBench.Stats.Resampling;

namespace McuBench.Stats.Uncertainty;

/// <summary>Draws all inputs of a model from their distributions. Safe to use from many threads.</summary>
internal sealed class InputDraws
{
    private readonly InputSet _set;
    private readonly bool[] _correlated;
    private readonly int[] _lastCorrelatedFirst;
    private readonly double[] _scales;

    internal InputDraws(InputSet set)
    {
        _set = set;
        _correlated = new bool[set.Count];
        foreach (var group in set.Groups.Where(group => group.Length > 1))
        {
            foreach (int i in group)
            {
                _correlated[i] = true;
                if (set.Inputs[i].Shape != InputShape.Normal)
                {
                    throw new ArgumentException(
                        $"Correlated inputs must be normal for Monte Carlo (infinite degrees of freedom, no limits); '{set.Inputs[i].Name}' is {set.Inputs[i].Shape}.",
                        "inputs"
                    );
                }
            }
        }

        // The last first, so that what the others still need is not yet overwritten.
        _lastCorrelatedFirst = [.. Enumerable.Range(0, set.Count).Where(i => _correlated[i]).Reverse()];
        _scales =
        [
            .. set.Inputs.Select(input =>
                input.Shape is InputShape.Normal or InputShape.StudentT ? input.StandardUncertainty : input.Stated
            ),
        ];
    }

    internal int Count => _set.Count;

    /// <summary>Fills in one value for each input.</summary>
    internal void Next(RandomStream random, Span<double> values)
    {
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = _set.Inputs[i].Shape switch
            {
                InputShape.Normal => random.Normal(),
                InputShape.StudentT => random.StudentT(_set.Inputs[i].DegreesOfFreedom),
                InputShape.Rectangular => (2 * random.Uniform()) - 1,
                InputShape.Triangular => random.StandardTriangular(),
                _ => random.StandardUShaped(),
            };
        }

        foreach (int i in _lastCorrelatedFirst)
        {
            // The factor's rows mix independent draws into correlated ones (gum-s1-2008, C.5); other columns hold 0.
            double mixed = 0;
            for (int k = 0; k <= i; k++)
            {
                mixed += _set.Factor[i, k] * values[k];
            }

            values[i] = mixed;
        }

        for (int i = 0; i < values.Length; i++)
        {
            values[i] = _set.Inputs[i].Value + (_scales[i] * values[i]);
        }
    }
}
