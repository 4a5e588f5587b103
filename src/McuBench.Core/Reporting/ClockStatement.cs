using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;

namespace McuBench.Core.Reporting;

/// <summary>Says in sentences what of a run follows the clock and what doesn't, and what that does to a comparison.</summary>
public static class ClockStatement
{
    /// <summary>Says a split: fixed time, cycles, and how far the claim goes.</summary>
    /// <param name="split">The split.</param>
    public static string Of(ClockSplit split)
    {
        ArgumentNullException.ThrowIfNull(split);
        var setups = Said.List(split.Points.Select(point => point.Summary.Setup.Name));
        var apparent = split.IsApparent ? "apparent fixed part" : "fixed part";
        var said = split.FixedPart switch
        {
            FixedPart.Present =>
                $"{split.Name} spends {Phrase.ValueAndInterval(split.FixedTime)} of each run of the {split.Workload.Name} on what does not follow the clock ({apparent}, from {setups})",
            FixedPart.Negative =>
                $"{split.Name} comes out with a negative {apparent} for the {split.Workload.Name}, {Phrase.ValueAndInterval(split.FixedTime)}, from {setups}: no part of a run can be that, so look for periodic interrupts, a biased timer, or a timer that follows the clock",
            _ =>
                $"{split.Name} shows no {apparent} that can be told from none for the {split.Workload.Name} ({Phrase.ValueAndInterval(split.FixedTime)}, from {setups})",
        };
        var why = split switch
        {
            { LackOfFit: null } =>
                $" Two clocks can't tell fixed time from wait states that are added at the higher clock, hence \"apparent\"{Alike(split)}.",
            { LackOfFit.IsRefuted: true } =>
                $" The run times do not lie on one line (lack of fit, {Said.PValue(split.LackOfFit.PValue)}), hence \"apparent\".",
            _ => string.Empty,
        };
        return $"{said}; the rest is {Phrase.ValueAndInterval(split.CyclesPerItem)} clock cycles per {split.Workload.ItemName}.{why}{BoundsOf(split)}";
    }

    private static string Alike(ClockSplit split) =>
        Si.Fraction(split.ExtraCyclesAlike.Value) > 0
            ? $": {Said.Percent(Si.Fraction(split.ExtraCyclesAlike.Value))} more cycles at {Said.Hertz(split.RangeRun.Highest)} than at {Said.Hertz(split.RangeRun.Lowest)} would look the same"
            : string.Empty;

    private static string BoundsOf(ClockSplit split) =>
        split.Bounds is { } bounds ? $" Single readings allow no interval, only bounds: {bounds}." : string.Empty;

    /// <summary>Says what taking the fixed time out does to a comparison of two setups.</summary>
    /// <param name="pair">The pair, as measured and with fixed time taken out.</param>
    public static string Of(ClockScaledPair pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        var scaling = ComparisonStatement.OfQuantity(pair.Gross, pair.Scaling);
        return pair.IsOrderReversed
            ? $"As measured, {ComparisonStatement.OfQuantity(pair.Gross, pair.Gross.RunTime)} Yet {scaling}"
            : scaling;
    }

    /// <summary>Says a line of current against clock.</summary>
    /// <param name="line">The line.</param>
    public static string Of(CurrentAgainstClock line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return $"{line.Name} draws {Phrase.ValueAndInterval(line.BaseCurrent)} plus {Phrase.ValueAndInterval(line.CurrentPerMegahertz)} per megahertz while running the {line.Workload.Name}, attachments in the first figure (from {Said.List(line.Summaries.Select(summary => summary.Setup.Name))}).";
    }
}
