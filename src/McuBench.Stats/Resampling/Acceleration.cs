namespace McuBench.Stats.Resampling;

/// <summary>The acceleration of a BCa interval from a jackknife: a sixth of the skewness of what each unit adds
/// (efron-1987; for several samples or strata davison-hinkley-1997, 3.2 and 5.3).</summary>
internal static class Acceleration
{
    /// <summary>The acceleration from the statistic without each unit, sample by sample; 0 where leaving one out changes
    /// nothing, null where a sample has one unit.</summary>
    internal static double? Of(params ReadOnlySpan<double[]> leftOut)
    {
        double largest = 0;
        foreach (double[] sample in leftOut)
        {
            if (sample.Length < 2)
            {
                return null;
            }

            double mean = sample.Average();
            foreach (double value in sample)
            {
                largest = Math.Max(largest, Math.Abs(mean - value) / sample.Length);
            }
        }

        if (largest == 0)
        {
            return 0;
        }

        double cubes = 0;
        double squares = 0;
        foreach (double[] sample in leftOut)
        {
            double n = sample.Length;
            double mean = sample.Average();
            foreach (double value in sample)
            {
                // In shares of the largest, so that cubes neither overflow nor vanish.
                double influence = (n - 1) / n * ((mean - value) / largest);
                cubes += influence * influence * influence;
                squares += influence * influence;
            }
        }

        return cubes / (6 * squares * Math.Sqrt(squares));
    }
}
