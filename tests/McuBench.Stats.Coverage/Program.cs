using System.Globalization;
using McuBench.Stats.Coverage;

const string usage =
    "usage: dotnet run -c Release --project tests/McuBench.Stats.Coverage -- [--runs N] [--seed N] [--threads N] [--only PART] [--out FILE] [--readme FILE]";
var (runs, seed, threads, only) = (10_000, 2026UL, 2, "");
var (page, readme) = ("docs/stats-coverage.md", "src/McuBench.Stats/README.md");
for (var i = 0; i < args.Length; i += 2)
{
    var value = i + 1 < args.Length ? args[i + 1] : "";
    var isUnderstood = args[i] switch
    {
        "--runs" => int.TryParse(value, CultureInfo.InvariantCulture, out runs) && runs > 0,
        "--seed" => ulong.TryParse(value, CultureInfo.InvariantCulture, out seed),
        "--threads" => int.TryParse(value, CultureInfo.InvariantCulture, out threads) && threads > 0,
        "--only" => (only = value).Length > 0,
        "--out" => (page = value).Length > 0,
        "--readme" => (readme = value).Length > 0,
        _ => false,
    };
    if (!isUnderstood)
    {
        await Console.Error.WriteLineAsync(usage);
        return 2;
    }
}

// Part of the procedures goes to the screen, all of them into the files.
Procedure[] procedures = [.. Procedures.All.Where(p => p.Name.Contains(only, StringComparison.OrdinalIgnoreCase))];
var simulator = new Simulator(runs, seed, threads);
var cells = new List<CellResult>();
foreach (var population in Populations.All)
{
    foreach (var count in Simulator.Counts)
    {
        cells.AddRange(simulator.Run(procedures, population, count));
    }

    await Console.Error.WriteLineAsync(population.Name);
}

// In the order of the list, and populations side by side.
CellResult[] results = [.. procedures.SelectMany(p => cells.Where(c => c.Procedure == p).OrderBy(c => c.Count))];
var command = string.Create(
    CultureInfo.InvariantCulture,
    $"dotnet run -c Release --project tests/McuBench.Stats.Coverage -- --runs {runs} --seed {seed}"
);
if (only.Length > 0)
{
    CoveragePage.Write(Console.Out, command, runs, results);
}
else
{
    await using (var writer = new StreamWriter(page))
    {
        CoveragePage.Write(writer, command, runs, results);
    }

    MarkedPart.Replace(readme, CoverageSummary.Of(command, runs, results));
    Console.WriteLine($"written: {page}, {readme}");
}

CellResult[] misses = [.. results.Where(r => r.Misses)];
foreach (var miss in misses)
{
    Console.WriteLine(
        string.Create(
            CultureInfo.InvariantCulture,
            $"misses its promise: {miss.Procedure.Name}, {miss.Population.Name}, n = {miss.Count}: {100 * miss.Share:0.00} %"
        )
    );
}

return misses.Length == 0 ? 0 : 1;
