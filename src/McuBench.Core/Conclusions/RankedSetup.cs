namespace McuBench.Core.Conclusions;

/// <summary>A setup's place in a ranking, how sure that place is, and which places the data leave it.</summary>
/// <remarks>Immutable; equal when all properties are equal, lists in order. Safe to use from many threads.</remarks>
public sealed record RankedSetup
{
    internal RankedSetup(
        int place,
        SetupSummary summary,
        int bestPlace,
        int worstPlace,
        IEnumerable<double> placeProbabilities
    )
    {
        Place = place;
        Summary = summary;
        BestPlace = bestPlace;
        WorstPlace = worstPlace;
        PlaceProbabilities = ValueList<double>.Of(
            placeProbabilities,
            "Place probabilities",
            nameof(placeProbabilities)
        );
    }

    /// <summary>Its place by value: 1 takes least.</summary>
    public int Place { get; }

    /// <summary>The setup's summary.</summary>
    public SetupSummary Summary { get; }

    /// <summary>The best place that the adjusted comparisons leave it: one more than the number of setups that are shown
    /// to take less.</summary>
    public int BestPlace { get; }

    /// <summary>The worst place that the adjusted comparisons leave it: the number of placed setups less those that are
    /// shown to take more.</summary>
    public int WorstPlace { get; }

    /// <summary>The probability of each place, the first first, adding up to 1; empty where the ranking has none (see its
    /// notes). No claim among many rests on these: they say where the setup would stand if all uncertainties are as
    /// stated.</summary>
    public IReadOnlyList<double> PlaceProbabilities { get; }
}
