using System.Globalization;
using McuBench.Simulation;

if (args is ["clock", .. var ofClock])
{
    return await ClockPage.RunAsync(ofClock).ConfigureAwait(false);
}

var isRanking = args is ["ranking", ..];
const string usage =
    "usage: dotnet run -c Release --project tests/McuBench.Simulation -- [ranking] [--studies N] [--seed N] [--threads N] [--out FILE]";
var (studies, seed, threads, path) = (2000, 2026UL, 2, isRanking ? "docs/coverage-ranking.md" : "docs/coverage.md");
for (var i = isRanking ? 1 : 0; i < args.Length; i += 2)
{
    var value = i + 1 < args.Length ? args[i + 1] : "";
    var isUnderstood = args[i] switch
    {
        "--studies" => int.TryParse(value, CultureInfo.InvariantCulture, out studies) && studies > 0,
        "--seed" => ulong.TryParse(value, CultureInfo.InvariantCulture, out seed),
        "--threads" => int.TryParse(value, CultureInfo.InvariantCulture, out threads) && threads > 0,
        "--out" => (path = value).Length > 0,
        _ => false,
    };
    if (!isUnderstood)
    {
        await Console.Error.WriteLineAsync(usage);
        return 2;
    }
}

if (isRanking)
{
    RankingTable.Write(path, studies, seed, threads);
    Console.WriteLine($"written: {path}");
    return 0;
}

var number = 0;
var groups = new List<(ScenarioGroup, IReadOnlyList<CellResult>)>();
foreach (var group in Scenarios.All)
{
    var results = new List<CellResult>();
    foreach (var scenario in group.Members)
    {
        results.Add(Simulator.Run(scenario, number++, studies, seed, threads));
    }

    groups.Add((group, results));
    Console.WriteLine($"{group.Heading}: {results.Count} scenarios");
}

var command = string.Create(
    CultureInfo.InvariantCulture,
    $"dotnet run -c Release --project tests/McuBench.Simulation -- --studies {studies} --seed {seed}"
);
await using (var writer = new StreamWriter(path))
{
    CoverageTable.Write(writer, command, groups);
}

Console.WriteLine($"written: {path}");
return 0;
