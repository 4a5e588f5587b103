namespace McuBench.Stats.Planning;

/// <summary>Finds the smallest count, or the smallest effect, at which a probability is reached.</summary>
internal static class PlanSearch
{
    // More values than anybody takes; beyond it the plan is the wrong question.
    internal const int MostValues = 10_000_000;

    private const double LargestEffect = 1e6;

    /// <summary>The smallest count from <paramref name="least"/> on whose probability is at least the wanted one, for a
    /// probability that rises with the count. O(log n) probabilities.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not even the most values would do; worded for
    /// <paramref name="name"/>.</exception>
    internal static int SmallestCount(Func<int, double> probability, double wanted, int least, string name)
    {
        int below = least - 1;
        int count = least;
        while (probability(count) < wanted)
        {
            if (count == MostValues)
            {
                throw new ArgumentOutOfRangeException(
                    name,
                    $"Count of values must be at most {MostValues:E0} in a sample; this plan needs more, so ask for less."
                );
            }

            below = count;
            count = Math.Min(2 * count, MostValues);
        }

        while (count - below > 1)
        {
            int middle = below + (count - below) / 2;
            if (probability(middle) < wanted)
            {
                below = middle;
            }
            else
            {
                count = middle;
            }
        }

        return count;
    }

    /// <summary>The smallest positive size whose probability is the wanted one, to the last few digits, for a probability
    /// that rises with the size. Some sixty probabilities.</summary>
    /// <exception cref="ArgumentException">No size reaches it.</exception>
    internal static double SmallestSize(Func<double, double> probability, double wanted, string name)
    {
        double below = 0;
        double size = 1;
        while (probability(size) < wanted)
        {
            below = size;
            size *= 2;
            if (size > LargestEffect)
            {
                throw new ArgumentException(
                    "Counts must be large enough that an effect of some size reaches the power; were not.",
                    name
                );
            }
        }

        // Down to adjacent numbers, or to where the probability no longer tells them apart.
        while (true)
        {
            double middle = below + (size - below) / 2;
            if (middle <= below || middle >= size || size - below < 1e-14 * size)
            {
                return size;
            }

            if (probability(middle) < wanted)
            {
                below = middle;
            }
            else
            {
                size = middle;
            }
        }
    }
}
