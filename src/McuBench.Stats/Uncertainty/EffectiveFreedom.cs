namespace McuBench.Stats.Uncertainty;

/// <summary>Effective degrees of freedom after Welch and Satterthwaite (gum-2008, G.2b).</summary>
internal static class EffectiveFreedom
{
    /// <summary>The effective degrees of freedom; null where correlated inputs don't share theirs.</summary>
    /// <param name="set">The inputs.</param>
    /// <param name="contributions">Signed contributions cᵢuᵢ.</param>
    /// <param name="variance">The variance of all of them together, above 0.</param>
    /// <remarks>The formula needs independent terms. Inputs that were read side by side n times are one term: any linear
    /// combination of their means has a variance with n − 1 degrees of freedom.</remarks>
    internal static double? Of(InputSet set, ReadOnlySpan<double> contributions, double variance)
    {
        double inverse = 0;
        foreach (var group in set.Groups)
        {
            double freedom = set.Inputs[group[0]].DegreesOfFreedom;
            double part = 0;
            foreach (int i in group)
            {
                if (!set.Inputs[i].DegreesOfFreedom.Equals(freedom))
                {
                    return null;
                }

                foreach (int j in group)
                {
                    part += contributions[i] * contributions[j] * set.Correlation(i, j);
                }
            }

            double share = part / variance;
            inverse += share * share / freedom;
        }

        return 1 / inverse;
    }
}
