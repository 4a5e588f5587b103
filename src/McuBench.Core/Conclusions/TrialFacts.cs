using McuBench.Core.Quantities;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Conclusions;

/// <summary>What comparisons ask of a series' circumstances, gathered once, so that a pair costs nothing per trial.</summary>
internal sealed record TrialFacts
{
    private const string NotKnown = "not known";

    private const double MostLopsided = 2.5;

    private readonly bool isOrdered;
    private readonly bool isInSessions;
    private readonly ValueList<SessionSpan> spans;

    private TrialFacts(IReadOnlyList<Trial> trials)
    {
        Sessions = Names(trials, t => t.Session);
        Connections = Names(trials, t => t.Connection);
        double[] kelvins = [.. trials.Select(t => t.Temperature).OfType<Temperature>().Select(t => Si.Kelvins(t))];
        MeanKelvins = kelvins.Length == 0 ? null : kelvins.Average();
        isOrdered = trials.All(t => t.Order is not null);
        isInSessions = trials.All(t => t.Session is not null);
        spans = ValueList<SessionSpan>.Of(
            trials
                .GroupBy(t => isInSessions ? t.Session! : "", StringComparer.Ordinal)
                .Select(g => SessionSpan.Of(g.Key, [.. g.Select(t => t.Order ?? 0)]))
                .OrderBy(s => s.Session, StringComparer.Ordinal),
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

    public static TrialFacts Of(TrialSeries series) => new(series.Trials);

    /// <summary>How the trials of two setups lie to each other in the order in which they were run, session by session
    /// where every trial of both names its session. O(number of sessions).</summary>
    /// <remarks>
    /// A drift that is steady over a session shifts the two means apart by the difference of their mean places. In a
    /// random order that difference has the variance L²(1/n + 1/m)/12, L being the session's length; beyond
    /// <see cref="MostLopsided"/> of its standard deviations it is no longer put down to chance, which happens in one
    /// random order of eighty. A drift of one standard deviation of run times over a session then makes a difference
    /// of up to 0.7 standard errors, and 11 % of equal setups look different.
    /// </remarks>
    public static OrderRelation Relation(TrialFacts first, TrialFacts second)
    {
        var areInSessions = first.isInSessions && second.isInSessions;
        var shared = areInSessions ? Shared(first.spans, second.spans) : [(first.Whole, second.Whole)];
        if (shared.Count == 0)
        {
            return OrderRelation.SessionsApart;
        }

        // Where both hold the first place, trials were counted for each setup apart, or started together.
        if (!first.isOrdered || !second.isOrdered || shared.Exists(s => s.First.First == s.Second.First))
        {
            return OrderRelation.NotKnown;
        }

        if (
            shared.TrueForAll(s => s.First.Last < s.Second.First)
            || shared.TrueForAll(s => s.Second.Last < s.First.First)
        )
        {
            return OrderRelation.OneBeforeTheOther;
        }

        double ahead = 0;
        double variance = 0;
        foreach (var (a, b) in shared)
        {
            var length = Math.Max(a.Last, b.Last) - Math.Min(a.First, b.First) + 1.0;
            var weight = (double)a.Count * b.Count / (a.Count + b.Count);
            ahead += weight * (a.Mean - b.Mean) / length;
            variance += weight / 12;
        }

        return Math.Abs(ahead) > MostLopsided * Math.Sqrt(variance)
            ? OrderRelation.OneMostlyBeforeTheOther
            : OrderRelation.Mixed;
    }

    private static List<(SessionSpan First, SessionSpan Second)> Shared(
        IReadOnlyList<SessionSpan> first,
        IReadOnlyList<SessionSpan> second
    )
    {
        var others = second.ToDictionary(s => s.Session, StringComparer.Ordinal);
        return [.. first.Where(s => others.ContainsKey(s.Session)).Select(s => (s, others[s.Session]))];
    }

    private SessionSpan Whole => spans.Count == 1 ? spans[0] : SessionSpan.Joined(spans);

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
internal sealed record SessionSpan(string Session, int Count, int First, int Last, double Mean)
{
    public static SessionSpan Of(string session, int[] places) =>
        new(session, places.Length, places.Min(), places.Max(), places.Average());

    public static SessionSpan Joined(IReadOnlyList<SessionSpan> spans)
    {
        var count = spans.Sum(s => s.Count);
        return new SessionSpan(
            "",
            count,
            spans.Min(s => s.First),
            spans.Max(s => s.Last),
            spans.Sum(s => s.Mean * s.Count) / count
        );
    }
}
