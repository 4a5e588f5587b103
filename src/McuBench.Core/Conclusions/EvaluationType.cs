namespace McuBench.Core.Conclusions;

/// <summary>How a component of uncertainty was evaluated (GUM 3.3.4).</summary>
public enum EvaluationType
{
    /// <summary>From the scatter of repeated readings.</summary>
    TypeA,

    /// <summary>From what is known of the instrument: resolution, tolerance, stated accuracy.</summary>
    TypeB,
}
