namespace McuBench.Core.Conclusions;

/// <summary>One number of a finding's evidence.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record FindingFigure
{
    internal FindingFigure(string name, double value, string unit = "")
    {
        Name = name;
        Value = value;
        Unit = unit;
    }

    /// <summary>What it is: "slope per trial", "trials".</summary>
    public string Name { get; }

    /// <summary>Its value, in <see cref="Unit"/>; finite.</summary>
    public double Value { get; }

    /// <summary>Its SI unit; empty for pure numbers.</summary>
    public string Unit { get; }
}
