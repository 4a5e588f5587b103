namespace McuBench.Stats.Planning;

/// <summary>What a look at the values taken so far says.</summary>
/// <param name="Outlook">Whether more are to be taken.</param>
/// <param name="Count">How many were looked at.</param>
/// <param name="HalfWidth">Half the t interval of their mean, in their unit; absent for fewer than two.</param>
/// <param name="ReachedAt">The count at which the wanted width was first reached; absent before.</param>
/// <param name="Interval">What may be claimed in the end: the mean, and on either side the wanted half-width or the t
/// interval's, whichever is wider. Absent until enough or the maximum is reached.</param>
/// <param name="ExpectedCount">About how many values will be needed in all if the spread stays as seen, confirming ones
/// included; absent for fewer than two. Never more than the maximum.</param>
public sealed record SequentialDecision(
    SequentialOutlook Outlook,
    int Count,
    double? HalfWidth,
    int? ReachedAt,
    Interval? Interval,
    int? ExpectedCount
);
