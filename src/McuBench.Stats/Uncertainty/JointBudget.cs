using System.Collections.Immutable;

namespace McuBench.Stats.Uncertainty;

/// <summary>The budgets of several results of the same inputs, and how these results are correlated. Made by
/// <see cref="Propagation.Joint"/>.</summary>
/// <remarks>Immutable. Two are equal only when they are the same object.</remarks>
public sealed class JointBudget
{
    private readonly InputSet _set;

    internal JointBudget(InputSet set, ImmutableArray<UncertaintyBudget> budgets)
    {
        _set = set;
        Budgets = budgets;
    }

    /// <summary>The budget of each result, in the order of the models.</summary>
    public ImmutableArray<UncertaintyBudget> Budgets { get; }

    /// <summary>The covariance of two results (gum-2008, eq. H.9). O(n²).</summary>
    /// <param name="first">The place of one result.</param>
    /// <param name="second">The place of another, or the same, result.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no result at a place.</exception>
    public double Covariance(int first, int second) =>
        Propagation.Covariance(_set, Contributions(first, nameof(first)), Contributions(second, nameof(second)));

    /// <summary>The correlation of two results; null where the uncertainty of one is 0 to the first order.</summary>
    /// <param name="first">The place of one result.</param>
    /// <param name="second">The place of another, or the same, result.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no result at a place.</exception>
    public double? CorrelationOf(int first, int second)
    {
        double covariance = Covariance(first, second);
        double scale = Budgets[first].StandardUncertainty * Budgets[second].StandardUncertainty;
        return scale > 0 ? Math.Clamp(covariance / scale, -1, 1) : null;
    }

    private double[] Contributions(int place, string name)
    {
        if (place < 0 || place >= Budgets.Length)
        {
            throw new ArgumentOutOfRangeException(
                name,
                place,
                $"Place of a result must be 0 to {Budgets.Length - 1}; was {place}."
            );
        }

        return [.. Budgets[place].Components.Select(part => part.Sensitivity * part.Input.StandardUncertainty)];
    }
}
