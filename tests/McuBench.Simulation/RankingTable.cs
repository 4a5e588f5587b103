using static System.FormattableString;

namespace McuBench.Simulation;

/// <summary>Runs the scenarios of several boards and writes what they came to.</summary>
public static class RankingTable
{
    /// <summary>The share of studies with a false claim that adjustment is to keep to.</summary>
    private const double Goal = 0.05;

    private static readonly RankingScenario[] Scenarios =
    [
        new() { Boards = 3, Trials = 3 },
        new() { Boards = 3, Trials = 10 },
        new() { Boards = 5, Trials = 3 },
        new() { Boards = 5, Trials = 5 },
        new() { Boards = 5, Trials = 10 },
        new() { Boards = 5, Trials = 30 },
        new() { Boards = 8, Trials = 5 },
        new()
        {
            Boards = 5,
            Trials = 5,
            StepOverSpread = 1,
        },
        new()
        {
            Boards = 5,
            Trials = 10,
            StepOverSpread = 3,
        },
        new()
        {
            Boards = 5,
            Trials = 5,
            Workloads = 3,
        },
        new()
        {
            Boards = 6,
            Trials = 5,
            Apart = 2,
        },
        new()
        {
            Boards = 6,
            Trials = 10,
            Apart = 2,
        },
        new()
        {
            Boards = 5,
            Trials = 10,
            Margin = 2,
        },
        new()
        {
            Boards = 6,
            Trials = 10,
            Apart = 2,
            Margin = 2,
        },
        new()
        {
            Boards = 5,
            Trials = 5,
            Drawn = 2,
        },
        new()
        {
            Boards = 5,
            Trials = 10,
            Drawn = 2,
        },
    ];

    /// <summary>Runs all scenarios and writes the page.</summary>
    /// <param name="path">Where to.</param>
    /// <param name="studies">Studies a scenario.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="threads">How many at a time.</param>
    public static void Write(string path, int studies, ulong seed, int threads)
    {
        var results = new List<RankingResult>();
        for (var i = 0; i < Scenarios.Length; i++)
        {
            results.Add(RankingSimulator.Run(Scenarios[i], i, studies, seed, threads));
            Console.WriteLine(Invariant($"{i + 1} of {Scenarios.Length}"));
        }

        var allowed = Goal + 3 * Math.Sqrt(Goal * (1 - Goal) / studies);
        var missed = results.Where(r => r.FalseAdjusted > allowed).ToArray();
        using var page = new StreamWriter(path);
        page.Write(
            Invariant(
                $"""
            # How often a study of many boards makes a false claim

            {studies} simulated studies a line, concluded by the library itself; run time and cycles per item are ranked, so each pair is compared twice, and every suite of workloads besides. A false claim is a difference between equal boards or in the wrong direction, or an equality within a margin that the truth does not lie in. "Held" is the share of studies in which all simultaneous intervals held their truths at once. Trials are independent and normal with a standard deviation of 1 %; "apart" is by how many of these the second half of the boards is slower, "drawn" by how many standard errors of a mean the boards' true run times spread, anew in each study.

            The goal is a false claim in at most {Goal * 100:0} % of studies, three simulation errors allowed ({allowed
                * 100:0.0} %).

            Made by `dotnet run -c Release --project tests/McuBench.Simulation -- ranking --studies {studies} --seed {seed}`.

            | boards | trials | step over spread | workloads | apart | drawn | margin | false claim, adjusted | false claim, unadjusted | all intervals held | differences found, adjusted | found, unadjusted |
            |--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|

            """
            )
        );
        foreach (var r in results)
        {
            var s = r.Scenario;
            page.Write(
                Invariant(
                    $"| {s.Boards} | {s.Trials} | {s.StepOverSpread} | {s.Workloads} | {s.Apart} | {s.Drawn} | {s.Margin} | {Percent(r.FalseAdjusted)} | {Percent(r.FalseUnadjusted)} | {Percent(r.AllHeld)} | {Percent(r.FoundAdjusted)} | {Percent(r.FoundUnadjusted)} |\n"
                )
            );
        }

        page.Write(
            missed.Length == 0
                ? "\nEvery line keeps to the goal.\n"
                : Invariant($"\n{missed.Length} of {results.Count} lines miss the goal.\n")
        );
        page.Write(
            "\n## What a chance of being first is worth\n\nOf all boards that a study gave a chance of being first in a tenth of the scale, the share that truly were, where the true run times were drawn.\n\n| chance given |"
        );
        foreach (var r in results.Where(r => r.Scenario.Drawn > 0))
        {
            page.Write(Invariant($" {r.Scenario.Trials} trials: boards | truly first |"));
        }

        page.Write("\n|---|");
        foreach (var _ in results.Where(r => r.Scenario.Drawn > 0))
        {
            page.Write("--:|--:|");
        }

        for (var tenth = 0; tenth < 10; tenth++)
        {
            page.Write(Invariant($"\n| {tenth * 10} % to {tenth * 10 + 10} % |"));
            foreach (var r in results.Where(r => r.Scenario.Drawn > 0))
            {
                page.Write(Invariant($" {r.Chances[tenth].Count} | {Percent(r.Chances[tenth].First)} |"));
            }
        }

        page.Write("\n");
    }

    private static string Percent(double? share) => share is { } s ? Invariant($"{s * 100:0.0} %") : "–";
}
