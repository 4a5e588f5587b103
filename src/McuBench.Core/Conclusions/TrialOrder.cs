using McuBench.Core.Trials;

namespace McuBench.Core.Conclusions;

/// <summary>Whether two series were run one after the other, so that a drift of the bench would look like a difference.</summary>
internal static class TrialOrder
{
    /// <summary>Whether, in every session that both series were run in (an unnamed one counts as a session), all trials
    /// of one came before all of the other, in the same direction. False where an order isn't known or no session is
    /// shared.</summary>
    public static bool IsConfounded(TrialSeries first, TrialSeries second)
    {
        if (first.Trials.Any(t => t.Order is null) || second.Trials.Any(t => t.Order is null))
        {
            return false;
        }

        var sessions = second
            .Trials.GroupBy(SessionOf, StringComparer.Ordinal)
            .ToDictionary(
                g => g.Key,
                g => (Least: g.Min(t => t.Order!.Value), Most: g.Max(t => t.Order!.Value)),
                StringComparer.Ordinal
            );
        var directions = new HashSet<bool>();
        foreach (var session in first.Trials.GroupBy(SessionOf, StringComparer.Ordinal))
        {
            if (!sessions.TryGetValue(session.Key, out var other))
            {
                continue;
            }

            var least = session.Min(t => t.Order!.Value);
            var most = session.Max(t => t.Order!.Value);
            if (most >= other.Least && least <= other.Most)
            {
                return false;
            }

            directions.Add(most < other.Least);
        }

        return directions.Count == 1;
    }

    private static string SessionOf(Trial trial) => trial.Session ?? "";
}
