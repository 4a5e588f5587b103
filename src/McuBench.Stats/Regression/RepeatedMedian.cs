using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Regression;

/// <summary>The median over points of the median slope from each to the others (siegel-1982), in O(n log² n) on average.</summary>
/// <remarks>For a bound t one sort tells for every point on which side of t its median lies. Bounds come from the exact
/// medians of a few points still in question, O(n) each, until few are left and all are found exactly.</remarks>
internal static class RepeatedMedian
{
    private const int FewPoints = 32;
    private const int MostRounds = 100;

    /// <summary>The median of the points' median slopes, of the points that have any slope.</summary>
    internal static double Of(SlopeOrder points)
    {
        int n = points.Count;
        int[] origin = points.AtInfinity(positive: false);
        int[] all = Inversions.CountEach(origin, points.AtInfinity(positive: true));
        var question = new List<int>(n);
        for (int i = 0; i < n; i++)
        {
            if (all[i] > 0)
            {
                question.Add(i);
            }
        }

        long count = question.Count;
        double upper = Select(points, origin, all, [.. question], count / 2);
        return count % 2 == 1 ? upper : Location.Middle(Select(points, origin, all, question, count / 2 - 1), upper);
    }

    private static double Select(SlopeOrder points, int[] origin, int[] all, List<int> question, long rank)
    {
        double[] scratch = new double[points.Count];
        ulong state = 0x9E3779B97F4A7C15;
        long below = 0;
        for (int round = 0; round < MostRounds && question.Count > FewPoints; round++)
        {
            double[] medians = new double[FewPoints];
            for (int i = 0; i < medians.Length; i++)
            {
                state ^= state << 13;
                state ^= state >> 7;
                state ^= state << 17;
                medians[i] = MedianFrom(points, question[(int)(state % (ulong)question.Count)], scratch);
            }

            medians.AsSpan().Sort();
            int centre = (int)((rank - below) * medians.Length / question.Count);
            int before = question.Count;
            Cut(points, origin, all, question, medians[Math.Max(0, centre - 6)], rank, ref below);
            Cut(points, origin, all, question, medians[Math.Min(medians.Length - 1, centre + 6)], rank, ref below);
            if (question.Count > before / 2)
            {
                double pivot = medians[centre];
                bool? isBelow = Cut(points, origin, all, question, Math.BitDecrement(pivot), rank, ref below);
                bool? isUpTo = Cut(points, origin, all, question, Math.BitIncrement(pivot), rank, ref below);
                if (isBelow == false && isUpTo == true)
                {
                    return pivot;
                }
            }
        }

        double[] rest = new double[question.Count];
        for (int i = 0; i < rest.Length; i++)
        {
            rest[i] = MedianFrom(points, question[i], scratch);
        }

        return Selection.Nth(rest, (int)(rank - below));
    }

    /// <summary>Keeps the points whose median may lie on the side of a bound that holds the rank.</summary>
    /// <returns>Whether that is the lower side; null where the bound does not tell.</returns>
    private static bool? Cut(
        SlopeOrder points,
        int[] origin,
        int[] all,
        List<int> question,
        double bound,
        long rank,
        ref long below
    )
    {
        int[] upTo = Inversions.CountEach(origin, points.After(bound));
        // A median of an even count is the middle of two slopes, and is on one side for sure only when both are.
        bool IsBelow(int point) => upTo[point] >= all[point] / 2 + 1;
        bool IsAbove(int point) => upTo[point] < (all[point] + 1) / 2;
        long surelyBelow = question.Count(IsBelow);
        long surelyAbove = question.Count(IsAbove);
        if (rank < below + surelyBelow)
        {
            question.RemoveAll(IsAbove);
            return true;
        }

        if (rank >= below + question.Count - surelyAbove)
        {
            below += question.RemoveAll(IsBelow);
            return false;
        }

        return null;
    }

    private static double MedianFrom(SlopeOrder points, int point, double[] scratch)
    {
        int filled = 0;
        for (int other = 0; other < points.Count; other++)
        {
            if (points.HasSlope(point, other))
            {
                scratch[filled++] = points.Slope(point, other);
            }
        }

        return Location.MedianInPlace(scratch.AsSpan(0, filled));
    }
}
