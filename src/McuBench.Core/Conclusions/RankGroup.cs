namespace McuBench.Core.Conclusions;

/// <summary>Setups of a ranking no two of which the data tell apart, and to which none can be added. A setup may be in
/// several groups: not being told apart is not being equal, and doesn't pass on from one to the next.</summary>
/// <remarks>Immutable; equal when the members are equal in order. Safe to use from many threads.</remarks>
public sealed record RankGroup
{
    internal RankGroup(IEnumerable<RankedSetup> members) =>
        Members = ValueList<RankedSetup>.Of(members, "Members", nameof(members));

    /// <summary>The members, by place; a single one is told apart from all others.</summary>
    public IReadOnlyList<RankedSetup> Members { get; }
}
