using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using UnitsNet;

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

    /// <summary>Says a best clock: where the charge is least, how sure, what it costs there, and which offered clocks can't
    /// be told from it.</summary>
    /// <param name="best">The best clock.</param>
    public static string Of(BestClock best)
    {
        ArgumentNullException.ThrowIfNull(best);
        var task = best.Repeated is { } repeated
            ? $"per period of {QuantityText.Format(repeated.Period)} with the {best.Split.Workload.Name}"
            : $"per task of the {best.Split.Workload.Name}";
        return $"{best.Split.Name} takes the least charge {task} {Where(best)}: {Phrase.ValueAndInterval(best.Charge)}. {OfOffered(best)}{OfEnergy(best)}{OfGround(best)}";
    }

    private static string Where(BestClock best)
    {
        var clock = ClockInterval.Shown(best.Clock);
        var interval = (best.Interval ?? best.Bounds)?.ToString() ?? "no interval";
        return best.Case switch
        {
            BestClockCase.Fastest =>
                $"at {clock}, the fastest clock, since nothing in it rises with the clock ({interval})",
            BestClockCase.Slowest =>
                $"at {clock}, the slowest clock that will do, since nothing in it falls ({interval})",
            BestClockCase.EitherEnd => $"at {clock}, one end of {best.Range} ({interval})",
            BestClockCase.Flat => $"at every clock of {best.Range} alike",
            _ when best.Balance is { } balance && Si.Hertz(balance) != Si.Hertz(best.Clock) =>
                $"at {clock}, the end of {best.Range} nearest to where what rises and what falls balance ({Balance(best, balance)}, {interval})",
            _ => $"at {clock} ({interval})",
        };
    }

    /// <summary>Where the balance is; a figure that lies far beyond every clock would only look precise.</summary>
    private static string Balance(BestClock best, Frequency balance) =>
        Si.Hertz(balance) <= FarBeyond * Si.Hertz(best.Range.Highest)
            ? ClockInterval.Shown(balance)
            : $"beyond {Said.Number(FarBeyond)} times the highest clock";

    private const double FarBeyond = 10;

    private static string OfOffered(BestClock best)
    {
        var least = best.BestOffered;
        var alike = best.NotToldFromBest.Where(p => p != least).Select(p => Said.Hertz(p.Clock)).ToArray();
        var told = alike.Length switch
        {
            0 => "the others take more",
            1 => $"{alike[0]} can't be told from it",
            _ => $"{Said.List(alike)} can't be told from it",
        };
        return $"Of the clocks offered, {Said.Hertz(least.Clock)} takes least; {told}.";
    }

    private static string OfEnergy(BestClock best) =>
        best.LeastEnergy is { } least && least != best.BestOffered
            ? $" The least energy, at the voltage of each clock, is at {Said.Hertz(least.Clock)}."
            : string.Empty;

    private static string OfGround(BestClock best) =>
        best.RestsOnEqualDraw
            ? " This rests on waiting and computing drawing alike, since currents weren't read by phase."
            : string.Empty;

    /// <summary>Says from which period on which of two setups takes less.</summary>
    /// <param name="crossover">The period at which they change places.</param>
    public static string Of(PeriodCrossover crossover)
    {
        ArgumentNullException.ThrowIfNull(crossover);
        return $"For the {crossover.First.Workload.Name}, repeated with idling in between: {crossover}.";
    }

    /// <summary>Says a comparison at clocks that are matched, by run time and, where best clocks were compared, by charge.</summary>
    /// <param name="comparison">The comparison.</param>
    public static string Of(ClockMatchedComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var (first, second) = (comparison.First.Name, comparison.Second.Name);
        var clocks =
            $"{first} at {ClockInterval.Shown(comparison.FirstClock)}, {second} at {ClockInterval.Shown(comparison.SecondClock)}";
        var at = comparison.Match switch
        {
            ClockMatch.EqualClock => $"Both at {ClockInterval.Shown(comparison.FirstClock)}",
            ClockMatch.Defaults => $"Each at its default clock ({clocks})",
            _ => $"Each at its best clock ({clocks})",
        };
        var time = Matched(comparison, comparison.RunTime);
        var charge = comparison.ChargePerTask is { } ofCharge
            ? $" {Phrase.Capital(Matched(comparison, ofCharge))}."
            : "";
        var foreign = comparison.IsFixedTimeForeign
            ? " Fixed time is taken out, since it was said not to be the boards'."
            : "";
        return $"{at}: {time}.{charge}{foreign}";
    }

    private static string Matched(ClockMatchedComparison comparison, QuantityComparison quantity)
    {
        var noun = Phrase.Noun(quantity.Quantity);
        var (first, second) = (comparison.First.Name, comparison.Second.Name);
        if (quantity.Less is { } less)
        {
            var saved = less == Side.First ? quantity.SavedByFirst : quantity.SavedBySecond;
            var (lesser, more) = less == Side.First ? (first, second) : (second, first);
            var within =
                quantity.Verdict == Verdict.DifferentWithinMargin
                    ? $", yet within the stated margin of {Phrase.Percent(quantity.Margin!.Value)}"
                    : "";
            return $"{noun} for the {comparison.First.Workload.Name} is {Phrase.Value(saved)} less on {lesser} than on {more} ({Phrase.IntervalOf(saved)}){within}";
        }

        var ratio =
            $"{first}'s is {Phrase.Value(quantity.Ratio)} times {second}'s, {Phrase.IntervalOf(quantity.Ratio)}";
        return quantity.Verdict switch
        {
            Verdict.EqualWithinMargin =>
                $"{noun} for the {comparison.First.Workload.Name} is equal within the stated margin of {Phrase.Percent(quantity.Margin!.Value)} ({ratio})",
            Verdict.NotResolved => $"{noun} for the {comparison.First.Workload.Name} is not resolved ({ratio})",
            _ => $"{noun} for the {comparison.First.Workload.Name} gets no verdict ({ratio})",
        };
    }

    /// <summary>Says a line of current against clock.</summary>
    /// <param name="line">The line.</param>
    public static string Of(CurrentAgainstClock line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return $"{line.Name} draws {Phrase.ValueAndInterval(line.BaseCurrent)} plus {Phrase.ValueAndInterval(line.CurrentPerMegahertz)} per megahertz while {Phrase.Word(line.Phase)} the {line.Workload.Name}, attachments in the first figure (from {Said.List(line.Summaries.Select(summary => summary.Setup.Name))}).";
    }
}
