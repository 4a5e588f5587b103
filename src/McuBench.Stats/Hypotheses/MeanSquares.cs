using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>Mean squares with their degrees of freedom, and what follows for sums of multiples of them.</summary>
/// <param name="values">The mean squares.</param>
/// <param name="degreesOfFreedom">The degrees of freedom of each.</param>
internal sealed class MeanSquares(double[] values, int[] degreesOfFreedom)
{
    /// <summary>The number of mean squares.</summary>
    internal int Count => values.Length;

    internal double this[int row] => values[row];

    internal int DegreesOfFreedom(int row) => degreesOfFreedom[row];

    /// <summary>The sum of multiples.</summary>
    internal double Combine(ReadOnlySpan<double> multiples)
    {
        var sum = new CompensatedSum();
        for (int i = 0; i < values.Length; i++)
        {
            sum.Add(multiples[i] * values[i]);
        }

        return sum.Value;
    }

    /// <summary>The degrees of freedom of a chi-square variable with the mean and variance of the sum
    /// (satterthwaite-1946, eq. 17).</summary>
    internal double Satterthwaite(ReadOnlySpan<double> multiples)
    {
        double largest = 0;
        for (int i = 0; i < values.Length; i++)
        {
            largest = Math.Max(largest, Math.Abs(multiples[i] * values[i]));
        }

        double sum = 0;
        double squares = 0;
        for (int i = 0; i < values.Length; i++)
        {
            double part = multiples[i] * values[i] / largest;
            sum += part;
            squares += part * part / degreesOfFreedom[i];
        }

        return sum * sum / squares;
    }

    /// <summary>The modified large-sample interval of the expectation of the sum (graybill-wang-1980 where all multiples
    /// are positive; ting-1990 for others): exact when a single mean square carries it.</summary>
    internal (double Lower, double Upper) Interval(ReadOnlySpan<double> multiples, double confidence)
    {
        double tail = (1 - confidence) / 2;
        double estimate = Combine(multiples);
        double down = SquaredReach(multiples, tail, isLower: true);
        double up = SquaredReach(multiples, tail, isLower: false);
        return (estimate - Math.Sqrt(Math.Max(0, down)), estimate + Math.Sqrt(Math.Max(0, up)));
    }

    // The lower reach takes each positive multiple down and each negative one up; the upper one is the same with the signs
    // turned round.
    private double SquaredReach(ReadOnlySpan<double> multiples, double tail, bool isLower)
    {
        int falling = 0;
        foreach (double multiple in multiples)
        {
            falling += multiple != 0 && multiple > 0 == isLower ? 1 : 0;
        }

        double sum = 0;
        for (int i = 0; i < values.Length; i++)
        {
            if (multiples[i] == 0)
            {
                continue;
            }

            double part = Math.Abs(multiples[i]) * values[i];
            bool falls = multiples[i] > 0 == isLower;
            double share = falls ? Fall(i, tail) : Rise(i, tail);
            sum += share * share * part * part;
            for (int k = i + 1; k < values.Length; k++)
            {
                if (multiples[k] == 0)
                {
                    continue;
                }

                double both = part * Math.Abs(multiples[k]) * values[k];
                bool otherFalls = multiples[k] > 0 == isLower;
                if (falls != otherFalls)
                {
                    sum += both * (falls ? Opposed(i, k, tail, isLower) : Opposed(k, i, tail, isLower));
                }
                else if (falls)
                {
                    sum += both * Joint(i, k, tail) / (falling - 1);
                }
            }
        }

        return sum;
    }

    private double Fall(int i, double tail) =>
        1 - degreesOfFreedom[i] / ChiSquared.Of(degreesOfFreedom[i]).UpperQuantile(tail);

    private double Rise(int i, double tail) =>
        degreesOfFreedom[i] / ChiSquared.Of(degreesOfFreedom[i]).Quantile(tail) - 1;

    // The term that makes the interval exact where the true value is 0 and two mean squares of opposite sign carry it.
    private double Opposed(int falls, int rises, double tail, bool isLower)
    {
        // For the upper end the falling one is subtracted, and the quantile is that of the other over it.
        double f = isLower
            ? FisherF.Of(degreesOfFreedom[falls], degreesOfFreedom[rises]).UpperQuantile(tail)
            : FisherF.Of(degreesOfFreedom[rises], degreesOfFreedom[falls]).Quantile(tail);
        double fall = Fall(falls, tail);
        double rise = Rise(rises, tail);
        return isLower
            ? ((f - 1) * (f - 1) - fall * fall * f * f - rise * rise) / f
            : ((1 - f) * (1 - f) - rise * rise * f * f - fall * fall) / f;
    }

    // The same for two of one sign, which together are taken as one mean square with the degrees of freedom of both.
    private double Joint(int first, int second, double tail)
    {
        double a = degreesOfFreedom[first];
        double b = degreesOfFreedom[second];
        double both = 1 - (a + b) / ChiSquared.Of(a + b).UpperQuantile(tail);
        double one = Fall(first, tail);
        double other = Fall(second, tail);
        return both * both * (a + b) * (a + b) / (a * b) - one * one * a / b - other * other * b / a;
    }
}
