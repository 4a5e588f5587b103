namespace McuBench.Core.Conclusions;

/// <summary>A source of uncertainty, independent of every other: the scatter of one series, one oscillator, one meter's
/// gain in one range. Results that share a source are correlated through it.</summary>
/// <param name="Key">Tells sources apart: contributions with one key add up before they are squared.</param>
/// <param name="Component">What it is, in words.</param>
/// <param name="Evaluation">From scatter or from what is known of the instrument.</param>
/// <param name="DegreesOfFreedom">Of its standard uncertainty; positive infinity where that is known.</param>
/// <param name="AveragesDown">Whether more trials or readings would reduce it.</param>
internal sealed record Source(
    string Key,
    string Component,
    EvaluationType Evaluation,
    double DegreesOfFreedom,
    bool AveragesDown
)
{
    /// <summary>What sort of thing it is.</summary>
    public BudgetKind Kind { get; init; } = BudgetKind.Other;

    /// <summary>The step of a timer in seconds or the last digit of a meter in amperes; absent for all else.</summary>
    public double? Size { get; init; }

    /// <summary>Whether it is a limit within which any value is as likely as another (rectangular), its standard
    /// uncertainty then being a √3rd of it; normal otherwise.</summary>
    public bool IsLimit { get; init; }
}

/// <summary>What a source does to a value: a standard uncertainty in the value's unit, signed by the direction in which
/// the value moves when the source does.</summary>
internal readonly record struct Contribution(Source Source, double Amount);
