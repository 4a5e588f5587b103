using System.Globalization;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Reporting;

/// <summary>A result as it is shown: value and ends under one prefix, rounded alike to the second significant digit of
/// half the interval's width.</summary>
internal sealed record Display
{
    private const string Prefixes = "pnµm kMGT";

    private Display(string unit) => Unit = unit;

    public required string Value { get; init; }

    public string? Lower { get; private init; }

    public string? Upper { get; private init; }

    /// <summary>Prefix and unit with the space before it, or nothing for a plain number.</summary>
    public string Unit { get; }

    public string WithoutUnit(string figure) => figure[..^Unit.Length];

    public static Display Of<T>(Measured<T> result)
        where T : struct
    {
        var (value, symbol) = Plain(result.Value);
        double? lower = result.Lower is { } low ? Plain(low).Value : null;
        double? upper = result.Upper is { } high ? Plain(high).Value : null;
        var (unit, exponent) = Scale(value, symbol);
        var decimals = Decimals(value, lower, upper, exponent);
        return new Display(unit)
        {
            Value = Shown(value) + unit,
            Lower = lower is { } l ? Shown(l) + unit : null,
            Upper = upper is { } u ? Shown(u) + unit : null,
        };

        string Shown(double si)
        {
            var text = Scaled(si, exponent)
                .ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

            // A value that rounds to nothing from below is nothing.
            return text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? text.TrimStart('-') : text;
        }
    }

    /// <summary>The SI value and its unit; "%" for shares, which take no prefix, and nothing for plain numbers.</summary>
    private static (double Value, string Symbol) Plain<T>(T quantity)
        where T : struct =>
        quantity switch
        {
            double number => (number, ""),
            Ratio share => (Si.Fraction(share), "%"),
            Duration time => (Si.Seconds(time), "s"),
            Frequency frequency => (Si.Hertz(frequency), "/s"),
            ElectricCurrent current => (Si.Amperes(current), "A"),
            ElectricPotential voltage => (Si.Volts(voltage), "V"),
            ElectricCharge charge => (Si.Coulombs(charge), "C"),
            Energy energy => (Si.Joules(energy), "J"),
            Power power => (Si.Watts(power), "W"),
            _ => throw new InvalidOperationException($"No way to show a {typeof(T).Name}."),
        };

    private static (string Unit, int Exponent) Scale(double value, string symbol)
    {
        if (symbol.Length == 0)
        {
            return ("", 0);
        }

        if (symbol == "%")
        {
            return (" %", -2);
        }

        // Work items per second read better as they are than as kilo-items.
        if (symbol == "/s" || value == 0)
        {
            return (" " + symbol, 0);
        }

        var thousands = Math.Clamp((int)Math.Floor(Math.Log10(Math.Abs(value)) / 3), -4, 4);
        var prefix = thousands == 0 ? "" : Prefixes[thousands + 4].ToString();
        return (" " + prefix + symbol, thousands * 3);
    }

    private static int Decimals(double value, double? lower, double? upper, int exponent)
    {
        var guide =
            lower is { } l && upper is { } u && double.IsFinite(u - l) && u > l
                ? (u - l) / 2
                // Without an interval nothing says how many digits hold: four are shown.
                : Math.Abs(value) / 100;
        if (guide == 0)
        {
            return 0;
        }

        return Math.Clamp(1 - (int)Math.Floor(Math.Log10(Scaled(guide, exponent))), 0, 9);
    }

    private static double Scaled(double si, int exponent) =>
        exponent >= 0 ? si / Math.Pow(10, exponent) : si * Math.Pow(10, -exponent);
}
