using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>Figures and lists as they stand in notes and findings, in the invariant culture.</summary>
internal static class Said
{
    public static string Seconds(double seconds) => QuantityText.Format(Si.Duration(Rounded(seconds)));

    public static string Hertz(Frequency frequency) => QuantityText.Format(frequency);

    public static string Amperes(double amperes) => QuantityText.Format(Si.Current(Rounded(amperes)));

    public static string Volts(double volts) => QuantityText.Format(Si.Voltage(Rounded(volts)));

    /// <summary>A share in percent, to three digits.</summary>
    public static string Percent(double share) => FormattableString.Invariant($"{Rounded(share * 100, 3):G6} %");

    public static string Number(double value, int digits = 3) =>
        FormattableString.Invariant($"{Rounded(value, digits):G6}");

    /// <summary>A large count to four digits: "39.2 million", "4870".</summary>
    public static string Count(double count) =>
        Math.Abs(count) >= 1e6
            ? FormattableString.Invariant($"{Rounded(count / 1e6)} million")
            : FormattableString.Invariant($"{Rounded(count)}");

    /// <summary>"p = 0.012", "p &lt; 0.0001".</summary>
    public static string PValue(double p) => p < 1e-4 ? "p < 0.0001" : $"p = {Number(p, 2)}";

    /// <summary>"1 trial", "5 trials".</summary>
    public static string Count(int count, string what) =>
        FormattableString.Invariant($"{count} {what}{(count == 1 ? "" : "s")}");

    /// <summary>"a, b and c".</summary>
    public static string List(IEnumerable<string> items) =>
        items.ToArray() switch
        {
            [] => "none",
            [var only] => only,
            [.. var first, var last] => $"{string.Join(", ", first)} and {last}",
        };

    /// <summary>"a, b and 3 more pairs" where there are more than so many.</summary>
    public static string Some(IReadOnlyCollection<string> items, int most, string more) =>
        List(items.Count > most ? items.Take(most).Append(Count(items.Count - most, more)) : items);

    /// <summary>Where the trials stand in the order: "trials 3, 7 and 8"; by their run times where no order was noted.</summary>
    public static string Trials(IReadOnlyList<Trials.Trial> trials)
    {
        const int most = 10;
        var named = trials
            .Take(most)
            .Select(t =>
                t.Order is { } order ? FormattableString.Invariant($"{order}") : QuantityText.Format(t.RunTime)
            )
            .ToList();
        if (trials.Count > most)
        {
            named.Add(FormattableString.Invariant($"{trials.Count - most} more"));
        }

        return $"{(trials.Count == 1 ? "trial" : "trials")} {List(named)}";
    }

    /// <summary>A number to so many significant digits.</summary>
    private static double Rounded(double value, int digits = 4)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return value;
        }

        // Through text: scaling by a power of ten would leave binary dust on the last digit.
        return double.Parse(
            value.ToString($"E{digits - 1}", System.Globalization.CultureInfo.InvariantCulture),
            System.Globalization.CultureInfo.InvariantCulture
        );
    }
}
