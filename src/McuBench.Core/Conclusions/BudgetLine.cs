namespace McuBench.Core.Conclusions;

/// <summary>One component of a result's uncertainty and how much of the whole it makes up.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record BudgetLine
{
    internal BudgetLine(
        string component,
        EvaluationType evaluation,
        double relativeStandardUncertainty,
        double share,
        bool averagesDown,
        double degreesOfFreedom,
        BudgetKind kind,
        double? size
    )
    {
        Component = component;
        Evaluation = evaluation;
        RelativeStandardUncertainty = relativeStandardUncertainty;
        Share = share;
        AveragesDown = averagesDown;
        DegreesOfFreedom = degreesOfFreedom;
        Kind = kind;
        Size = size;
    }

    /// <summary>What it is, in words: "scatter of 10 trials, Marl 200", "timer tolerance, ticks".</summary>
    public string Component { get; }

    /// <summary>Whether it came from scatter or from what is known of the instrument.</summary>
    public EvaluationType Evaluation { get; }

    /// <summary>What it contributes to the result's standard uncertainty, as a share of the result's size; at least 0.</summary>
    public double RelativeStandardUncertainty { get; }

    /// <summary>Its share of the result's variance, from 0 to 1; the shares of a budget add up to 1.</summary>
    public double Share { get; }

    /// <summary>Whether more trials or readings would reduce it. Where this is false for the largest line, more of the
    /// same does not help: a better instrument or a longer run does.</summary>
    public bool AveragesDown { get; }

    /// <summary>The degrees of freedom of its standard uncertainty; positive infinity where that is known.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>What sort of thing it is, and so by what it would be lessened.</summary>
    public BudgetKind Kind { get; }

    /// <summary>The step of a timer in seconds or the last digit of a meter in amperes; absent for all else.</summary>
    internal double? Size { get; }
}
