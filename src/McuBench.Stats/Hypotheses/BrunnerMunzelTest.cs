namespace McuBench.Stats.Hypotheses;

/// <summary>The Brunner–Munzel test of two samples.</summary>
internal static class BrunnerMunzelTest
{
    internal static TTestResult Of(Sample first, Sample second, BrunnerMunzelOptions options)
    {
        var error = PlacementError.Of(first, second);
        if (error.StandardError == 0)
        {
            throw new ArgumentException(
                "Samples must overlap and not be equal throughout; were apart, which leaves t undefined: use MannWhitney.",
                nameof(second)
            );
        }

        TTestResult test = TTest.Of(
            error.Superiority,
            error.StandardError,
            error.DegreesOfFreedom,
            first.Count + second.Count,
            "probability of superiority, Brunner-Munzel",
            new TTestOptions
            {
                NullValue = options.NullValue,
                Alternative = options.Alternative,
                Confidence = options.Confidence,
            }
        );
        // No probability lies beyond 0 or 1.
        Interval ends = test.Estimate.Interval!;
        var within = new Interval(Math.Max(0, ends.Lower), Math.Min(1, ends.Upper), ends.Confidence);
        return test with { Estimate = test.Estimate with { Interval = within } };
    }
}
