using System.Globalization;

namespace McuBench.Stats.Planning;

/// <summary>The argument checks that plans share.</summary>
internal static class PlanCheck
{
    internal static void Significance(double value, string name)
    {
        if (!(value > 0 && value < 1))
        {
            throw Check.OutOfRange(name, "Significance", "above 0 and below 1", value);
        }
    }

    /// <summary>Refuses a wanted power that chance alone gives, or that no count gives.</summary>
    internal static void Power(double value, double significance)
    {
        if (!(value > significance && value < 1))
        {
            throw Check.OutOfRange(
                "power",
                "Power",
                string.Create(CultureInfo.InvariantCulture, $"above the significance {significance} and below 1"),
                value
            );
        }
    }

    internal static void Assurance(double value)
    {
        if (!(value > 0 && value < 1))
        {
            throw Check.OutOfRange("assurance", "Assurance", "above 0 and below 1", value);
        }
    }

    /// <summary>Refuses an effect of which no count could be told to be in the wanted direction.</summary>
    internal static void Effect(double effect, PowerOptions options, string name)
    {
        Check.Finite(effect, "Effect", name);
        if (!(options.Upward(effect) > 0))
        {
            throw Check.OutOfRange(name, "Effect", "in the direction of the alternative and not 0", effect);
        }
    }

    internal static void TrueDifference(double difference, double margin, string name)
    {
        if (!(Math.Abs(difference) < margin))
        {
            throw Check.OutOfRange(
                name,
                "True difference",
                string.Create(CultureInfo.InvariantCulture, $"within the margin of ±{margin}"),
                difference
            );
        }
    }
}
