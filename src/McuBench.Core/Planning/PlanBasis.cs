using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Descriptive;
using UnitsNet;

namespace McuBench.Core.Planning;

/// <summary>What a plan rests on: how long a run takes, with what it is timed, and how much run times spread between
/// trials, sessions and specimens; from a pilot, or assumed.</summary>
/// <remarks>Immutable; equal when all properties are equal. Safe to use from many threads.</remarks>
public sealed record PlanBasis
{
    /// <summary>States a basis.</summary>
    /// <param name="workload">The workload.</param>
    /// <param name="timer">The timer.</param>
    /// <param name="runTime">The expected time of one run, above zero.</param>
    /// <param name="trialSpread">The standard deviation between trials of one session, as a share of the run time.</param>
    /// <exception cref="ArgumentOutOfRangeException">The run time is zero or negative, or the spread isn't at least 0 % and
    /// below 100 %.</exception>
    public PlanBasis(Workload workload, TrialTimer timer, Duration runTime, Ratio trialSpread)
    {
        Workload = Require.Given(workload, nameof(workload));
        Timer = Require.Given(timer, nameof(timer));
        RunTime = Require.Positive(runTime, "Run time", nameof(runTime));
        TrialSpread = Require.Share(trialSpread, "Spread between trials", nameof(trialSpread));
    }

    /// <summary>The workload.</summary>
    public Workload Workload { get; }

    /// <summary>The timer.</summary>
    public TrialTimer Timer { get; }

    /// <summary>The expected time of one run, in seconds.</summary>
    public Duration RunTime { get; }

    /// <summary>The standard deviation between trials of one session, as a share of the run time, without what the
    /// timer's step adds.</summary>
    public Ratio TrialSpread { get; }

    /// <summary>The standard deviation between the true means of sessions on one specimen, as a share of the run time; 0
    /// unless set: sessions then count for nothing but their trials.</summary>
    public Ratio SessionSpread
    {
        get;
        init => field = Require.Share(value, "Spread between sessions", nameof(SessionSpread));
    }

    /// <summary>The standard deviation between the true means of specimens of the model, as a share of the run time; 0
    /// unless set: what is planned is then a conclusion about the specimens on the bench, not about the model.</summary>
    public Ratio SpecimenSpread
    {
        get;
        init => field = Require.Share(value, "Spread between specimens", nameof(SpecimenSpread));
    }

    /// <summary>Takes the basis from a pilot. O(n).</summary>
    /// <remarks>
    /// Spread between trials is that within sessions, less r²/12 that rounding to a step adds (r²/6 for a difference of
    /// two ticks); spread between sessions is what their means spread beyond it (one-way random effects, by moments), 0
    /// where one session was held or none is seen. Specimens can't be told from sessions in a pilot: state them.
    /// </remarks>
    /// <param name="pilot">A summary of at least two trials.</param>
    /// <exception cref="ArgumentException">The pilot has fewer than two trials, or no session of it has.</exception>
    public static PlanBasis FromPilot(SetupSummary pilot)
    {
        ArgumentNullException.ThrowIfNull(pilot);
        double[][] sessions =
        [
            .. pilot
                .Series.Trials.GroupBy(t => t.Session ?? "", StringComparer.Ordinal)
                .Select(g => g.Select(t => Si.Seconds(t.RunTime)).ToArray()),
        ];
        var degrees = sessions.Sum(s => s.Length - 1);
        if (degrees == 0)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"A pilot must hold a session of at least two trials; was of {pilot.Series.Trials.Count} in {sessions.Length}."
                ),
                nameof(pilot)
            );
        }

        var mean = Si.Seconds(pilot.RunTime.Value);
        var step = Si.Seconds(pilot.Series.Timer.Resolution);
        var ofStep =
            pilot.Series.Timer.Reading == TimerReading.TickDifferenceRandomStart ? step * step / 6 : step * step / 12;
        var within = sessions.Where(s => s.Length > 1).Sum(s => Scale.Variance(s) * (s.Length - 1)) / degrees;
        return new PlanBasis(
            pilot.Workload,
            pilot.Series.Timer,
            pilot.RunTime.Value,
            Si.Ratio(Math.Sqrt(Math.Max(0, within - ofStep)) / mean)
        )
        {
            SessionSpread = Si.Ratio(Math.Sqrt(BetweenSessions(sessions, within)) / mean),
        };
    }

    /// <summary>The variance between the sessions' true means by moments, with the sizes as they are
    /// (searle-casella-mcculloch-1992, 3.6).</summary>
    private static double BetweenSessions(double[][] sessions, double within)
    {
        if (sessions.Length < 2)
        {
            return 0;
        }

        double all = sessions.Sum(s => s.Length);
        var mean = sessions.Sum(s => s.Sum()) / all;
        var between = sessions.Sum(s => s.Length * Math.Pow(Location.Mean(s) - mean, 2)) / (sessions.Length - 1);
        var size = (all - sessions.Sum(s => (double)s.Length * s.Length) / all) / (sessions.Length - 1);
        return Math.Max(0, (between - within) / size);
    }
}
