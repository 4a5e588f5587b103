using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Between which clocks a best clock lies: without an upper end where what rises with the clock may be nothing.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record ClockInterval
{
    internal ClockInterval(double lower, double upper, double? confidence)
    {
        Lower = Si.Frequency(lower);
        Upper = double.IsFinite(upper) ? Si.Frequency(upper) : null;
        Confidence = confidence;
    }

    /// <summary>The lower end, in hertz; zero where what falls with the clock may be nothing.</summary>
    public Frequency Lower { get; }

    /// <summary>The upper end, in hertz; absent where nothing bounds it.</summary>
    public Frequency? Upper { get; }

    /// <summary>The confidence; absent where the ends are bounds from single readings and no interval.</summary>
    public double? Confidence { get; }

    /// <summary>What of it lies in a range; null where that is one end of the range or nothing.</summary>
    public ClockRange? Within(ClockRange range)
    {
        ArgumentNullException.ThrowIfNull(range);
        var lower = Math.Max(range.LowestHertz, Si.Hertz(Lower));
        var upper = Upper is { } end ? Math.Min(range.HighestHertz, Si.Hertz(end)) : range.HighestHertz;
        return lower < upper ? new ClockRange(Si.Frequency(lower), Si.Frequency(upper)) : null;
    }

    /// <summary>"95 % interval 210 MHz to 460 MHz"; "bounds 300 MHz and up".</summary>
    public override string ToString()
    {
        var what = Confidence is { } confidence ? $"{MeasuredText.Percent(confidence)} interval" : "bounds";
        var lower = Shown(Lower);
        return Upper is { } upper ? $"{what} {lower} to {Shown(upper)}" : $"{what} {lower} and up";
    }

    /// <summary>A clock to three digits.</summary>
    internal static string Shown(Frequency clock) => QuantityDisplay.Rounded(clock, 3, TextForm.Plain);
}
