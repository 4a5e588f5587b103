using McuBench.Stats.Resampling;

namespace McuBench.Stats.Coverage;

/// <summary>What one run draws of a population: the same for every procedure.</summary>
public sealed class Scene
{
    /// <summary>The factor between <see cref="Scaled"/> and <see cref="First"/>.</summary>
    public const double Factor = 1.25;

    /// <summary>The distance between <see cref="Shifted"/> and <see cref="First"/>, a whole number so that ties stay
    /// ties.</summary>
    public const double Shift = 2;

    /// <summary>The slope of <see cref="Line"/>.</summary>
    public const double Slope = 4;

    private const int GroupCount = 4;

    private readonly Sample[] _groups = new Sample[GroupCount];
    private readonly Sample[] _specimens = new Sample[GroupCount];

    /// <summary>Draws a scene.</summary>
    /// <param name="population">The population.</param>
    /// <param name="count">Values a group.</param>
    /// <param name="random">The stream to draw from.</param>
    public Scene(Population population, int count, RandomStream random)
    {
        ArgumentNullException.ThrowIfNull(population);
        ArgumentNullException.ThrowIfNull(random);
        Population = population;
        Probability = random.Uniform();
        Seed = random.Bits();
        Further = population.Draw(random);
        for (int g = 0; g < GroupCount; g++)
        {
            double spread = g % 2 == 1 ? population.SpreadOfSecond : 1;
            _groups[g] = Sample.Of([
                .. Enumerable
                    .Range(0, count)
                    .Select(_ => population.Mean + spread * (population.Draw(random) - population.Mean)),
            ]);
        }

        for (int g = 0; g < GroupCount; g++)
        {
            double offset = random.Normal();
            _specimens[g] = Of(_groups[g], value => value + offset);
        }

        Scaled = Of(First, value => Factor * value);
        Shifted = Of(First, value => value + Shift);
    }

    /// <summary>The population.</summary>
    public Population Population { get; }

    /// <summary>The first group.</summary>
    public Sample First => _groups[0];

    /// <summary>The second group, independent of the first.</summary>
    public Sample Second => _groups[1];

    /// <summary>All groups.</summary>
    public ReadOnlySpan<Sample> Groups => _groups;

    /// <summary>All groups, each moved by a normal draw of its own, of variance 1.</summary>
    public ReadOnlySpan<Sample> Specimens => _specimens;

    /// <summary>The first group times <see cref="Factor"/>.</summary>
    public Sample Scaled { get; }

    /// <summary>The first group plus <see cref="Shift"/>.</summary>
    public Sample Shifted { get; }

    /// <summary>One further value of the first group's population.</summary>
    public double Further { get; }

    /// <summary>A probability, any as likely as another.</summary>
    public double Probability { get; }

    /// <summary>A seed for what draws by itself.</summary>
    public ulong Seed { get; }

    /// <summary>How many uniform values derived from the first group lie below <see cref="Probability"/>: the successes of
    /// as many trials as it has values.</summary>
    public int Successes
    {
        get
        {
            var random = RandomStream.Of(Seed);
            int successes = 0;
            for (int i = 0; i < First.Count; i++)
            {
                successes += random.Uniform() < Probability ? 1 : 0;
            }

            return successes;
        }
    }

    /// <summary>Abscissas 1, 1, 2, 2, 3 …, as many as the first group has values.</summary>
    public double[] Abscissas => [.. Enumerable.Range(0, First.Count).Select(i => 1.0 + i / 2)];

    /// <summary>Ordinates on a line of <see cref="Slope"/>, scattered as the first group.</summary>
    public double[] Line
    {
        get
        {
            double[] x = Abscissas;
            return [.. x.Select((at, i) => Slope * at + First.Values[i])];
        }
    }

    private static Sample Of(Sample sample, Func<double, double> change)
    {
        double[] values = sample.Values.ToArray();
        return Sample.Of(Array.ConvertAll(values, value => change(value)));
    }
}
