using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>Says what an interval's width is made of, and which improvement of the bench would pay.</summary>
public static class BudgetStatement
{
    /// <summary>Says the largest component, the change that would narrow the interval most, and whether more trials
    /// would.</summary>
    /// <param name="result">Any result.</param>
    public static string Of<T>(Measured<T> result)
        where T : struct
    {
        ArgumentNullException.ThrowIfNull(result);
        if (!result.HasInterval)
        {
            return $"There is no interval to narrow: {(result.Notes.Count > 0 ? result.Notes[0] : "none can be had.")}";
        }

        var first = result.Budget[0];
        var said = $"{Said.Percent(first.Share)} of the variance is {first.Component}.";
        var trials = result.Improvements.First(i => i.Kind == BudgetKind.Scatter);
        var other = result.Improvements.FirstOrDefault(i => i.Kind != BudgetKind.Scatter);
        return other is { Pays: true }
                ? $"{said} {Effect(other)}; {Effect(trials)[..1].ToLowerInvariant()}{Effect(trials)[1..]}."
            : trials.Pays ? $"{said} {Effect(trials)}; no finer instrument would do as much."
            : $"{said} {Effect(trials)}, and no single finer instrument would either.";
    }

    private static string Effect(Improvement improvement) =>
        improvement.Pays
            ? $"{Phrase.Capital(improvement.Change)} would narrow this interval to {Said.Number(improvement.WidthFactor, 2)} of its width"
            : $"{Phrase.Capital(improvement.Change)} would not narrow it";
}
