using McuBench.Stats.Distributions;

namespace McuBench.Stats.Planning;

/// <summary>The probability that two one-sided t tests both reject, exact for normal populations: Owen's Q
/// (phillips-1990), here as a mean over the sample's spread.</summary>
internal static class EquivalenceIntegral
{
    /// <summary>The probability that an estimate lies inside the margin by the critical distance on both sides.</summary>
    /// <param name="degreesOfFreedom">Those of the sample's spread.</param>
    /// <param name="margin">The margin, in true standard errors of the estimate.</param>
    /// <param name="difference">The true difference, in the same.</param>
    /// <param name="critical">The critical distance at a sample's spread equal to the true one, in the same.</param>
    internal static double Of(double degreesOfFreedom, double margin, double difference, double critical)
    {
        var spread = new ChiOverRootDf(degreesOfFreedom);
        // The density of u = log s falls like exp(νu) below and faster above: beyond these nothing is left of it.
        double root = Math.Sqrt(40 / degreesOfFreedom);
        double low = -root - 40 / degreesOfFreedom;
        // At and above this spread the margin leaves no room at all.
        double high = Math.Min(root, Math.Log(margin / critical));
        if (high <= low)
        {
            return 0;
        }

        double widest = 4 / Math.Sqrt(2 * degreesOfFreedom + margin * margin + 4);
        int panels = (int)Math.Ceiling((high - low) / widest);
        double width = (high - low) / panels;
        ReadOnlySpan<double> nodes = GaussLegendre.ForTails.Nodes;
        ReadOnlySpan<double> weights = GaussLegendre.ForTails.Weights;
        double sum = 0;
        for (int panel = 0; panel < panels; panel++)
        {
            for (int i = 0; i < nodes.Length; i++)
            {
                double u = low + width * (panel + nodes[i]);
                double room = margin - critical * Math.Exp(u);
                sum += weights[i] * spread.Density(u) * Within(room, difference);
            }
        }

        return sum * width;
    }

    /// <summary>The probability that a normal value around the difference lies within ±room; taken from the tail that
    /// leaves digits.</summary>
    private static double Within(double room, double difference)
    {
        double d = Math.Abs(difference);
        return d > room
            ? Normal.StandardUpperTail(d - room) - Normal.StandardUpperTail(d + room)
            : 1 - Normal.StandardUpperTail(room - d) - Normal.StandardUpperTail(room + d);
    }
}
