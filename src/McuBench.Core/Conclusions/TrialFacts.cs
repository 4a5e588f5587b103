using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>What comparisons ask of a series' circumstances, gathered once, so that a pair costs nothing per trial.</summary>
internal sealed record TrialFacts
{
    private const string NotKnown = "not known";

    private readonly ValueList<SessionSpan> spans;

    private TrialFacts(IReadOnlyList<Trial> trials)
    {
        Sessions = Names(trials, t => t.Session);
        Connections = Names(trials, t => t.Connection);
        double[] kelvins = [.. trials.Select(t => t.Temperature).OfType<Temperature>().Select(t => Si.Kelvins(t))];
        MeanKelvins = kelvins.Length == 0 ? null : kelvins.Average();
        var isOrdered = trials.All(t => t.Order is not null);
        spans = ValueList<SessionSpan>.Of(
            isOrdered
                ? trials
                    .GroupBy(t => t.Session ?? "", StringComparer.Ordinal)
                    .Select(g => new SessionSpan(g.Key, g.Min(t => t.Order!.Value), g.Max(t => t.Order!.Value)))
                    .OrderBy(s => s.Session, StringComparer.Ordinal)
                : [],
            "Sessions",
            nameof(trials)
        );
    }

    /// <summary>The sessions' names in words.</summary>
    public string Sessions { get; }

    /// <summary>The cables and ports in words.</summary>
    public string Connections { get; }

    /// <summary>The mean temperature, where any was noted.</summary>
    public double? MeanKelvins { get; }

    /// <summary>From where to where in the study's order each session's trials went; empty where an order isn't known.</summary>
    public IReadOnlyList<SessionSpan> Spans => spans;

    public static TrialFacts Of(TrialSeries series) => new(series.Trials);

    /// <summary>Whether, in every session that both were run in (an unnamed one counts as a session), all trials of one
    /// came before all of the other, in the same direction: a drift of the bench would then look like a difference. False
    /// where an order isn't known or no session is shared.</summary>
    public static bool IsOrderConfounded(TrialFacts first, TrialFacts second)
    {
        var others = second.Spans.ToDictionary(s => s.Session, StringComparer.Ordinal);
        var directions = new HashSet<bool>();
        foreach (var span in first.Spans)
        {
            if (!others.TryGetValue(span.Session, out var other))
            {
                continue;
            }

            if (span.Last >= other.First && span.First <= other.Last)
            {
                return false;
            }

            directions.Add(span.Last < other.First);
        }

        return directions.Count == 1;
    }

    private static string Names(IReadOnlyList<Trial> trials, Func<Trial, string?> of)
    {
        string[] names =
        [
            .. trials.Select(of).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal),
        ];
        return names.Length == 0 ? NotKnown : Said.List(names);
    }
}

/// <summary>Where a session's trials of one series stand in the study's order.</summary>
internal sealed record SessionSpan(string Session, int First, int Last);
