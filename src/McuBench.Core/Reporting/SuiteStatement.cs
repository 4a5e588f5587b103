using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>Says a comparison over several workloads in sentences that can be quoted.</summary>
public static class SuiteStatement
{
    /// <summary>Says who takes less over all workloads, from where to where the ratios go, and whether one workload
    /// decides. Claims are those that hold among all comparisons of the family.</summary>
    /// <param name="suite">The comparison.</param>
    public static string Of(SuiteComparison suite)
    {
        ArgumentNullException.ThrowIfNull(suite);
        var noun = Phrase.Noun(suite.Mean.Quantity);
        var over =
            $"Over {Said.Count(suite.Members.Count, "workload")} the ratio of {noun}, {suite.First.Name} to {suite.Second.Name}, is {Phrase.ValueAndInterval(suite.Mean.Ratio)}, as a geometric mean";
        var claim = suite.AdjustedVerdict switch
        {
            Verdict.Different or Verdict.DifferentWithinMargin =>
                $"{(suite.Mean.Ratio.Value < 1 ? suite.First.Name : suite.Second.Name)} takes less on average over these workloads",
            Verdict.EqualWithinMargin =>
                $"they are equal within the stated margin of {Phrase.Percent(suite.Mean.Margin!.Value)} on average over these workloads",
            Verdict.NotResolved => "this data does not tell them apart on average",
            _ => "there is no verdict",
        };
        var deciding = suite.Deciding.Select(w => w.Name).ToArray();
        var warning =
            deciding.Length == 0
                ? ""
                : $" Without {string.Join(", or without ", deciding)} the verdict on the mean would be another.";
        return $"{over}: {claim}. {Range(suite)}{warning}";
    }

    private static string Range(SuiteComparison suite)
    {
        var ordered = suite
            .Members.Select(m => (m.Workload.Name, Ratio: Of(m, suite.Mean.Quantity)))
            .OrderBy(m => m.Ratio.Value)
            .ToArray();
        return $"Single workloads go from {Phrase.Value(ordered[0].Ratio)} ({ordered[0].Name}) to {Phrase.Value(ordered[^1].Ratio)} ({ordered[^1].Name}).";
    }

    private static Measured<double> Of(SetupComparison comparison, ComparedQuantity quantity) =>
        quantity switch
        {
            ComparedQuantity.RunTime => comparison.RunTime.Ratio,
            ComparedQuantity.CyclesPerItem => comparison.CyclesPerItem.Ratio,
            ComparedQuantity.ChargePerTask => comparison.ChargePerTask!.Ratio,
            _ => comparison.EnergyPerTask!.Ratio,
        };
}
