using System.Globalization;

namespace McuBench.Benchmarks.Ratios;

/// <summary>Times everything here, in R and in Python, and writes the table into a README between its marks.</summary>
internal static class RatioCommand
{
    private const int Rounds = 3;
    private const string Begin = "<!-- ratios: begin -->";
    private const string End = "<!-- ratios: end -->";

    internal static async Task<int> Run(string[] args)
    {
        var (readme, only, python, r) = ("src/McuBench.Stats/README.md", "", "python3", "Rscript");
        for (int i = 0; i < args.Length; i += 2)
        {
            string value = i + 1 < args.Length ? args[i + 1] : "";
            bool isUnderstood = args[i] switch
            {
                "--readme" => (readme = value).Length > 0,
                "--only" => (only = value).Length > 0,
                "--python" => (python = value).Length > 0,
                "--r" => (r = value).Length > 0,
                _ => false,
            };
            if (!isUnderstood)
            {
                await Console.Error.WriteLineAsync(
                    "usage: … -- ratios [--readme FILE] [--only KEY] [--python PROGRAM] [--r PROGRAM]"
                );
                return 2;
            }
        }

        string folder = Directory.CreateTempSubdirectory("ratios-").FullName;
        try
        {
            var data = new RatioData();
            data.Write(folder);
            RatioTask[] tasks = [.. RatioTasks.Of(data).Where(t => t.Key.Contains(only, StringComparison.Ordinal))];
            IReadOnlyList<RatioRow> rows = await Time(tasks, folder, python, r);
            string table = RatioTable.Of(rows, DateOnly.FromDateTime(DateTime.Today));
            Console.WriteLine(table);
            if (only.Length == 0)
            {
                Replace(readme, table);
            }

            foreach (RatioRow row in rows.Where(row => row.Disagrees))
            {
                Console.WriteLine(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"sides disagree: {row.Task.Key}: here {string.Join(' ', row.Here.Values)}, R {Values(row.R)}, Python {Values(row.Python)}"
                    )
                );
            }

            return rows.Any(row => row.Disagrees) ? 1 : 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<IReadOnlyList<RatioRow>> Time(RatioTask[] tasks, string folder, string python, string r)
    {
        string scripts = Path.Combine(AppContext.BaseDirectory, "Ratios");
        using var sideR = new OtherSide("R", r, Path.Combine(scripts, "ratios.R"), folder);
        using var sidePython = new OtherSide("Python", python, Path.Combine(scripts, "ratios.py"), folder);
        var rows = new List<RatioRow>();
        foreach (RatioTask task in tasks)
        {
            Timing here = Timing.Of(task);
            Timing? inR = null;
            Timing? inPython = null;
            for (int round = 0; round < Rounds; round++)
            {
                inR = Timing.Shorter(inR, await sideR.Time(task));
                inPython = Timing.Shorter(inPython, await sidePython.Time(task));
                here = Timing.Shorter(here, Timing.Of(task))!;
            }

            rows.Add(new RatioRow(task, here, inR, inPython));
            await Console.Error.WriteLineAsync(task.Work);
        }

        return rows;
    }

    private static string Values(Timing? timing) =>
        timing is null ? "–" : string.Join(' ', timing.Values.Select(v => v.ToString(CultureInfo.InvariantCulture)));

    private static void Replace(string path, string table)
    {
        string all = File.ReadAllText(path);
        int begin = all.IndexOf(Begin, StringComparison.Ordinal);
        int end = all.IndexOf(End, StringComparison.Ordinal);
        if (begin < 0 || end < begin)
        {
            throw new InvalidDataException($"{path} must have the marks {Begin} and {End}.");
        }

        File.WriteAllText(path, $"{all[..(begin + Begin.Length)]}\n{table.Trim('\n')}\n{all[end..]}");
    }
}
