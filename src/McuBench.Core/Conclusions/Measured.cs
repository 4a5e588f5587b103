namespace McuBench.Core.Conclusions;

/// <summary>
/// A result with what is known of its uncertainty: the value, its interval and confidence, the method, the number of
/// trials behind it, and the budget of what contributes how much.
/// </summary>
/// <typeparam name="T">The quantity, in its SI unit; <see cref="double"/> for pure numbers.</typeparam>
/// <remarks>
/// The interval is absent where none can be had, and <see cref="Notes"/> then says why; it is never zero wide.
/// Immutable; equal when all properties are equal, lists in order. Safe to use from many threads.
/// </remarks>
public sealed record Measured<T>
    where T : struct
{
    private readonly ValueList<BudgetLine> budget;
    private readonly ValueList<string> notes;

    internal Measured(
        T value,
        MeasuredSpread<T>? spread,
        double confidence,
        int trials,
        string method,
        IEnumerable<BudgetLine> budget,
        IEnumerable<string> notes
    )
    {
        Value = value;
        StandardUncertainty = spread?.StandardUncertainty;
        Lower = spread?.Lower;
        Upper = spread?.Upper;
        DegreesOfFreedom = spread?.DegreesOfFreedom;
        Confidence = confidence;
        Trials = trials;
        Method = method;
        this.budget = ValueList<BudgetLine>.Of(budget, "Budget", nameof(budget));
        this.notes = ValueList<string>.Of(notes, "Notes", nameof(notes));
    }

    /// <summary>The value, in the quantity's SI unit.</summary>
    public T Value { get; }

    /// <summary>The combined standard uncertainty (GUM 5.1), in the value's unit; absent where no interval can be had.</summary>
    public T? StandardUncertainty { get; }

    /// <summary>The interval's lower end; absent where no interval can be had.</summary>
    public T? Lower { get; }

    /// <summary>The interval's upper end; absent where no interval can be had.</summary>
    public T? Upper { get; }

    /// <summary>Whether there is an interval; where not, <see cref="Notes"/> say why.</summary>
    public bool HasInterval => Lower is not null;

    /// <summary>The confidence that the interval has, or would have; 0.95 means 95 %.</summary>
    public double Confidence { get; }

    /// <summary>The effective degrees of freedom of the standard uncertainty (Welch–Satterthwaite, GUM G.4.1), at least
    /// 1; positive infinity where no scatter was estimated; absent where there is no interval.</summary>
    public double? DegreesOfFreedom { get; }

    /// <summary>The number of trials (for currents: readings) behind the value, of all setups together.</summary>
    public int Trials { get; }

    /// <summary>The method's name, with what was made of the dependence of trials on one another.</summary>
    public string Method { get; }

    /// <summary>What contributes how much, the largest first; empty where there is no interval.</summary>
    public IReadOnlyList<BudgetLine> Budget => budget;

    /// <summary>What the interval would come to if one thing on the bench were better, what narrows it most first; more
    /// trials are always among them. Empty where there is no interval. O(budget), computed at each call.</summary>
    public IReadOnlyList<Improvement> Improvements => Improvement.Of(Budget, Confidence);

    /// <summary>What a reader of the result has to know besides; empty where there is nothing.</summary>
    public IReadOnlyList<string> Notes => notes;

    /// <summary>Value, interval and count, as a person would quote them: "412.10 ms (95 % interval 411.86 ms to
    /// 412.37 ms), n = 5"; where there is no interval, the reason stands in its place.</summary>
    public override string ToString()
    {
        var text = MeasuredText.Of(this);
        var trials = FormattableString.Invariant($"n = {Trials}");
        return text.Lower is null
            ? $"{text.Value} (no interval: {(Notes.Count > 0 ? Notes[0] : "none can be had")}), {trials}"
            : $"{text.Value} ({MeasuredText.Percent(Confidence)} interval {text.Lower} to {text.Upper}), {trials}";
    }
}

/// <summary>The part of a result that is there as a whole or not at all.</summary>
internal readonly record struct MeasuredSpread<T>(T StandardUncertainty, T Lower, T Upper, double DegreesOfFreedom)
    where T : struct;
