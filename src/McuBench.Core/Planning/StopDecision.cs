using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Planning;

/// <summary>What a look at the trials of one setup says: whether more are to be taken, and why.</summary>
/// <remarks>Immutable; equal when all properties are equal.</remarks>
public sealed record StopDecision
{
    internal StopDecision(StopOutlook outlook, int trials, Ratio wanted, int expectedTrials)
    {
        Outlook = outlook;
        Trials = trials;
        Wanted = wanted;
        ExpectedTrials = expectedTrials;
    }

    /// <summary>Whether more are to be taken.</summary>
    public StopOutlook Outlook { get; }

    /// <summary>Whether no more are to be taken.</summary>
    public bool IsDone => Outlook is StopOutlook.Enough or StopOutlook.AtMaximum or StopOutlook.OutOfReach;

    /// <summary>How many trials counted.</summary>
    public int Trials { get; }

    /// <summary>The wanted half-width of the run time's interval, as a share of the run time.</summary>
    public Ratio Wanted { get; }

    /// <summary>The half-width as it is, resolution and tolerance included, as a share of the run time; absent where no
    /// interval can be had yet.</summary>
    public Ratio? HalfWidth { get; internal init; }

    /// <summary>The part of the half-width that more trials don't reduce, as a share of the run time; absent before
    /// there is an interval.</summary>
    public Ratio? Fixed { get; internal init; }

    /// <summary>About how many trials will be needed in all if the scatter stays as seen.</summary>
    public int ExpectedTrials { get; }

    /// <summary>It in a sentence: <c>12 trials: ±1.8 %, and ±1 % is wanted; about 31 in all.</c></summary>
    public override string ToString()
    {
        var trials = Said.Count(Trials, "trial");
        var wanted = $"±{Said.Percent(Si.Fraction(Wanted))}";
        var so = HalfWidth is { } half ? $"±{Said.Percent(Si.Fraction(half))}" : "no interval yet";
        return Outlook switch
        {
            StopOutlook.GoOn => $"{trials}: {so}, and {wanted} is wanted; about {ExpectedTrials} in all.",
            StopOutlook.Confirm => $"{trials}: {wanted} was reached, and {ExpectedTrials - Trials} more confirm it.",
            StopOutlook.Enough => $"{trials}: {so}; {wanted} was wanted. Enough.",
            StopOutlook.AtMaximum => $"{trials}: {so}, and {wanted} was wanted; no more are allowed.",
            _ =>
                $"{trials}: {so}. No number of trials reaches {wanted}, since timer and tolerance alone leave ±{Said.Percent(Si.Fraction(Fixed!.Value))}: lengthen the run or take a finer timer.",
        };
    }
}
