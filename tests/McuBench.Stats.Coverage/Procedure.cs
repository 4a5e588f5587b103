namespace McuBench.Stats.Coverage;

/// <summary>A procedure under trial: what it is, what it aims at, and how a run goes.</summary>
public sealed record Procedure
{
    /// <summary>The nominal confidence of every interval; a test's significance is the rest.</summary>
    public const double Confidence = 0.95;

    /// <summary>Type and method, with the setting in words where there is one.</summary>
    public required string Name { get; init; }

    /// <summary>What the interval is to hold, or what the test takes to be true.</summary>
    public required string Target { get; init; }

    /// <summary>Whether it is a test, whose share is that of false rejections.</summary>
    public required bool IsTest { get; init; }

    /// <summary>One run; null where there is no answer, as where all values are equal.</summary>
    public required Func<Scene, Outcome?> Run { get; init; }

    /// <summary>Where it is to keep its promise.</summary>
    public required Promise Promise { get; init; }

    /// <summary>The shapes that it is tried on.</summary>
    public Shapes Tried { get; init; } = Shapes.Alike;

    /// <summary>Of how many runs one is done, for procedures that take long.</summary>
    public int OneIn { get; init; } = 1;

    /// <summary>The share that is promised.</summary>
    public double Nominal => IsTest ? 1 - Confidence : Confidence;

    /// <summary>A procedure that gives an estimate with an interval.</summary>
    /// <param name="name">Type and method.</param>
    /// <param name="target">What the interval is to hold, in words.</param>
    /// <param name="estimate">The procedure.</param>
    /// <param name="truth">What the interval is to hold.</param>
    /// <param name="promise">Where it is to keep its promise.</param>
    public static Procedure Interval(
        string name,
        string target,
        Func<Scene, Estimate> estimate,
        Func<Scene, double> truth,
        Promise promise
    ) => IntervalOnly(name, target, s => estimate(s).Interval, truth, promise);

    /// <summary>A procedure that finds at times that what it looks for has no bounds, which holds the truth and has no
    /// width; what the parameters are stands at <see cref="Interval"/>.</summary>
    public static Procedure IntervalOrNoBounds(
        string name,
        string target,
        Func<Scene, Estimate> estimate,
        Func<Scene, double> truth,
        Promise promise
    ) => IntervalOnly(name, target, s => OrNoBounds(estimate(s)), truth, promise);

    /// <summary>A procedure that gives an interval; what the parameters are stands at
    /// <see cref="Interval"/>.</summary>
    public static Procedure IntervalOnly(
        string name,
        string target,
        Func<Scene, Interval?> interval,
        Func<Scene, double> truth,
        Promise promise
    ) => IntervalThat(name, target, interval, (s, ends) => Holds(ends, truth(s)), promise);

    /// <summary>A procedure whose interval promises something else than to hold one value.</summary>
    /// <param name="name">Type and method.</param>
    /// <param name="target">What is promised of the interval, in words.</param>
    /// <param name="interval">The procedure.</param>
    /// <param name="holds">Whether an interval keeps what was promised.</param>
    /// <param name="promise">Where it is to keep its promise.</param>
    public static Procedure IntervalThat(
        string name,
        string target,
        Func<Scene, Interval?> interval,
        Func<Scene, Interval, bool> holds,
        Promise promise
    ) =>
        new()
        {
            Name = name,
            Target = target,
            IsTest = false,
            Run = s => interval(s) is { } ends ? new Outcome(holds(s, ends), ends.Width) : null,
            Promise = promise,
        };

    /// <summary>A procedure that gives a p-value.</summary>
    /// <param name="name">Type and method.</param>
    /// <param name="hypothesis">What it takes to be true, which is true here.</param>
    /// <param name="pValue">The procedure.</param>
    /// <param name="promise">Where it is to reject no more often than it says.</param>
    public static Procedure Test(string name, string hypothesis, Func<Scene, double> pValue, Promise promise) =>
        new()
        {
            Name = name,
            Target = hypothesis,
            IsTest = true,
            Run = s => new Outcome(pValue(s) <= 1 - Confidence + RoundingError, 0),
            Promise = promise,
        };

    private static Interval? OrNoBounds(Estimate estimate) =>
        estimate.Notes.Any(note => note.Contains("has no bounds", StringComparison.Ordinal))
            ? new Interval(double.NegativeInfinity, double.PositiveInfinity, Confidence)
            : estimate.Interval;

    private const double RoundingError = 1e-12;

    /// <summary>A truth that lies on an end is held, whatever rounding does to the last digits.</summary>
    private static bool Holds(Interval ends, double truth)
    {
        double rounding = RoundingError * Math.Abs(truth);
        return ends.Lower - rounding <= truth && truth <= ends.Upper + rounding;
    }
}
