using System.Globalization;
using System.Text.Json;

namespace McuBench.Stats.Tests.Distributions;

/// <summary>Reads the reference values of the distributions.</summary>
internal static class DistributionReference
{
    /// <summary>The array under a key of a reference file.</summary>
    internal static JsonElement[] Cases(string file, string key) => [.. Table(file, key).EnumerateArray()];

    /// <summary>What stands under a key of a reference file.</summary>
    internal static JsonElement Table(string file, string key)
    {
        using var document = JsonDocument.Parse(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reference", file))
        );
        return document.RootElement.GetProperty(key).Clone();
    }

    /// <summary>A number, whether written as a JSON number or as a string with more digits.</summary>
    internal static double Number(this JsonElement element, string name)
    {
        var value = element.GetProperty(name);
        return value.ValueKind == JsonValueKind.String
            ? double.Parse(value.GetString()!, CultureInfo.InvariantCulture)
            : value.GetDouble();
    }

    /// <summary>Fails unless two numbers agree to a relative tolerance.</summary>
    internal static void AssertClose(double expected, double actual, double tolerance, string what)
    {
        var error = expected == actual ? 0 : Math.Abs((actual / expected) - 1);
        Assert.True(
            error <= tolerance,
            string.Create(
                CultureInfo.InvariantCulture,
                $"{what}: expected {expected:R}, was {actual:R}, relative error {error:E1}, allowed {tolerance:E1}"
            )
        );
    }
}
