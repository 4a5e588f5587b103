using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>A result's figures as they are shown: value and ends under one prefix, rounded alike; the ends are absent
/// where there is no interval, and the value then shows four digits.</summary>
internal readonly record struct MeasuredText(string Value, string? Lower, string? Upper)
{
    private const int DigitsWithoutInterval = 4;

    public static MeasuredText Of<T>(Measured<T> result)
        where T : struct =>
        result switch
        {
            Measured<double> number => OfNumber(number, value => value, ""),
            Measured<Ratio> share => OfNumber(share, value => Si.Fraction(value) * 100, "%"),

            // What a board completes in a second is counted, not swung: no hertz, no prefix.
            Measured<Frequency> rate => OfNumber(rate, value => Si.Hertz(value), "/s"),
            Measured<Duration> time => OfQuantity(time),
            Measured<ElectricCurrent> current => OfQuantity(current),
            Measured<ElectricPotential> voltage => OfQuantity(voltage),
            Measured<ElectricCharge> charge => OfQuantity(charge),
            Measured<Energy> energy => OfQuantity(energy),
            Measured<Power> power => OfQuantity(power),
            _ => throw new NotSupportedException($"A result in {typeof(T).Name} has no text."),
        };

    /// <summary>A result's number in its SI unit.</summary>
    public static double Number<T>(T value)
        where T : struct =>
        value switch
        {
            double number => number,
            Ratio share => Si.Fraction(share),
            Frequency rate => Si.Hertz(rate),
            Duration time => Si.Seconds(time),
            ElectricCurrent current => Si.Amperes(current),
            ElectricPotential voltage => Si.Volts(voltage),
            ElectricCharge charge => Si.Coulombs(charge),
            Energy energy => Si.Joules(energy),
            Power power => Si.Watts(power),
            _ => throw new NotSupportedException($"A result in {typeof(T).Name} has no number."),
        };

    /// <summary>A confidence in percent: "95 %".</summary>
    public static string Percent(double share) => FormattableString.Invariant($"{(decimal)share * 100:0.####} %");

    private static MeasuredText OfQuantity<T>(Measured<T> result)
        where T : struct, IQuantity =>
        result is { Lower: { } lower, Upper: { } upper }
            ? Parts(QuantityDisplay.Interval(result.Value, lower, upper, TextForm.Plain))
            : new(QuantityDisplay.Rounded(result.Value, DigitsWithoutInterval, TextForm.Plain), null, null);

    private static MeasuredText OfNumber<T>(Measured<T> result, Func<T, double> plain, string unit)
        where T : struct =>
        result is { Lower: { } lower, Upper: { } upper }
            ? Parts(NumberDisplay.Interval(plain(result.Value), plain(lower), plain(upper), unit, TextForm.Plain))
            : new(NumberDisplay.Rounded(plain(result.Value), DigitsWithoutInterval, unit, TextForm.Plain), null, null);

    private static MeasuredText Parts((string Value, string Lower, string Upper) shown) =>
        new(shown.Value, shown.Lower, shown.Upper);
}
