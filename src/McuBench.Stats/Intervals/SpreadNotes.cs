namespace McuBench.Stats.Intervals;

/// <summary>The notes that stand where no interval can, worded once.</summary>
internal static class SpreadNotes
{
    internal const string OneValue = "One value shows no spread: no interval.";

    internal const string AllEqual = "All values are equal: the spread is not resolved, so no interval.";

    internal const string MiddleEqual =
        "The values about both medians are equal: the spread is not resolved, so no interval.";
}
