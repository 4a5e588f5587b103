using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Simulation;

/// <summary>Runs the library on many simulated studies of a scenario.</summary>
/// <remarks>Every study draws from a stream of its own, so the figures are the same on any number of threads.</remarks>
public static class Simulator
{
    /// <summary>A power of two above the number of studies of any scenario.</summary>
    private const ulong StreamsPerScenario = 1UL << 32;

    /// <summary>Runs one scenario.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="number">Its number, which with the seed decides what is drawn.</param>
    /// <param name="studies">How many studies.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="threads">How many at a time.</param>
    public static CellResult Run(Scenario scenario, int number, int studies, ulong seed, int threads)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentOutOfRangeException.ThrowIfLessThan(studies, 1);
        var outcomes = new Outcome[studies];
        Parallel.For(
            0,
            studies,
            new ParallelOptions { MaxDegreeOfParallelism = threads },
            i => outcomes[i] = Conclude(scenario, RandomStream.Of(seed, (ulong)number * StreamsPerScenario + (ulong)i))
        );
        return new CellResult
        {
            Scenario = scenario,
            Studies = studies,
            RunTimeHeld = Share(outcomes, o => o.RunTimeHeld),
            RunTimeHeldAtWorst = outcomes.GroupBy(o => o.Place).Min(g => Share([.. g], o => o.RunTimeHeld)),
            RatioHeld = Share(outcomes, o => o.RatioHeld),
            Width = outcomes.Average(o => o.Width),
            Candidates =
            [
                .. Candidate.All.Select(
                    (c, k) => (c.Name, Share(outcomes, o => o.Held[k]), outcomes.Average(o => o.Widths[k]))
                ),
            ],
            FalselyDifferent =
                scenario.Ratio == 1
                    ? Share(outcomes, o => o.Verdict is Verdict.Different or Verdict.DifferentWithinMargin)
                    : null,
            FalselyWithin =
                scenario.Ratio == 1
                    ? null
                    : Share(outcomes, o => o.Verdict is Verdict.EqualWithinMargin or Verdict.DifferentWithinMargin),
            WithoutVerdict = Share(outcomes, o => o.Verdict == Verdict.NoVerdict),
        };
    }

    private static Outcome Conclude(Scenario scenario, RandomStream random)
    {
        var pair = TimedPair.Draw(scenario, random);
        var options = new ConclusionOptions { Margin = Ratio.FromDecimalFractions(scenario.Margin) };
        var first = SetupSummary.Of(pair.First.Series, options: options);
        var second = SetupSummary.Of(pair.Second.Series, options: options);
        var compared = SetupComparison.Of(first, second, options).RunTime;
        var truth = Math.Log(pair.TrueRatio);
        var ofTime = Ends(first.RunTime.Lower?.Seconds, first.RunTime.Upper?.Seconds);
        var ofRatio = Ends(compared.Ratio.Lower, compared.Ratio.Upper);
        var (held, widths) = (new bool[Candidate.All.Count], new double[Candidate.All.Count]);
        for (var k = 0; k < held.Length; k++)
        {
            var (lower, upper) = Candidate.All[k].OfRatio(pair);
            held[k] = Holds(lower, upper, truth);
            widths[k] = upper - lower;
        }

        var steps = pair.First.TrueSeconds / pair.Step;
        return new Outcome(
            (int)((steps - Math.Floor(steps)) * CellResult.Places),
            Holds(ofTime.Lower, ofTime.Upper, Math.Log(pair.First.TrueSeconds)),
            Holds(ofRatio.Lower, ofRatio.Upper, truth),
            ofRatio.Upper - ofRatio.Lower,
            held,
            widths,
            compared.Verdict
        );
    }

    private static (double Lower, double Upper) Ends(double? lower, double? upper) =>
        lower is { } from && upper is { } to
            ? (Math.Log(from), Math.Log(to))
            : throw new InvalidOperationException("A simulated study came out without an interval.");

    /// <summary>A truth that lies on an end is held, whatever rounding does to the last digits.</summary>
    private static bool Holds(double lower, double upper, double truth) =>
        lower - RoundingError <= truth && truth <= upper + RoundingError;

    private const double RoundingError = 1e-12;

    private static double Share(Outcome[] outcomes, Func<Outcome, bool> holds) =>
        (double)outcomes.Count(holds) / outcomes.Length;

    private sealed record Outcome(
        int Place,
        bool RunTimeHeld,
        bool RatioHeld,
        double Width,
        bool[] Held,
        double[] Widths,
        Verdict Verdict
    );
}
