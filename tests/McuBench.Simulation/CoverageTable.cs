using System.Globalization;
using McuBench.Core.Trials;

namespace McuBench.Simulation;

/// <summary>Writes what was simulated as a page of Markdown.</summary>
public static class CoverageTable
{
    private const double FalseVerdictGoal = 0.06;
    private const double FalseVerdictGoalWhenDependent = 0.10;
    private const double CoverageGoalWhenDependent = 0.90;
    private const int FewestForDependence = 10;
    private const double WidthGoal = 1.25;
    private const double LeastRatioForWidth = 1.02;

    /// <summary>Writes the page.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="command">The command that makes it.</param>
    /// <param name="groups">The groups with their results.</param>
    public static void Write(
        TextWriter writer,
        string command,
        IReadOnlyList<(ScenarioGroup Group, IReadOnlyList<CellResult> Results)> groups
    )
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(groups);
        writer.NewLine = "\n";
        var studies = groups[0].Results[0].Studies;
        writer.WriteLine("# How often the intervals hold, and how often the verdicts are false");
        writer.WriteLine();
        writer.WriteLine(
            Text(
                $"Simulated studies of two invented boards, {studies} in each row, concluded by the library itself at 95 % confidence. Made by"
            )
        );
        writer.WriteLine();
        writer.WriteLine("```sh");
        writer.WriteLine(command);
        writer.WriteLine("```");
        writer.WriteLine();
        writer.WriteLine(
            """
            - *n*: trials a board. *Ratio*: of the true run times. *Step*: the timer's step over the standard deviation of
              run times; ∞ where they don't scatter at all. Run times are drawn from 1 s to 1.5 s, so the truth lies anywhere
              between two steps; percentages of scatter are those of 1 s.
            - *Run time*: how often the interval of the first board's mean run time held the truth; *worst place*: the same
              at the least favourable tenth of a step.
            - *Ratio held*: how often the interval of the ratio held the true ratio. *Width*: its mean width over that of the
              narrowest rule that holds at least 94 %, which is named: the library's own, Welch's t on the readings as they
              are, the larger of s²/n and r²/12, or their sum.
            - *Welch held*: how often Welch's t on the readings as they are holds the ratio.
            - *False*: for equal boards, how often they were called different; for others, how often they were called equal
              or within the margin when the margin is the true difference itself, where that is likeliest. *None*: how often
              there was no verdict.
            - ✗ marks what misses its goal by more than three simulation errors: 94 % held, 6 % false, 1.25 times the
              narrowest width for independent trials; 90 % held and 10 % false from 10 trials on where they depend on one
              another.
            """.ReplaceLineEndings("\n")
        );
        foreach (var (group, results) in groups)
        {
            writer.WriteLine();
            writer.WriteLine("## " + group.Heading);
            writer.WriteLine();
            WriteMisses(writer, group, results);
            writer.WriteLine(
                "| circumstances | n | ratio | step | run time | worst place | ratio held | width | narrowest | Welch held | false | none |"
            );
            writer.WriteLine("| --- | --: | --: | --: | --: | --: | --: | --: | --- | --: | --: | --: |");
            foreach (var result in results)
            {
                WriteRow(writer, group, result);
            }
        }
    }

    private static void WriteMisses(TextWriter writer, ScenarioGroup group, IReadOnlyList<CellResult> results)
    {
        var held = results.Count(r => MissesCoverage(group, r.RatioHeld, r) || MissesCoverage(group, r.RunTimeHeld, r));
        var isFalse = results.Count(r => MissesVerdict(group, r));
        var wide = results.Count(r => MissesWidth(group, r));
        writer.WriteLine(
            Text(
                $"Of {results.Count} rows {held} miss the goal of intervals that hold, {isFalse} that of false verdicts, {wide} that of width."
            )
        );
        writer.WriteLine();
    }

    private static void WriteRow(TextWriter writer, ScenarioGroup group, CellResult result)
    {
        var s = result.Scenario;
        var narrowest = result.Narrowest;
        var width = narrowest is { } n
            ? Text($"{result.Width / n.Width:0.00}") + Mark(MissesWidth(group, result))
            : "–";
        writer.WriteLine(
            string.Join(
                " | ",
                "| " + Circumstances(s),
                Text($"{s.Trials}"),
                Text($"{s.Ratio}"),
                double.IsPositiveInfinity(s.StepOverSpread) ? "∞" : Text($"{s.StepOverSpread}"),
                Percent(result.RunTimeHeld) + Mark(MissesCoverage(group, result.RunTimeHeld, result)),
                Percent(result.RunTimeHeldAtWorst),
                Percent(result.RatioHeld) + Mark(MissesCoverage(group, result.RatioHeld, result)),
                width,
                narrowest?.Name ?? "–",
                Percent(result.Candidates[0].Held),
                Percent(FalseShare(result)) + Mark(MissesVerdict(group, result)),
                Percent(result.WithoutVerdict) + " |"
            )
        );
    }

    private static double FalseShare(CellResult result) => result.FalselyDifferent ?? result.FalselyWithin ?? 0;

    private static bool MissesCoverage(ScenarioGroup group, double held, CellResult result)
    {
        var goal = group.IsIndependent ? CellResult.CoverageGoal : CoverageGoalWhenDependent;
        return Binds(group, result) && held < goal - result.Allowance(goal);
    }

    private static bool MissesVerdict(ScenarioGroup group, CellResult result)
    {
        var goal = group.IsIndependent ? FalseVerdictGoal : FalseVerdictGoalWhenDependent;
        return Binds(group, result) && FalseShare(result) > goal + result.Allowance(goal);
    }

    private static bool MissesWidth(ScenarioGroup group, CellResult result) =>
        group.IsIndependent
        && result.Scenario.Ratio >= LeastRatioForWidth
        && result.Narrowest is { } narrowest
        && result.Width > WidthGoal * narrowest.Width;

    private static bool Binds(ScenarioGroup group, CellResult result) =>
        group.IsIndependent || result.Scenario.Trials >= FewestForDependence;

    private static string Circumstances(Scenario s)
    {
        var reading = s.Reading switch
        {
            TimerReading.Rounded => "rounded",
            TimerReading.Truncated => "truncated",
            TimerReading.TickDifferenceRandomStart => "ticks, random start",
            _ => "ticks, started on one",
        };
        List<string> words = [reading, s.Shape.ToString().ToLowerInvariant(), Percent(s.Spread)];
        if (s.Lag != 0)
        {
            words.Add(Text($"lag-1 {s.Lag}"));
        }

        if (s.Drift != 0)
        {
            words.Add(s.Order == TrialOrder.Random ? "drift, random order" : "drift, one after the other");
        }

        if (s.Tolerance != 0)
        {
            words.Add(s.Place == TimerPlace.Outside ? "one oscillator" : "an oscillator each");
        }

        return string.Join(", ", words);
    }

    private static string Mark(bool misses) => misses ? " ✗" : "";

    private static string Percent(double share) => Text($"{100 * share:0.#} %");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
