using System.Globalization;

namespace McuBench.Stats.Tests.Distributions;

/// <summary>
/// The table of the package's README, measured. To print it again:
/// <c>dotnet test --project tests/McuBench.Stats.Tests --filter-class '*DistributionAccuracyTests' --output Detailed
/// --show-live-output on</c>.
/// </summary>
public class DistributionAccuracyTests(ITestOutputHelper output)
{
    private const double Promise = 1e-12;

    // Another platform's exp, log and pow may round otherwise.
    private const double PlatformAllowance = 2;

    [Fact]
    public void Readme_TableOfAccuracy_HoldsForEveryReferenceValue()
    {
        var stated = StatedErrors();
        var measured = DistributionAccuracy.Measure();
        foreach (var (name, count, error, worst) in measured)
        {
            output.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"| {name} | {count} | {RoundedUp(error)} |  ({worst})")
            );
        }

        Assert.Equal(measured.Select(r => r.Name), stated.Select(r => r.Name), StringComparer.Ordinal);
        foreach (var (row, claim) in measured.Zip(stated))
        {
            Assert.Equal(row.Count, claim.Count);
            Assert.True(claim.Error <= Promise, $"{row.Name}: {claim.Error} is more than is promised");
            Assert.True(
                row.LargestError <= claim.Error * PlatformAllowance,
                $"{row.Name}: {row.LargestError} at {row.Worst}, stated {claim.Error}"
            );
        }
    }

    private static List<(string Name, int Count, double Error)> StatedErrors()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "McuBench.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("The solution was not found.");
        }

        return
        [
            .. File.ReadLines(Path.Combine(folder.FullName, "src", "McuBench.Stats", "README.md"))
                .SkipWhile(line => !line.StartsWith("## Accuracy of the distributions", StringComparison.Ordinal))
                .SkipWhile(line => !line.StartsWith("| ---", StringComparison.Ordinal))
                .Skip(1)
                .TakeWhile(line => line.StartsWith('|'))
                .Select(line => line.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
                .Select(cells =>
                    (
                        cells[0],
                        int.Parse(cells[1], CultureInfo.InvariantCulture),
                        double.Parse(cells[2], CultureInfo.InvariantCulture)
                    )
                ),
        ];
    }

    private static string RoundedUp(double error)
    {
        var unit = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(error, 1e-16))));
        return (Math.Ceiling(error / unit) * unit).ToString("0E-0", CultureInfo.InvariantCulture);
    }
}
