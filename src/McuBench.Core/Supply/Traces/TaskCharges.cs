using McuBench.Core.Conclusions;
using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using McuBench.Stats.Descriptive;
using UnitsNet;

namespace McuBench.Core.Supply.Traces;

/// <summary>The tasks of a trace, one for each active phase, and what one of them takes.</summary>
public static class TaskCharges
{
    private static readonly Ratio TenPercent = Ratio.FromPercent(10);

    /// <summary>The tasks: each active phase that the trace holds from its beginning to its end, with the idle phases
    /// beside it as its baseline. O(n).</summary>
    /// <param name="phases">The phases of a trace, in order. An active phase at either end of the trace was cut, and is no
    /// task.</param>
    /// <exception cref="ArgumentNullException">There is no list.</exception>
    public static IReadOnlyList<TaskCharge> Of(IReadOnlyList<TracePhase> phases)
    {
        ArgumentNullException.ThrowIfNull(phases);
        var tasks = new List<TaskCharge>();
        for (var i = 1; i + 1 < phases.Count; i++)
        {
            if (phases[i].IsActive)
            {
                tasks.Add(Task(phases[i], phases[i - 1], phases[i + 1]));
            }
        }

        return tasks;
    }

    /// <summary>The tasks beside the trials that they are: the first task is the first trial, and so on. O(n).</summary>
    /// <param name="tasks">The tasks of a trace.</param>
    /// <param name="trials">The trials that were run meanwhile, in order.</param>
    /// <param name="tolerance">By how much a phase may be longer or shorter than its trial, as a share of the trial's run
    /// time; 10 % unless given.</param>
    /// <exception cref="ArgumentException">The counts differ, or a phase and its trial differ in length by more than the
    /// tolerance: then one of the two lists has something that the other has not.</exception>
    public static IReadOnlyList<(Trial Trial, TaskCharge Task)> Matched(
        IReadOnlyList<TaskCharge> tasks,
        IReadOnlyList<Trial> trials,
        Ratio? tolerance = null
    )
    {
        ArgumentNullException.ThrowIfNull(tasks);
        ArgumentNullException.ThrowIfNull(trials);
        if (tasks.Count != trials.Count)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Tasks must be as many as the {trials.Count} trials; were {tasks.Count}. Do the thresholds cut a task in two, or miss one?"
                ),
                nameof(tasks)
            );
        }

        var share = Si.Fraction(Require.Share(tolerance ?? TenPercent, "Tolerance", nameof(tolerance)));
        for (var i = 0; i < tasks.Count; i++)
        {
            var runTime = Si.Seconds(trials[i].RunTime);
            var length = Si.Seconds(tasks[i].Phase.Length);
            if (Math.Abs(length - runTime) > share * runTime)
            {
                throw new ArgumentException(
                    $"Task {i + 1} must last as long as its trial, {QuantityText.Format(trials[i].RunTime)}, to within {QuantityText.Format(Si.Ratio(share))}; lasted {QuantityText.Format(tasks[i].Phase.Length)}.",
                    nameof(tasks)
                );
            }
        }

        return [.. trials.Zip(tasks)];
    }

    /// <summary>The mean gross charge of one task, with its interval: scatter from task to task, and the meter. O(n).</summary>
    /// <param name="tasks">The tasks, at least one; with one there is no interval.</param>
    /// <param name="accuracy">What is known of the meter; nothing unless given.</param>
    /// <param name="confidence">The confidence of the interval, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There is no task, or the confidence lies outside (0, 1).</exception>
    public static Measured<ElectricCharge> MeanGross(
        IReadOnlyList<TaskCharge> tasks,
        TraceAccuracy? accuracy = null,
        double confidence = 0.95
    ) => Mean(tasks, "mean charge of a task, gross", task => Si.Coulombs(task.Gross), 1, accuracy, confidence);

    /// <summary>The mean net charge of one task, with its interval: scatter from task to task, and the meter's gain and
    /// clock; its offset is in the baseline too, and goes out. O(n).</summary>
    /// <param name="tasks">The tasks, at least one; with one there is no interval.</param>
    /// <param name="accuracy">What is known of the meter; nothing unless given.</param>
    /// <param name="confidence">The confidence of the interval, above 0 and below 1.</param>
    /// <exception cref="ArgumentException">There is no task, one has no baseline, or the confidence lies outside
    /// (0, 1).</exception>
    public static Measured<ElectricCharge> MeanNet(
        IReadOnlyList<TaskCharge> tasks,
        TraceAccuracy? accuracy = null,
        double confidence = 0.95
    ) =>
        Mean(
            tasks,
            "mean charge of a task, net of the idle phases beside it",
            task =>
                task.Net is { } net
                    ? Si.Coulombs(net)
                    : throw new ArgumentException(
                        "A task must have a baseline to be net of it; one has none.",
                        nameof(tasks)
                    ),
            0,
            accuracy,
            confidence
        );

    private static TaskCharge Task(TracePhase phase, TracePhase before, TracePhase after)
    {
        var idle = Si.Seconds(before.Length) + Si.Seconds(after.Length);
        var seconds = Si.Seconds(phase.Length);
        if (!(idle > 0))
        {
            return new TaskCharge
            {
                Phase = phase,
                Baseline = null,
                Net = null,
                NetEnergy = null,
            };
        }

        var amperes = (Si.Coulombs(before.Charge) + Si.Coulombs(after.Charge)) / idle;
        return new TaskCharge
        {
            Phase = phase,
            Baseline = Si.Current(amperes),
            Net = Si.Charge(Si.Coulombs(phase.Charge) - amperes * seconds),
            NetEnergy =
                phase.Energy is { } energy && before.Energy is { } first && after.Energy is { } second
                    ? Si.Energy(Si.Joules(energy) - (Si.Joules(first) + Si.Joules(second)) / idle * seconds)
                    : null,
        };
    }

    private static Measured<ElectricCharge> Mean(
        IReadOnlyList<TaskCharge> tasks,
        string method,
        Func<TaskCharge, double> chargeOf,
        double offsetsLeft,
        TraceAccuracy? accuracy,
        double confidence
    )
    {
        ArgumentNullException.ThrowIfNull(tasks);
        if (tasks.Count == 0)
        {
            throw new ArgumentException("Tasks must be at least 1; there were none.", nameof(tasks));
        }

        if (!(confidence > 0 && confidence < 1))
        {
            throw new ArgumentOutOfRangeException(
                nameof(confidence),
                confidence,
                FormattableString.Invariant($"Confidence must be above 0 and below 1; was {confidence}.")
            );
        }

        var known = accuracy ?? TraceAccuracy.Unknown;
        double[] charges = [.. tasks.Select(chargeOf)];
        var mean = Location.Mean(charges);
        var seconds = tasks.Average(task => Si.Seconds(task.Phase.Length));
        var value = UncertainValue.Of(
            mean,
            [
                Meter("gain", "gain of the meter", Si.Fraction(known.Gain) * mean),
                Meter("offset", "offset of the meter", offsetsLeft * Si.Amperes(known.Offset) * seconds),
                Meter("time base", "time base of the meter", Si.Fraction(known.TimeBase) * mean),
                .. Scatter(charges),
            ]
        );
        return new Measure(confidence, charges.Length, method).Of(
            charges.Length > 1 ? value : value.WithMissing("One task alone shows no scatter: there is no interval."),
            charge => Si.Charge(charge),
            Ends.Symmetric
        );
    }

    private static IEnumerable<Contribution> Scatter(double[] charges)
    {
        if (charges.Length > 1)
        {
            yield return new Contribution(
                new Source(
                    "task|scatter",
                    FormattableString.Invariant($"scatter of {charges.Length} tasks"),
                    EvaluationType.TypeA,
                    charges.Length - 1,
                    AveragesDown: true
                ),
                Scale.StandardDeviation(charges) / Math.Sqrt(charges.Length)
            );
        }
    }

    private static Contribution Meter(string key, string component, double limit) =>
        new(
            new Source($"trace|{key}", component, EvaluationType.TypeB, double.PositiveInfinity, AveragesDown: false),
            RunTimeFigures.OfTolerance(limit)
        );
}
