using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Planning;
using UnitsNet;

namespace McuBench.Core.Planning;

/// <summary>The order in which the trials of several setups are to be run: in sessions and blocks, each setup once a block,
/// in random order within it, so that no drift of the bench can pass for a difference.</summary>
/// <remarks>The same seed gives the same order on any machine. Immutable; equal when all properties are equal, steps in
/// order. Safe to use from many threads.</remarks>
public sealed record BenchOrder
{
    private BenchOrder(Workload workload, TrialTimer timer, IEnumerable<BenchStep> steps, ulong seed, string method)
    {
        Workload = workload;
        Timer = timer;
        Steps = ValueList<BenchStep>.Of(steps, "Steps", nameof(steps));
        Seed = seed;
        Method = method;
    }

    /// <summary>The workload.</summary>
    public Workload Workload { get; }

    /// <summary>The timer.</summary>
    public TrialTimer Timer { get; }

    /// <summary>The trials in the order in which they are to be run.</summary>
    public IReadOnlyList<BenchStep> Steps { get; }

    /// <summary>The seed.</summary>
    public ulong Seed { get; }

    /// <summary>How the order was drawn.</summary>
    public string Method { get; }

    /// <summary>Draws an order in randomised blocks. O(steps).</summary>
    /// <param name="setups">At least two setups with distinct names.</param>
    /// <param name="workload">The workload.</param>
    /// <param name="timer">The timer.</param>
    /// <param name="trialsPerSession">Trials of each setup in a session, which is the number of blocks; at least 1.</param>
    /// <param name="sessions">Sessions, at least 1.</param>
    /// <param name="seed">The seed.</param>
    /// <exception cref="ArgumentException">There are fewer than two setups, or two share a name.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A count is below 1, or there are more than a million trials.</exception>
    public static BenchOrder RandomisedBlocks(
        IEnumerable<Setup> setups,
        Workload workload,
        TrialTimer timer,
        int trialsPerSession,
        int sessions,
        ulong seed
    )
    {
        var list = ValueList<Setup>.Of(setups, "Setups", nameof(setups));
        if (list.Count < 2 || list.Select(s => s.Name).Distinct(StringComparer.Ordinal).Count() < list.Count)
        {
            throw new ArgumentException(
                $"Setups must be at least two with distinct names; were {(list.Count == 0 ? "none" : string.Join(", ", list.Select(s => s.Name)))}.",
                nameof(setups)
            );
        }

        Require.AtLeast(trialsPerSession, 1, "Trials a session", nameof(trialsPerSession));
        Require.AtLeast(sessions, 1, "Sessions", nameof(sessions));
        if ((long)list.Count * trialsPerSession * sessions > MostSteps)
        {
            throw new ArgumentOutOfRangeException(
                nameof(sessions),
                sessions,
                FormattableString.Invariant(
                    $"Trials must be at most {MostSteps} in all; were {(long)list.Count * trialsPerSession * sessions}."
                )
            );
        }

        var order = RunOrder.RandomisedBlocks(list.Count, trialsPerSession * sessions, seed);
        return new BenchOrder(
            Require.Given(workload, nameof(workload)),
            Require.Given(timer, nameof(timer)),
            order.Blocks.SelectMany(
                (block, b) =>
                    block.Select(
                        (treatment, i) =>
                            new BenchStep(
                                b * list.Count + i + 1,
                                b / trialsPerSession + 1,
                                b % trialsPerSession + 1,
                                list[treatment]
                            )
                    )
            ),
            seed,
            order.Method
        );
    }

    /// <summary>The time that the whole will take: the runs, and what the bench takes besides. O(steps).</summary>
    /// <param name="runTimes">The expected run time of each setup.</param>
    /// <param name="times">What the bench takes besides; <see cref="BenchTimes.RunsOnly"/> when null.</param>
    public Duration ExpectedTime(Func<Setup, Duration> runTimes, BenchTimes? times = null)
    {
        ArgumentNullException.ThrowIfNull(runTimes);
        times ??= BenchTimes.RunsOnly;
        double seconds = 0;
        BenchStep? before = null;
        foreach (var step in Steps)
        {
            if (before?.Session != step.Session)
            {
                seconds += Si.Seconds(times.Start);
            }

            if (before is not null && before.Setup.Name != step.Setup.Name)
            {
                seconds += Si.Seconds(times.Change);
            }

            seconds +=
                Si.Seconds(Require.Positive(runTimes(step.Setup), "Run time", nameof(runTimes)))
                + Si.Seconds(times.Pause);
            before = step;
        }

        return Si.Duration(seconds);
    }

    private const long MostSteps = 1_000_000;
}
