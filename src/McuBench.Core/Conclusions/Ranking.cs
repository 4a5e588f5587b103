using McuBench.Core.Boards;

namespace McuBench.Core.Conclusions;

/// <summary>The setups that executed one workload in the order of one quantity, with what the data can and can't tell
/// apart.</summary>
/// <remarks>Immutable; equal when all properties are equal, lists in order. Safe to use from many threads.</remarks>
public sealed record Ranking
{
    internal Ranking(
        Workload workload,
        ComparedQuantity quantity,
        IEnumerable<RankedSetup> places,
        IEnumerable<SetupSummary> unplaced,
        IEnumerable<RankGroup> groups,
        IEnumerable<AdjustedComparison> pairs,
        RankingBasis basis,
        string? probabilityMethod,
        IEnumerable<string> notes
    )
    {
        Workload = workload;
        Quantity = quantity;
        Places = ValueList<RankedSetup>.Of(places, "Places", nameof(places));
        Unplaced = ValueList<SetupSummary>.Of(unplaced, "Unplaced setups", nameof(unplaced));
        Groups = ValueList<RankGroup>.Of(groups, "Groups", nameof(groups));
        Pairs = ValueList<AdjustedComparison>.Of(pairs, "Pairs", nameof(pairs));
        Family = basis.Family;
        ComparisonsInFamily = basis.Comparisons;
        Confidence = basis.Confidence;
        Method = basis.Method;
        ProbabilityMethod = probabilityMethod;
        Notes = ValueList<string>.Of(notes, "Notes", nameof(notes));
    }

    /// <summary>The workload.</summary>
    public Workload Workload { get; }

    /// <summary>By what they are ranked; less is better.</summary>
    public ComparedQuantity Quantity { get; }

    /// <summary>The setups by value, the least first.</summary>
    public IReadOnlyList<RankedSetup> Places { get; }

    /// <summary>The setups whose figure has no interval, so that they have no place.</summary>
    public IReadOnlyList<SetupSummary> Unplaced { get; }

    /// <summary>The largest sets of setups no two of which are told apart, in order of their members' places; together
    /// they hold every placed setup. Empty where there are more than <see cref="MostGroups"/>, which the notes
    /// say.</summary>
    public IReadOnlyList<RankGroup> Groups { get; }

    /// <summary>All pairs of placed setups.</summary>
    public IReadOnlyList<AdjustedComparison> Pairs { get; }

    /// <summary>Which comparisons the pairs share their chance of a false claim with.</summary>
    public ClaimFamily Family { get; }

    /// <summary>How many comparisons the family has: those of all its rankings and suites that have a verdict.</summary>
    public int ComparisonsInFamily { get; }

    /// <summary>The confidence that the family makes no false claim, and that all its intervals hold at once.</summary>
    public double Confidence { get; }

    /// <summary>How differences, equalities and simultaneous intervals were come by.</summary>
    public string Method { get; }

    /// <summary>How the probabilities of places were come by, with seed and stream; null where there are none.</summary>
    public string? ProbabilityMethod { get; }

    /// <summary>What a reader of the ranking has to know besides.</summary>
    public IReadOnlyList<string> Notes { get; }

    /// <summary>The most groups that are listed.</summary>
    public const int MostGroups = 200;
}

/// <summary>What the claims of a ranking or suite rest on.</summary>
internal sealed record RankingBasis(ClaimFamily Family, int Comparisons, double Confidence, string Method);
