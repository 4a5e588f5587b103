namespace McuBench.Benchmarks.Ratios;

/// <summary>A row of the table: what the work took here and elsewhere.</summary>
internal sealed record RatioRow(RatioTask Task, Timing Here, Timing? R, Timing? Python)
{
    /// <summary>How many times as fast as the rival; null where there is none.</summary>
    internal double? Ratio => Rival is { } rival ? rival.Seconds / Here.Seconds : null;

    /// <summary>Whether the goal is missed.</summary>
    internal bool Misses => Ratio < Task.Goal;

    /// <summary>The largest relative difference of what the sides found from what was found here.</summary>
    internal double? LargestDifference
    {
        get
        {
            double[] all =
            [
                .. new[] { R, Python }
                    .Where(side => side is not null)
                    .SelectMany(side => side!.Values.Zip(Here.Values, (there, here) => Math.Abs(there / here - 1))),
            ];
            return all.Length == 0 ? null : all.Max();
        }
    }

    /// <summary>Whether the sides found what they should not have.</summary>
    internal bool Disagrees => Task.Tolerance is { } tolerance && LargestDifference > tolerance;

    private Timing? Rival =>
        Task.Rival switch
        {
            "R" => R,
            "Python" => Python,
            _ => null,
        };
}
