using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Studies;
using McuBench.Core.Trials;
using McuBench.Stats.Resampling;
using UnitsNet;

namespace McuBench.Simulation;

/// <summary>Runs the library on many simulated studies of several boards.</summary>
/// <remarks>Every study draws from a stream of its own, so the figures are the same on any number of threads.</remarks>
public static class RankingSimulator
{
    private const ulong StreamsPerScenario = 1UL << 32;
    private const int Tenths = 10;

    /// <summary>The standard deviation of trials, as a share of the run time.</summary>
    private const double Spread = 0.01;

    /// <summary>A truth that lies on an end is held, whatever rounding does to the last digits.</summary>
    private const double RoundingError = 1e-12;

    /// <summary>Runs one scenario.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="number">Its number, which with the seed decides what is drawn.</param>
    /// <param name="studies">How many studies.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="threads">How many at a time.</param>
    public static RankingResult Run(RankingScenario scenario, int number, int studies, ulong seed, int threads)
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
        double different = outcomes.Sum(o => o.Different);
        return new RankingResult
        {
            Scenario = scenario,
            Studies = studies,
            FalseAdjusted = (double)outcomes.Count(o => o.FalseAdjusted) / studies,
            FalseUnadjusted = (double)outcomes.Count(o => o.FalseUnadjusted) / studies,
            AllHeld = (double)outcomes.Count(o => o.AllHeld) / studies,
            FoundAdjusted = different == 0 ? null : outcomes.Sum(o => o.FoundAdjusted) / different,
            FoundUnadjusted = different == 0 ? null : outcomes.Sum(o => o.FoundUnadjusted) / different,
            Chances =
            [
                .. Enumerable
                    .Range(0, Tenths)
                    .Select(tenth =>
                        outcomes.SelectMany(o => o.Chances).Where(c => TenthOf(c.Chance) == tenth).ToArray()
                    )
                    .Select(c => (c.Length, c.Length == 0 ? 0 : (double)c.Count(x => x.IsFirst) / c.Length)),
            ],
        };
    }

    private static Outcome Conclude(RankingScenario scenario, RandomStream random)
    {
        var truths = Truths(scenario, random);
        var study = Study.FromTrials("study", Trials(scenario, truths, random));
        var margin = scenario.Margin * Spread;
        var options = new ConclusionOptions { Margin = margin > 0 ? Ratio.FromDecimalFractions(margin) : null };
        var conclusions = StudyConclusions.Of(study, options);
        var outcome = new Outcome();
        foreach (var ranking in conclusions.Rankings)
        {
            foreach (var pair in ranking.Pairs)
            {
                var truth = Math.Log(TruthOf(pair.Comparison.First) / TruthOf(pair.Comparison.Second));
                outcome.AllHeld &=
                    Math.Log(pair.Lower!.Value) <= truth + RoundingError
                    && truth <= Math.Log(pair.Upper!.Value) + RoundingError;
                outcome.FalseAdjusted |= IsFalse(pair.Verdict, pair.Less, truth, margin);
                outcome.FalseUnadjusted |= IsFalse(pair.Unadjusted.Verdict, pair.Unadjusted.Less, truth, margin);
                if (truth != 0)
                {
                    outcome.Different++;
                    outcome.FoundAdjusted += pair.IsToldApart ? 1 : 0;
                    outcome.FoundUnadjusted += pair.Unadjusted.Less is not null ? 1 : 0;
                }
            }
        }

        foreach (var suite in conclusions.Suites)
        {
            // Boards keep their ratio on every workload, so it is that of the suite.
            var truth = Math.Log(TruthOf(suite.Members[0].First) / TruthOf(suite.Members[0].Second));
            var less = suite.Mean.Ratio.Value < 1 ? Side.First : Side.Second;
            outcome.FalseAdjusted |= IsFalse(suite.AdjustedVerdict, less, truth, margin);
            outcome.FalseUnadjusted |= IsFalse(suite.Mean.Verdict, suite.Mean.Less, truth, margin);
        }

        if (scenario.Drawn > 0)
        {
            var best = truths.Min();
            outcome.Chances =
            [
                .. conclusions.Rankings[0].Places.Select(p => (p.PlaceProbabilities[0], TruthOf(p.Summary) == best)),
            ];
        }

        return outcome;

        double TruthOf(SetupSummary summary) => truths[NumberOf(summary.Setup)];
    }

    private static double[] Truths(RankingScenario scenario, RandomStream random) =>
        [
            .. Enumerable
                .Range(0, scenario.Boards)
                .Select(b =>
                    scenario.Drawn > 0 ? 1 + scenario.Drawn * Spread / Math.Sqrt(scenario.Trials) * random.Normal()
                    : b < (scenario.Boards + 1) / 2 ? 1
                    : 1 + scenario.Apart * Spread
                ),
        ];

    private static IEnumerable<Trial> Trials(RankingScenario scenario, double[] truths, RandomStream random)
    {
        var step = Spread * (scenario.StepOverSpread == 0 ? 1e-6 : scenario.StepOverSpread);
        for (var w = 0; w < scenario.Workloads; w++)
        {
            // Where between two steps the truth lies is drawn anew for each study and workload.
            var scale = 1 + step * random.Uniform();
            var workload = new Workload(FormattableString.Invariant($"workload {w}"), 1000);
            var timer = new TrialTimer("timer", Duration.FromSeconds(step), TimerReading.Rounded)
            {
                Place = TimerPlace.Outside,
            };
            for (var b = 0; b < truths.Length; b++)
            {
                var name = FormattableString.Invariant($"{b}");
                var setup = new Setup(name, new Board(name), Frequency.FromMegahertz(100));
                for (var i = 0; i < scenario.Trials; i++)
                {
                    var seconds = truths[b] * scale * (1 + Spread * random.Normal());
                    yield return new Trial(
                        setup,
                        workload,
                        timer,
                        Duration.FromSeconds(Math.Round(seconds / step) * step)
                    );
                }
            }
        }
    }

    private static bool IsFalse(Verdict verdict, Side? less, double truth, double margin)
    {
        var isDifferent = verdict is Verdict.Different or Verdict.DifferentWithinMargin;
        var isWithin = verdict is Verdict.EqualWithinMargin or Verdict.DifferentWithinMargin;
        var isRight = less == Side.First ? truth < 0 : truth > 0;
        return (isDifferent && !isRight) || (isWithin && Math.Abs(truth) >= Math.Log(1 + margin) - RoundingError);
    }

    private static int NumberOf(Setup setup) =>
        int.Parse(setup.Name, System.Globalization.CultureInfo.InvariantCulture);

    private static int TenthOf(double chance) => Math.Min(Tenths - 1, (int)(chance * Tenths));

    private sealed class Outcome
    {
        public bool FalseAdjusted { get; set; }

        public bool FalseUnadjusted { get; set; }

        public bool AllHeld { get; set; } = true;

        public int Different { get; set; }

        public int FoundAdjusted { get; set; }

        public int FoundUnadjusted { get; set; }

        public IReadOnlyList<(double Chance, bool IsFirst)> Chances { get; set; } = [];
    }
}
