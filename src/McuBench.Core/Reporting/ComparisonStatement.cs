using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using UnitsNet;

namespace McuBench.Core.Reporting;

/// <summary>Says a comparison in sentences that can be quoted: who takes less, by how much of what, how sure, on what basis.</summary>
/// <remarks>
/// The one that takes less is always the subject, and every percentage names its base. Equality is only said where it
/// was shown; where nothing is shown, the sentence says so, with the smallest difference that the data could have shown.
/// </remarks>
public static class ComparisonStatement
{
    /// <summary>Says the comparison by run time, and what else the two setups differ in.</summary>
    /// <param name="comparison">The comparison.</param>
    public static string Of(SetupComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return Joined(OfQuantity(comparison, comparison.RunTime), Differences(comparison));
    }

    /// <summary>Says the comparison by one of its quantities, in one to three sentences.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="quantity">One of its quantities.</param>
    public static string OfQuantity(SetupComparison comparison, QuantityComparison quantity)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(quantity);
        return quantity.Verdict switch
        {
            Verdict.Different => Difference(comparison, quantity),
            Verdict.DifferentWithinMargin => Joined(
                Difference(comparison, quantity),
                $"The difference is real, yet within the stated margin of {Phrase.Percent(quantity.Margin!.Value)}."
            ),
            Verdict.EqualWithinMargin => Equality(comparison, quantity),
            Verdict.NotResolved => Unresolved(comparison, quantity),
            _ => NoVerdict(comparison, quantity),
        };
    }

    /// <summary>Lists all that the two setups differ in, or says that nothing else is known to differ.</summary>
    /// <param name="comparison">The comparison.</param>
    public static string Differences(SetupComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        if (comparison.Differences.Count == 0)
        {
            return "Nothing is noted in which the two setups differ.";
        }

        var differences = comparison.Differences.Select(d => $"{d.What} ({d.First}; {d.Second})");
        return $"The setups differ in {Said.List(differences)}.";
    }

    private static string Difference(SetupComparison comparison, QuantityComparison quantity)
    {
        var turned = quantity.Less == Side.Second;
        var measured = turned ? quantity.SavedBySecond : quantity.SavedByFirst;
        var (less, more) = turned ? (comparison.Second, comparison.First) : (comparison.First, comparison.Second);
        var saved = Phrase.Value(measured);
        var claim = quantity.Quantity switch
        {
            ComparedQuantity.RunTime => $"takes {saved} less time than {more.Setup.Name}",
            ComparedQuantity.CyclesPerItem =>
                $"needs {saved} fewer clock cycles per {comparison.Workload.ItemName} than {more.Setup.Name}",
            ComparedQuantity.ScalingCyclesPerItem =>
                $"needs {saved} fewer clock cycles per {comparison.Workload.ItemName} than {more.Setup.Name}, fixed time taken out,",
            ComparedQuantity.ScalingRunTime =>
                $"spends {saved} less time than {more.Setup.Name} in the part of the run that follows the clock",
            ComparedQuantity.ChargePerTask => $"costs {saved} less charge per task than {more.Setup.Name}",
            _ => $"costs {saved} less energy per task than {more.Setup.Name}",
        };
        var sentence =
            $"{less.Setup.Name} {claim} for the {comparison.Workload.Name} ({Phrase.IntervalOf(measured)}; {Basis(comparison, quantity)})";
        return quantity.Quantity == ComparedQuantity.RunTime
            ? $"{sentence}; that is {SpeedOf(comparison, turned)} times as fast."
            : sentence + ".";
    }

    private static string SpeedOf(SetupComparison comparison, bool turned) =>
        Phrase.Value(turned ? comparison.RunTime.Ratio : comparison.SpeedRatio);

    private static string Equality(SetupComparison comparison, QuantityComparison quantity) =>
        $"{comparison.First.Setup.Name} and {comparison.Second.Setup.Name} are equal in {Phrase.Noun(quantity.Quantity)} within the stated margin of {Phrase.Percent(quantity.Margin!.Value)} for the {comparison.Workload.Name} (ratio {Phrase.Value(quantity.Ratio)}, {Phrase.IntervalOf(quantity.Ratio)}; {Basis(comparison, quantity)}).";

    private static string Unresolved(SetupComparison comparison, QuantityComparison quantity)
    {
        var sentence =
            $"{comparison.First.Setup.Name} and {comparison.Second.Setup.Name} are not resolved in {Phrase.Noun(quantity.Quantity)} for the {comparison.Workload.Name}: the first's is {Phrase.Value(quantity.Ratio)} times the second's ({Phrase.IntervalOf(quantity.Ratio)}; {Basis(comparison, quantity)}), so neither a difference nor {Equal(quantity)} is shown.";
        return quantity.SmallestDetectableDifference is { } smallest
            ? Joined(
                sentence,
                $"Data like these show a difference of {Phrase.Percent(smallest)} or more in four of five studies."
            )
            : sentence;
    }

    private static string Equal(QuantityComparison quantity) =>
        quantity.Margin is { } margin ? $"equality within {Phrase.Percent(margin)}" : "equality";

    /// <summary>Why there is no verdict, as the second half of a sentence.</summary>
    internal static string Why(QuantityComparison quantity) =>
        quantity.Reason switch
        {
            NoVerdictReason.NoInterval => "a side has too few trials or readings for its scatter to be known",
            NoVerdictReason.OrderConfounded =>
                "trials of one were run before those of the other, so that a difference may be a drift of the bench",
            NoVerdictReason.SessionsConfounded =>
                "they were run in sessions of their own, so that a difference may be one between sessions",
            _ => "the timer takes its time from the clock that differs between them",
        };

    private static string NoVerdict(SetupComparison comparison, QuantityComparison quantity) =>
        $"{comparison.First.Setup.Name} and {comparison.Second.Setup.Name} get no verdict in {Phrase.Noun(quantity.Quantity)} for the {comparison.Workload.Name}: {Why(quantity)}. The first's is {Phrase.Value(quantity.Ratio)} times the second's.";

    /// <summary>What the claim rests on: trials, specimens, and how much of the board is in the figure.</summary>
    private static string Basis(SetupComparison comparison, QuantityComparison quantity)
    {
        var first = comparison.First.RunTime.Trials;
        var second = comparison.Second.RunTime.Trials;
        var trials =
            first == second ? $"{Said.Count(first, "trial")} each" : $"{first} and {Said.Count(second, "trial")}";
        var specimens = comparison.IsOfSpecimensOnly
            ? "this specimen of each"
            : $"{comparison.First.Specimens.Count} and {comparison.Second.Specimens.Count} specimens";
        var whole = quantity.Quantity switch
        {
            ComparedQuantity.ScalingRunTime or ComparedQuantity.ScalingCyclesPerItem => "fixed time taken out",
            ComparedQuantity.ChargePerTask or ComparedQuantity.EnergyPerTask => Included(
                "gross, whole board",
                comparison
            ),
            _ => Included("whole run", comparison),
        };
        return $"{trials}, {specimens}, {whole}";
    }

    private static string Included(string whole, SetupComparison comparison)
    {
        var included = comparison
            .First.Setup.Attachments.Concat(comparison.Second.Setup.Attachments)
            .Where(attachment => attachment.State != AttachmentState.Off)
            .Select(attachment => attachment.Name)
            .Distinct(StringComparer.Ordinal)
            .ToArray();
        return included.Length == 0 ? whole : $"{whole}, {Said.List(included)} included";
    }

    private static string Joined(string first, string second) => $"{first} {second}";
}
