using System.Collections.Immutable;
using System.Globalization;

namespace McuBench.Stats.Uncertainty;

/// <summary>Uncertainty of a result from those of its inputs by the derivatives of the model (gum-2008, 5.1 and
/// 5.2).</summary>
/// <remarks>
/// Derivatives are found from central differences that start at one standard uncertainty (or at 1/1024 of the value where
/// that is larger) and are extrapolated to a step of 0 (ridders-1982). Where the model bends much within the
/// uncertainties, the first order misleads: ask for the second, or compare with <see cref="MonteCarlo"/>.
/// </remarks>
public static class Propagation
{
    // A sensitivity this uncertain moves the second digit of the combined uncertainty.
    private const double DerivativeErrorWorthANote = 0.01;

    /// <summary>First order, the sensitivities found numerically. O(n) evaluations of the model, some 20 for each input,
    /// and O(n²) steps.</summary>
    /// <param name="inputs">The inputs, one or more, of different names.</param>
    /// <param name="model">The model.</param>
    /// <param name="correlations">The correlations that are not 0; null for independent inputs.</param>
    /// <exception cref="ArgumentException">Names repeat or are unknown, correlations can't hold together, or the model is
    /// not finite at or about the estimates.</exception>
    public static UncertaintyBudget FirstOrder(
        IReadOnlyList<InputQuantity> inputs,
        MeasurementModel model,
        IReadOnlyList<Correlation>? correlations = null
    )
    {
        ArgumentNullException.ThrowIfNull(model);
        var set = new InputSet(inputs, correlations);
        return Numeric(set, new ModelDerivatives(model, set));
    }

    /// <summary>First order with sensitivities that the caller knows. O(n²).</summary>
    /// <param name="inputs">The inputs, one or more, of different names.</param>
    /// <param name="value">The result, finite.</param>
    /// <param name="sensitivities">∂f/∂xᵢ at the estimates, finite, one for each input.</param>
    /// <param name="correlations">The correlations that are not 0; null for independent inputs.</param>
    /// <exception cref="ArgumentException">Names repeat or are unknown, correlations can't hold together, or the
    /// sensitivities are not one for each input.</exception>
    public static UncertaintyBudget WithSensitivities(
        IReadOnlyList<InputQuantity> inputs,
        double value,
        ReadOnlySpan<double> sensitivities,
        IReadOnlyList<Correlation>? correlations = null
    )
    {
        Check.Finite(value, "Result", nameof(value));
        Check.Finite(sensitivities);
        var set = new InputSet(inputs, correlations);
        Check.SameCount(sensitivities.Length, set.Count, "Count of sensitivities", "input", nameof(sensitivities));
        return Combine(set, value, sensitivities, []);
    }

    /// <summary>First and second order for independent inputs (gum-2008, 5.1.2, note), all derivatives found numerically.
    /// O(n²) evaluations of the model, some 120 for each pair.</summary>
    /// <param name="inputs">The inputs, one or more, of different names; taken as independent.</param>
    /// <param name="model">The model.</param>
    /// <remarks>The terms are exact for normal inputs and a model of second degree. Degrees of freedom are those of the
    /// first order.</remarks>
    /// <exception cref="ArgumentException">Names repeat, the model is not finite about the estimates, or the terms of the
    /// second order outweigh those of the first with the opposite sign: then only <see cref="MonteCarlo"/> helps.</exception>
    public static UncertaintyBudget SecondOrder(IReadOnlyList<InputQuantity> inputs, MeasurementModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var set = new InputSet(inputs, null);
        var derivatives = new ModelDerivatives(model, set);
        UncertaintyBudget first = Numeric(set, derivatives);
        double second = SecondOrderTerms(set, derivatives, first);
        if (first.FirstOrderVariance + second < 0)
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Second-order variance must not outweigh the first-order {first.FirstOrderVariance}; was {second}: use Monte Carlo."
                ),
                nameof(model)
            );
        }

        bool knownWell = set.Inputs.All(input => double.IsPositiveInfinity(input.DegreesOfFreedom));
        return new UncertaintyBudget(first.Value, first.FirstOrderVariance, first.Components)
        {
            SecondOrderVariance = second,
            DegreesOfFreedom = knownWell ? double.PositiveInfinity : first.DegreesOfFreedom,
            Notes = knownWell && first.FirstOrderVariance == 0 ? [] : first.Notes,
        };
    }

    /// <summary>First order for several results of the same inputs, with the correlations of the results (gum-2008,
    /// H.2.3).</summary>
    /// <param name="inputs">The inputs, one or more, of different names.</param>
    /// <param name="models">The models, one for each result.</param>
    /// <param name="correlations">The correlations that are not 0; null for independent inputs.</param>
    /// <exception cref="ArgumentException">As for <see cref="FirstOrder"/>, or there is no model.</exception>
    public static JointBudget Joint(
        IReadOnlyList<InputQuantity> inputs,
        IReadOnlyList<MeasurementModel> models,
        IReadOnlyList<Correlation>? correlations = null
    )
    {
        ArgumentNullException.ThrowIfNull(models);
        if (models.Count == 0)
        {
            throw new ArgumentException("Count of models must be at least 1; was 0.", nameof(models));
        }

        var set = new InputSet(inputs, correlations);
        return new JointBudget(set, [.. models.Select(model => Numeric(set, new ModelDerivatives(model, set)))]);
    }

    /// <summary>Σᵢ Σⱼ aᵢ bⱼ rᵢⱼ.</summary>
    internal static double Covariance(InputSet set, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = new CompensatedSum();
        for (int i = 0; i < set.Count; i++)
        {
            for (int j = 0; j < set.Count; j++)
            {
                sum.Add(a[i] * b[j] * set.Correlation(i, j));
            }
        }

        return sum.Value;
    }

    private static UncertaintyBudget Numeric(InputSet set, ModelDerivatives derivatives)
    {
        DerivativeEstimate[] found = [.. Enumerable.Range(0, set.Count).Select(derivatives.First)];
        double[] sensitivities = [.. found.Select(derivative => derivative.Value)];
        UncertaintyBudget budget = Combine(set, derivatives.ValueAtEstimates, sensitivities, []);
        ImmutableArray<string> doubts =
        [
            .. set
                .Inputs.Zip(found)
                .Where(pair =>
                    pair.Second.Error * pair.First.StandardUncertainty
                    > DerivativeErrorWorthANote * budget.StandardUncertainty
                )
                .Select(pair =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The sensitivity to '{pair.First.Name}' was found to within {pair.Second.Error:G2} only: the model is not smooth there."
                    )
                ),
        ];
        // Where all sensitivities vanish their rounding errors are all there is, and the note on that says enough.
        return budget.FirstOrderVariance == 0 || doubts.IsEmpty
            ? budget
            : Combine(set, derivatives.ValueAtEstimates, sensitivities, doubts);
    }

    private static UncertaintyBudget Combine(
        InputSet set,
        double value,
        ReadOnlySpan<double> sensitivities,
        ImmutableArray<string> notes
    )
    {
        double[] contributions = new double[set.Count];
        for (int i = 0; i < set.Count; i++)
        {
            contributions[i] = sensitivities[i] * set.Inputs[i].StandardUncertainty;
        }

        // Rounding may leave full correlations that cancel just below 0.
        double variance = Math.Max(0, Covariance(set, contributions, contributions));
        Check.Representable(variance, "Variance of the result", "inputs");
        double? freedom = variance > 0 ? EffectiveFreedom.Of(set, contributions, variance) : null;
        if (variance == 0)
        {
            notes =
            [
                .. notes,
                "To the first order the inputs' uncertainties leave the result unmoved: take the second order or Monte Carlo.",
            ];
        }
        else if (freedom is null)
        {
            notes =
            [
                .. notes,
                "Correlated inputs of different degrees of freedom: none can be had for the result, and no coverage factor.",
            ];
        }

        return new UncertaintyBudget(value, variance, Components(set, sensitivities, contributions, variance))
        {
            DegreesOfFreedom = freedom,
            Notes = notes,
        };
    }

    private static ImmutableArray<BudgetComponent> Components(
        InputSet set,
        ReadOnlySpan<double> sensitivities,
        double[] contributions,
        double variance
    )
    {
        var components = ImmutableArray.CreateBuilder<BudgetComponent>(set.Count);
        for (int i = 0; i < set.Count; i++)
        {
            double part = 0;
            for (int j = 0; j < set.Count; j++)
            {
                part += contributions[i] * contributions[j] * set.Correlation(i, j);
            }

            components.Add(new BudgetComponent(set.Inputs[i], sensitivities[i], variance > 0 ? part / variance : 0));
        }

        return components.MoveToImmutable();
    }

    private static double SecondOrderTerms(InputSet set, ModelDerivatives derivatives, UncertaintyBudget first)
    {
        var sum = new CompensatedSum();
        for (int i = 0; i < set.Count; i++)
        {
            double u = set.Inputs[i].StandardUncertainty;
            for (int j = 0; j < set.Count; j++)
            {
                double v = set.Inputs[j].StandardUncertainty;
                double bend = derivatives.Second(i, j).Value * u * v;
                sum.Add(0.5 * bend * bend);
                if (first.Components[i].Sensitivity != 0)
                {
                    sum.Add(first.Components[i].Sensitivity * u * (derivatives.Third(i, j).Value * u * v * v));
                }
            }
        }

        return sum.Value;
    }
}
