using System.Globalization;
using McuBench.Core.Conclusions;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Simulation;

/// <summary>Simulates splits by clock, and writes how often their intervals hold as a page of Markdown.</summary>
public static class ClockPage
{
    private const string Usage =
        "usage: dotnet run -c Release --project tests/McuBench.Simulation -- clock [--studies N] [--seed N] [--threads N] [--out FILE]";

    private const double Goal = 0.945;
    private const ulong StreamsPerScenario = 1UL << 32;

    /// <summary>Runs all scenarios and writes the page.</summary>
    /// <param name="args">What stands behind "clock" on the command line.</param>
    /// <returns>The exit code.</returns>
    public static async Task<int> RunAsync(string[] args)
    {
        ArgumentNullException.ThrowIfNull(args);
        var (studies, seed, threads, path) = (10_000, 2026UL, 2, "docs/coverage-clock.md");
        for (var i = 0; i < args.Length; i += 2)
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
                await Console.Error.WriteLineAsync(Usage).ConfigureAwait(false);
                return 2;
            }
        }

        var splits = ClockScenario.All.Select((s, number) => (s, Run(s, number, studies, seed, threads))).ToList();
        var best = BestClockScenario
            .All.Select((s, number) => (s, Run(s, ClockScenario.All.Count + number, studies, seed, threads)))
            .ToList();
        await using (var writer = new StreamWriter(path) { NewLine = "\n" })
        {
            Write(writer, studies, seed, splits);
            Write(writer, studies, best);
        }

        Console.WriteLine($"written: {path}");
        return 0;
    }

    private static Held Run(ClockScenario scenario, int number, int studies, ulong seed, int threads)
    {
        var outcomes = new Held[studies];
        Parallel.For(
            0,
            studies,
            new ParallelOptions { MaxDegreeOfParallelism = threads },
            i => outcomes[i] = Conclude(scenario, RandomStream.Of(seed, (ulong)number * StreamsPerScenario + (ulong)i))
        );
        return new Held(
            outcomes.Average(o => o.FixedTime),
            outcomes.Average(o => o.Cycles),
            outcomes.Average(o => o.Joint),
            outcomes.Average(o => o.Share),
            outcomes.Average(o => o.Predicted),
            outcomes.Average(o => o.Refuted)
        );
    }

    private static Held Conclude(ClockScenario scenario, RandomStream random)
    {
        var board = ClockedBoard.Draw(scenario, random);
        var split = board.Split();
        var (low, high) = (scenario.Megahertz[0] * 1e6, scenario.Megahertz[^1] * 1e6);
        var between = Math.Sqrt(low * high);
        var predicted = split.RunTimeAt(Frequency.FromHertz(between));
        var share = split.Points[^1].ScalingShare;
        return new Held(
            Within(split.FixedTime.Lower?.Seconds, board.FixedSeconds, split.FixedTime.Upper?.Seconds),
            Within(split.Cycles.Lower, board.Cycles, split.Cycles.Upper),
            split.Joint!.Contains(Duration.FromSeconds(board.FixedSeconds), board.Cycles) ? 1 : 0,
            Within(
                share.Lower?.DecimalFractions,
                board.Cycles / high / board.TrueSeconds(high),
                share.Upper?.DecimalFractions
            ),
            Within(predicted.Lower?.Seconds, board.TrueSeconds(between), predicted.Upper?.Seconds),
            split.LackOfFit is { IsRefuted: true } ? 1 : 0
        );
    }

    private static HeldBest Run(BestClockScenario scenario, int number, int studies, ulong seed, int threads)
    {
        var outcomes = new HeldBest[studies];
        Parallel.For(
            0,
            studies,
            new ParallelOptions { MaxDegreeOfParallelism = threads },
            i =>
                outcomes[i] = Conclude(
                    scenario,
                    RandomStream.Of(seed, (ulong)number * StreamsPerScenario + (ulong)i),
                    (ulong)i
                )
        );
        var bounded = outcomes.Where(o => double.IsFinite(o.Width)).Select(o => o.Width).Order().ToList();
        return new HeldBest(
            outcomes.Average(o => o.Held),
            outcomes.Average(o => o.Charge),
            outcomes.Average(o => o.Unbounded),
            bounded.Count > 0 ? bounded[bounded.Count / 2] : double.PositiveInfinity
        );
    }

    private static HeldBest Conclude(BestClockScenario scenario, RandomStream random, ulong seed)
    {
        var board = MeteredBoard.Draw(scenario, random);
        var best = BestClock.Of(board.Split, new BestClockOptions { Seed = seed, Draws = DrawsOfBest });
        var interval = best.Interval!;
        var upper = interval.Upper?.Hertz ?? double.PositiveInfinity;
        var middle = best.ChargeAt(Frequency.FromMegahertz(BetweenMegahertz));
        return new HeldBest(
            interval.Lower.Hertz <= board.BestHertz && board.BestHertz <= upper ? 1 : 0,
            Within(middle.Lower?.Coulombs, board.TrueCoulombs(BetweenMegahertz * 1e6), middle.Upper?.Coulombs),
            interval.Upper is null ? 1 : 0,
            (upper - interval.Lower.Hertz) / board.BestHertz
        );
    }

    private const int DrawsOfBest = 1_000;
    private const double BetweenMegahertz = 180;

    private static double Within(double? lower, double truth, double? upper) =>
        lower is { } from && upper is { } to
            ? from <= truth && truth <= to
                ? 1
                : 0
            : throw new InvalidOperationException("A simulated study came out without an interval.");

    private static void Write(
        TextWriter writer,
        int studies,
        ulong seed,
        IReadOnlyList<(ClockScenario Scenario, Held Held)> splits
    )
    {
        writer.WriteLine("# How often the split by clock holds");
        writer.WriteLine();
        writer.WriteLine(
            Text(
                $"Simulated studies of an invented board, {studies} in each row, split by the library itself at 95 % confidence. Made by"
            )
        );
        writer.WriteLine();
        writer.WriteLine("```sh");
        writer.WriteLine(
            Text(
                $"dotnet run -c Release --project tests/McuBench.Simulation -- clock --studies {studies} --seed {seed}"
            )
        );
        writer.WriteLine("```");
        writer.WriteLine();
        writer.WriteLine("## Fixed time and cycles");
        writer.WriteLine();
        writer.WriteLine(
            """
            t = fixed + N/f, with a fixed time drawn from 50 ms to 150 ms and 30 to 50 million cycles. Run times scatter normally
            by 0.5 % of themselves, or, where *even* is said, by 0.5 % of the shortest at every clock. *n*: trials a clock.
            *Step*: the rounding timer's step over the standard deviation at the highest clock. Then how often the interval held
            the truth for the fixed time, the cycles, both at once (the joint region), the share of the run that follows the highest
            clock, and the run time at the geometric middle of the range; and how often a line that holds was refuted (5 % is
            right). ✗: below 94.5 % by more than three simulation errors.
            """.ReplaceLineEndings("\n")
        );
        writer.WriteLine();
        writer.WriteLine("| clocks, MHz | n | step | fixed time | cycles | both | share | predicted | refuted |");
        writer.WriteLine("| --- | --: | --: | --: | --: | --: | --: | --: | --: |");
        foreach (var (scenario, held) in splits)
        {
            var clocks = string.Join(", ", scenario.Megahertz.Select(m => Text($"{m}")));
            var figures = new[] { held.FixedTime, held.Cycles, held.Joint, held.Share, held.Predicted };
            writer.WriteLine(
                string.Join(
                    " | ",
                    [
                        $"| {clocks}{(scenario.IsAbsolute ? ", even" : "")}",
                        Text($"{scenario.Trials}"),
                        Text($"{scenario.StepOverSpread}"),
                        .. figures.Select(share => Share(share, studies)),
                        (scenario.Megahertz.Count > 2 ? Text($"{100 * held.Refuted:0.#} %") : "–") + " |",
                    ]
                )
            );
        }
    }

    private static void Write(
        TextWriter writer,
        int studies,
        IReadOnlyList<(BestClockScenario Scenario, HeldBest Held)> best
    )
    {
        writer.WriteLine();
        writer.WriteLine("## Best clock");
        writer.WriteLine();
        writer.WriteLine(
            Text(
                    $"""
                    The clock of least charge per task of boards that wait 80 ms to 150 ms at 4 to 9 mA + 20 to 60 µA/MHz and compute 30 to
                    50 million cycles at 5 to 9 mA + 90 to 130 µA/MHz, by Monte Carlo with {DrawsOfBest} draws. Run times scatter by
                    0.2 %; *n*: trials a clock, and readings a clock and phase. *Scatter*: the readings' standard deviation.
                    *Accuracy*: the meter's, of reading, and a hundredth of that of its range. *Best clock*: how often its interval held
                    the truth; *charge*: the same for the charge per task at {BetweenMegahertz} MHz; *no upper end*: how often nothing bounded
                    it; *width*: the interval's median width over the true best clock, where it is bounded. Marks as above.
                    """
                )
                .ReplaceLineEndings("\n")
        );
        writer.WriteLine();
        writer.WriteLine(
            "| clocks, MHz | phases | n | scatter | accuracy | best clock | charge | no upper end | width |"
        );
        writer.WriteLine("| --- | --- | --: | --: | --: | --: | --: | --: | --: |");
        foreach (var (scenario, held) in best)
        {
            writer.WriteLine(
                string.Join(
                    " | ",
                    "| " + string.Join(", ", scenario.Megahertz.Select(m => Text($"{m}"))),
                    scenario.HasPhases ? "read" : "alike, not read",
                    Text($"{scenario.Trials}"),
                    Text($"{100 * scenario.CurrentSpread:0.#} %"),
                    Text($"{100 * scenario.Accuracy:0.#} %"),
                    Share(held.Held, studies),
                    Share(held.Charge, studies),
                    Text($"{100 * held.Unbounded:0.#} %"),
                    Text($"{held.Width:0.00} |")
                )
            );
        }
    }

    private static string Share(double share, int studies) =>
        Text($"{100 * share:0.0} %") + (share < Goal - 3 * Math.Sqrt(Goal * (1 - Goal) / studies) ? " ✗" : "");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private sealed record HeldBest(double Held, double Charge, double Unbounded, double Width);

    private sealed record Held(
        double FixedTime,
        double Cycles,
        double Joint,
        double Share,
        double Predicted,
        double Refuted
    );
}
