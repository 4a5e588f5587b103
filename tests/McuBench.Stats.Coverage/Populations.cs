using McuBench.Stats.Distributions;

namespace McuBench.Stats.Coverage;

/// <summary>The populations, all of values above 0 as run times are.</summary>
public static class Populations
{
    private const double Centre = 10;
    private const double OutlierShare = 0.1;
    private const double OutlierCentre = 20;
    private const double TiedCentre = 10.3;

    private static readonly Normal Bell = Normal.Of(Centre, 1);
    private static readonly Normal OutlierBell = Normal.Of(OutlierCentre, 1);
    private static readonly Normal TiedBell = Normal.Of(TiedCentre, 1);

    /// <summary>All of them, in the order of the columns.</summary>
    public static IReadOnlyList<Population> All { get; } =
    [
        new()
        {
            Shape = Shapes.Normal,
            Name = "normal",
            Description = "normal, mean 10, standard deviation 1",
            Draw = random => Centre + random.Normal(),
            Cdf = Bell.Cdf,
            Quantile = Bell.Quantile,
            Mean = Centre,
            Variance = 1,
        },
        new()
        {
            Shape = Shapes.Lognormal,
            Name = "lognormal",
            Description = "the exponential of a standard normal value",
            Draw = random => Math.Exp(random.Normal()),
            Cdf = x => x <= 0 ? 0 : Normal.Standard.Cdf(Math.Log(x)),
            Quantile = p => Math.Exp(Normal.Standard.Quantile(p)),
            Mean = Math.Exp(0.5),
            Variance = (Math.E - 1) * Math.E,
        },
        new()
        {
            Shape = Shapes.Contaminated,
            Name = "contaminated",
            Description = "as normal, but one value in ten is drawn about 20 in place of 10",
            Draw = random => (random.Uniform() < OutlierShare ? OutlierCentre : Centre) + random.Normal(),
            Cdf = CdfOfContaminated,
            Quantile = p => Invert(CdfOfContaminated, p, 0, 2 * OutlierCentre),
            Mean = Centre + OutlierShare * (OutlierCentre - Centre),
            Variance = 1 + OutlierShare * (1 - OutlierShare) * (OutlierCentre - Centre) * (OutlierCentre - Centre),
        },
        new()
        {
            Shape = Shapes.Exponential,
            Name = "exponential",
            Description = "exponential, mean 1",
            Draw = random => -Math.Log(random.Uniform()),
            Cdf = x => x <= 0 ? 0 : 1 - Math.Exp(-x),
            Quantile = p => -Math.Log(1 - p),
            Mean = 1,
            Variance = 1,
        },
        new()
        {
            Shape = Shapes.Tied,
            Name = "tied",
            Description = "normal, mean 10.3, standard deviation 1, rounded to whole numbers",
            Draw = random => Math.Round(TiedCentre + random.Normal()),
            Cdf = x => TiedBell.Cdf(Math.Floor(x) + 0.5),
            Quantile = p => Math.Ceiling(TiedBell.Quantile(p) - 0.5),
            Mean = MomentOfTied(k => k),
            Variance = MomentOfTied(k => k * k) - MomentOfTied(k => k) * MomentOfTied(k => k),
        },
        new()
        {
            Shape = Shapes.Unequal,
            Name = "unequal spread",
            Description = "as normal, the standard deviation of every second group 3",
            Draw = random => Centre + random.Normal(),
            Cdf = Bell.Cdf,
            Quantile = Bell.Quantile,
            Mean = Centre,
            Variance = 1,
            SpreadOfSecond = 3,
        },
    ];

    private static double CdfOfContaminated(double x) =>
        (1 - OutlierShare) * Bell.Cdf(x) + OutlierShare * OutlierBell.Cdf(x);

    private static double MomentOfTied(Func<double, double> power)
    {
        double sum = 0;
        for (int k = -10; k <= 30; k++)
        {
            sum += power(k) * (TiedBell.Cdf(k + 0.5) - TiedBell.Cdf(k - 0.5));
        }

        return sum;
    }

    private static double Invert(Func<double, double> cdf, double p, double low, double high)
    {
        for (int i = 0; i < 80; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = cdf(middle) < p ? (middle, high) : (low, middle);
        }

        return high;
    }
}
