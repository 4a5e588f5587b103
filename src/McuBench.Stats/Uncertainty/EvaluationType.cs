namespace McuBench.Stats.Uncertainty;

/// <summary>How a standard uncertainty was come by (gum-2008, 3.3.4).</summary>
public enum EvaluationType
{
    /// <summary>From the scatter of repeated readings.</summary>
    TypeA,

    /// <summary>From other knowledge: a certificate, limits, a resolution.</summary>
    TypeB,
}
