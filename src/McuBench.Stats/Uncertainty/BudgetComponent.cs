namespace McuBench.Stats.Uncertainty;

/// <summary>What one input contributes to the uncertainty of a result.</summary>
/// <remarks>Immutable; equal when all properties are equal. Made by <see cref="Propagation"/>.</remarks>
public sealed record BudgetComponent
{
    internal BudgetComponent(InputQuantity input, double sensitivity, double share)
    {
        Input = input;
        Sensitivity = sensitivity;
        Share = share;
    }

    /// <summary>The input.</summary>
    public InputQuantity Input { get; }

    /// <summary>The sensitivity coefficient ∂f/∂xᵢ: the change of the result for each unit of the input.</summary>
    public double Sensitivity { get; }

    /// <summary>|∂f/∂xᵢ| · u(xᵢ), in the unit of the result; 0 where the sensitivity is.</summary>
    public double Contribution => Math.Abs(Sensitivity) * Input.StandardUncertainty;

    /// <summary>The share of the first-order variance: cᵢuᵢ Σⱼ cⱼuⱼrᵢⱼ / u². Shares of a budget add up to 1; with
    /// correlations one may be below 0 or above 1. 0 for all where the first-order variance is 0.</summary>
    public double Share { get; }
}
