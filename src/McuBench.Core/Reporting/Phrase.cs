using System.Globalization;
using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Reporting;

/// <summary>The figures and turns of phrase that every sentence and table is put together from.</summary>
internal static class Phrase
{
    /// <summary>A result's value, rounded as its interval allows.</summary>
    public static string Value<T>(Measured<T> result)
        where T : struct => MeasuredText.Of(result).Value;

    /// <summary>A result's interval in full: "95 % interval 17.1 % to 18.9 %", or that there is none.</summary>
    public static string IntervalOf<T>(Measured<T> result)
        where T : struct =>
        MeasuredText.Of(result) is { Lower: { } lower, Upper: { } upper }
            ? $"{Confidence(result.Confidence)} interval {lower} to {upper}"
            : "no interval";

    /// <summary>Value and interval: "2.40 s (95 % interval 2.34 s to 2.46 s)".</summary>
    public static string ValueAndInterval<T>(Measured<T> result)
        where T : struct => $"{Value(result)} ({IntervalOf(result)})";

    /// <summary>A table's cell: the value, and the ends of the interval, without their unit, in brackets behind it.</summary>
    public static ReportCell Cell<T>(Measured<T>? result)
        where T : struct =>
        result is null
            ? new ReportCell("not read")
            : new ReportCell(
                MeasuredText.Of(result) is { Lower: { } lower, Upper: { } upper } text
                    ? $"{text.Value} [{WithoutUnit(lower)}, {WithoutUnit(upper)}]"
                    : $"{Value(result)} [no interval]"
            )
            {
                Order = MeasuredText.Number(result.Value),
            };

    /// <summary>A cell of a value without its interval, which stands elsewhere.</summary>
    public static ReportCell ValueCell<T>(Measured<T> result)
        where T : struct => new(Value(result)) { Order = MeasuredText.Number(result.Value) };

    /// <summary>A cell of a count.</summary>
    public static ReportCell NumberCell(int number) => new(Number(number)) { Order = number };

    /// <summary>A cell of a quantity that is known without an interval.</summary>
    public static ReportCell QuantityCell<T>(T quantity)
        where T : struct, IQuantity =>
        new(QuantityText.Format(quantity, TextForm.Plain)) { Order = MeasuredText.Number(quantity) };

    /// <summary>A confidence as a percentage: "95 %".</summary>
    public static string Confidence(double confidence) => MeasuredText.Percent(confidence);

    /// <summary>A share as a percentage of two significant digits: "0.87 %", "12 %".</summary>
    public static string Percent(Ratio share) =>
        string.Create(CultureInfo.InvariantCulture, $"{TwoDigits(Si.Fraction(share) * 100)} %");

    /// <summary>A probability from a simulation, to whole percents: "83 %"; its ends are never claimed.</summary>
    public static string Chance(double probability) =>
        probability switch
        {
            < 0.005 => "< 1 %",
            > 0.995 => "> 99 %",
            _ => string.Create(CultureInfo.InvariantCulture, $"{probability * 100:0} %"),
        };

    public static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>How many work items a run completes: "1000 spectra" can't be known, so "1000 × spectrum".</summary>
    public static string Items(Workload workload) =>
        string.Create(CultureInfo.InvariantCulture, $"{workload.WorkItemsPerRun} × {workload.ItemName}");

    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    public static string Noun(ComparedQuantity quantity) =>
        quantity switch
        {
            ComparedQuantity.RunTime => "run time",
            ComparedQuantity.CyclesPerItem => "clock cycles per work item",
            ComparedQuantity.ScalingCyclesPerItem => "clock cycles per work item with fixed time taken out",
            ComparedQuantity.ScalingRunTime => "the part of the run that follows the clock",
            ComparedQuantity.ChargePerTask => "charge per task",
            _ => "energy per task",
        };

    public static string Word(Severity severity) =>
        severity switch
        {
            Severity.Fault => "fault",
            Severity.Caution => "caution",
            _ => "note",
        };

    /// <summary>What a board does in a phase, before the workload's name: "waiting in the echo spectrum".</summary>
    public static string Word(SupplyPhase phase) =>
        phase switch
        {
            SupplyPhase.Running => "running",
            SupplyPhase.Waiting => "waiting in",
            SupplyPhase.Computing => "computing",
            _ => "idle between runs of",
        };

    public static string Word(AttachmentState state) =>
        state switch
        {
            AttachmentState.Off => "off",
            AttachmentState.Idle => "idle",
            _ => "active",
        };

    public static string Word(TimerReading reading) =>
        reading switch
        {
            TimerReading.Rounded => "rounded to the step",
            TimerReading.Truncated => "cut to the step below",
            TimerReading.TickDifferenceRandomStart => "difference of two ticks, started anywhere",
            _ => "difference of two ticks, started on a tick",
        };

    /// <summary>A trial by its place in the order, or by what it read where the order isn't known.</summary>
    public static string Name(Trial trial) =>
        trial.Order is { } order
            ? string.Create(CultureInfo.InvariantCulture, $"#{order}")
            : $"the one of {QuantityText.Format(trial.RunTime)}";

    /// <summary>How a work item's name looks in the plural. Good for the regular nouns that workloads count.</summary>
    public static string Plural(string noun) =>
        noun.EndsWith('s')
        || noun.EndsWith('x')
        || noun.EndsWith("ch", StringComparison.Ordinal)
        || noun.EndsWith("sh", StringComparison.Ordinal)
            ? noun + "es"
            : noun + "s";

    private static string WithoutUnit(string figure) =>
        figure.IndexOf(' ', StringComparison.Ordinal) is var space and >= 0 ? figure[..space] : figure;

    private static decimal TwoDigits(double value)
    {
        if (value == 0)
        {
            return 0;
        }

        var places = Math.Clamp(1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 12);
        return Math.Round((decimal)value, places);
    }
}
