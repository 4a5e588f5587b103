namespace McuBench.Stats.Intervals;

/// <summary>Estimates whose interval runs between two order statistics.</summary>
internal static class OrderStatistics
{
    /// <summary>An estimate between the order statistics of two ranks, counted from 1; rank 0 and the rank after the last
    /// stand for no bound on that side. A note gives ranks and the confidence reached.</summary>
    internal static Estimate Between(
        Sample sample,
        double value,
        (long Lower, long Upper) ranks,
        double confidence,
        double reached,
        string method
    )
    {
        int n = sample.Count;
        double lower = ranks.Lower == 0 ? double.NegativeInfinity : sample.Sorted[(int)ranks.Lower - 1];
        double upper = ranks.Upper == n + 1L ? double.PositiveInfinity : sample.Sorted[(int)ranks.Upper - 1];
        string which =
            ranks.Lower == 0 ? FormattableString.Invariant($"Order statistic {ranks.Upper}")
            : ranks.Upper == n + 1L ? FormattableString.Invariant($"Order statistic {ranks.Lower}")
            : FormattableString.Invariant($"Order statistics {ranks.Lower} and {ranks.Upper}");
        string note = FormattableString.Invariant($"{which} of {n}; confidence reached {reached:0.0000}.");
        return WithEnds(value, n, lower, upper, confidence, method, note);
    }

    /// <summary>An estimate with its interval, or with a note where ties make the ends equal.</summary>
    internal static Estimate WithEnds(
        double value,
        int count,
        double lower,
        double upper,
        double confidence,
        string method,
        string note
    ) =>
        lower < upper
            ? new Estimate(value, count, method) { Interval = new Interval(lower, upper, confidence), Notes = [note] }
            : new Estimate(value, count, method)
            {
                Notes = [note, "Both ends are equal: the spread is not resolved, so no interval."],
            };

    /// <summary>The refusal of a request that needs more values, saying how many.</summary>
    internal static ArgumentException TooFew(string purpose, double needed, int was, string name = "sample") =>
        new(
            FormattableString.Invariant($"Count of values must be at least {needed:0} for {purpose}; was {was}."),
            name
        );
}
