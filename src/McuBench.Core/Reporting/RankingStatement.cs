using McuBench.Core.Conclusions;

namespace McuBench.Core.Reporting;

/// <summary>Says a ranking in sentences that can be quoted: who leads, who can't be told apart, and how likely each is to
/// be first.</summary>
public static class RankingStatement
{
    /// <summary>Chances below this are not worth a reader's time.</summary>
    private const double LeastChanceSaid = 0.01;

    /// <summary>Says the ranking in one to three sentences.</summary>
    /// <param name="ranking">The ranking.</param>
    public static string Of(Ranking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        var subject = $"By {Phrase.Noun(ranking.Quantity)} on the {ranking.Workload.Name}";
        if (ranking.Places.Count == 0)
        {
            return $"{subject} no setup has a place, since no figure has an interval.";
        }

        var first = ranking.Places[0];
        var lead = ranking.Places.Where(p => p.BestPlace == 1).ToArray();
        var said =
            lead.Length == 1
                ? ranking.Places.Count == 1
                    ? $"{subject} {first.Summary.Setup.Name} alone has a place."
                    : $"{subject} {first.Summary.Setup.Name} comes first, told apart from {Others(ranking.Places.Count - 1)}."
                : $"{subject} {Said.List(lead.Select(p => p.Summary.Setup.Name))} may each be first.";
        var chances = ranking.Places.Where(p => Chance(p) >= LeastChanceSaid).OrderByDescending(Chance).ToArray();
        if (lead.Length > 1 && chances.Length > 0)
        {
            said +=
                $" Chance of being first: {Said.List(chances.Select(p => $"{p.Summary.Setup.Name} {Phrase.Chance(Chance(p))}"))}.";
        }

        var groups = ranking.Groups.Where(g => g.Members.Count > 1).ToArray();
        return groups.Length == 0
            ? said
            : $"{said} Not told apart from one another: {string.Join("; ", groups.Select(g => Said.List(g.Members.Select(m => m.Summary.Setup.Name))))}.";
    }

    /// <summary>Says what the ranking's claims share their chance of an error with: "… among 45 comparisons of the
    /// study".</summary>
    /// <param name="ranking">The ranking.</param>
    public static string Basis(Ranking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        var of = ranking.Family == ClaimFamily.Study ? "this study" : $"the {ranking.Workload.Name}";
        return $"Told apart means: with {Phrase.Confidence(ranking.Confidence)} confidence none of the {Said.Count(ranking.ComparisonsInFamily, "comparison")} of {of} is called different that isn't.";
    }

    private static string Others(int count) => count == 1 ? "the other" : $"all {Phrase.Number(count)} others";

    private static double Chance(RankedSetup setup) =>
        setup.PlaceProbabilities.Count > 0 ? setup.PlaceProbabilities[0] : 0;
}
