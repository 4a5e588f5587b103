using System.Globalization;
using System.Text.Json;
using McuBench.Core.Quantities;

namespace McuBench.Core.Tests.Quantities;

/// <summary>The figures of <c>si-units.json</c>, whose sources are in <c>SOURCES.md</c>.</summary>
public class SiFactsTests
{
    [Fact]
    public void Units_OfEveryKind_HaveThePrefixesOfTheBrochure()
    {
        var prefixes = Case("si-prefixes")
            .GetProperty("input")
            .GetProperty("name_symbol_power_of_ten")
            .EnumerateArray()
            .ToDictionary(
                row => row[1].GetString()!.Replace('\u00B5', 'u'),
                row => row[2].GetInt32(),
                StringComparer.Ordinal
            );
        prefixes[""] = 0;
        string[] stems = ["s", "Hz", "A", "V", "C", "J", "W", "K", "ohm"];
        var units = QuantityKind
            .All.Where(kind => kind != QuantityKind.Ratio)
            .SelectMany(kind => kind.PrefixedUnits)
            .ToArray();

        Assert.True(units.Length > 35);
        foreach (var unit in units)
        {
            var stem = stems.Single(stem => unit.Symbol.EndsWith(stem, StringComparison.Ordinal));

            Assert.Equal(prefixes[unit.Symbol[..^stem.Length]], unit.PowerOfTen);
            Assert.Equal(1, unit.Factor);
        }
    }

    [Theory]
    [InlineData("1 A s", "C")]
    [InlineData("1 mA h", "C")]
    [InlineData("1 uA h", "C")]
    [InlineData("1 A h", "C")]
    [InlineData("1 W h", "J")]
    [InlineData("1 mW h", "J")]
    [InlineData("1 kW h", "J")]
    [InlineData("1 W s", "J")]
    public void Parse_ChargesAndEnergies_AreTheFiguresOfTheTable(string from, string unit)
    {
        var expected = double.Parse(Conversion(from, unit), CultureInfo.InvariantCulture);

        Assert.Equal(
            expected,
            unit is "C" ? QuantityText.ParseCharge(from).Coulombs : QuantityText.ParseEnergy(from).Joules
        );
    }

    [Fact]
    public void Parse_ElementaryChargesInAMilliampereHour_AreTheFigureOfTheTable()
    {
        var elementary = Case("si-defining-constants").GetProperty("input").GetProperty("elementary_charge_C");

        Assert.Equal(
            double.Parse(Conversion("elementary charges in 1 mA h", "1"), CultureInfo.InvariantCulture),
            QuantityText.ParseCharge("1 mAh").Coulombs / elementary.GetDouble(),
            1e8
        );
    }

    private static string Conversion(string from, string unit)
    {
        var conversions = Case("si-electrical-conversions");
        var rows = conversions.GetProperty("input").GetProperty("conversions_from_and_unit");
        var index = rows.EnumerateArray()
            .Index()
            .Single(row => row.Item[0].ValueEquals(from) && row.Item[1].ValueEquals(unit))
            .Index;
        return conversions.GetProperty("expected").GetProperty("value")[index].GetString()!;
    }

    private static JsonElement Case(string id)
    {
        using var file = File.OpenRead(Path.Combine(AppContext.BaseDirectory, "reference", "si-units.json"));
        using var document = JsonDocument.Parse(file);
        return document
            .RootElement.GetProperty("cases")
            .EnumerateArray()
            .Single(candidate => candidate.GetProperty("id").ValueEquals(id))
            .Clone();
    }
}
