namespace McuBench.Core.Conclusions;

/// <summary>
/// A number with what each independent source contributes to its uncertainty, to first order (GUM 5.1, and 5.2 for
/// results that share a source). What two numbers share cancels or adds up by itself when they are combined.
/// </summary>
/// <remarks>In SI units that the caller knows. Immutable.</remarks>
internal sealed record UncertainValue
{
    private readonly ValueList<Contribution> contributions;

    private UncertainValue(double value, IEnumerable<Contribution> contributions, string? missing)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentOutOfRangeException(
                nameof(value),
                value,
                FormattableString.Invariant($"A result must be a finite number; was {value}.")
            );
        }

        Value = value;
        Missing = missing;
        this.contributions = ValueList<Contribution>.Of(
            contributions.Where(c => c.Amount != 0).OrderBy(c => c.Source.Key, StringComparer.Ordinal),
            "Contributions",
            nameof(contributions)
        );
    }

    public double Value { get; }

    /// <summary>Why there can be no interval; null where there can.</summary>
    public string? Missing { get; }

    public IReadOnlyList<Contribution> Contributions => contributions;

    public double StandardUncertainty => Math.Sqrt(contributions.Sum(c => c.Amount * c.Amount));

    /// <summary>Welch–Satterthwaite (GUM G.4.1, equation G.2b); positive infinity where no component was estimated from
    /// scatter.</summary>
    public double DegreesOfFreedom
    {
        get
        {
            var scale = contributions.Count == 0 ? 0 : contributions.Max(c => Math.Abs(c.Amount));
            if (scale == 0)
            {
                return double.PositiveInfinity;
            }

            double variance = 0;
            double spread = 0;
            foreach (var (source, amount) in contributions)
            {
                // Scaled first: fourth powers of nanoamperes leave the range of a double.
                var square = amount / scale * (amount / scale);
                variance += square;
                spread += square * square / source.DegreesOfFreedom;
            }

            return spread == 0 ? double.PositiveInfinity : variance * variance / spread;
        }
    }

    public static UncertainValue Exact(double value) => new(value, [], missing: null);

    public static UncertainValue Of(double value, params IEnumerable<Contribution> contributions) =>
        new(value, contributions, missing: null);

    /// <summary>The same value, from which no interval can be made.</summary>
    public UncertainValue WithMissing(string reason) => new(Value, contributions, reason);

    public UncertainValue Plus(UncertainValue other) => Combined(other, Value + other.Value, 1, 1);

    public UncertainValue Minus(UncertainValue other) => Combined(other, Value - other.Value, 1, -1);

    public UncertainValue Times(UncertainValue other) => Combined(other, Value * other.Value, other.Value, Value);

    public UncertainValue Over(UncertainValue other)
    {
        var quotient = Value / other.Value;
        return Combined(other, quotient, 1 / other.Value, -quotient / other.Value);
    }

    /// <summary>A power of the value, which must be above zero.</summary>
    public UncertainValue Power(double exponent)
    {
        var power = Math.Pow(Value, exponent);
        return new(power, contributions.Select(c => c with { Amount = c.Amount * exponent * power / Value }), Missing);
    }

    /// <summary>The geometric mean of numbers above zero, each with the same weight.</summary>
    public static UncertainValue GeometricMean(IReadOnlyList<UncertainValue> values)
    {
        // Powers first: the product of many small numbers leaves the range of a double.
        var mean = Exact(1);
        foreach (var value in values)
        {
            mean = mean.Times(value.Power(1.0 / values.Count));
        }

        return mean;
    }

    public UncertainValue Times(double factor) =>
        new(Value * factor, contributions.Select(c => c with { Amount = c.Amount * factor }), Missing);

    /// <summary>The value with one more relative contribution, of a source that it does not hold yet.</summary>
    public UncertainValue WithRelative(Source source, double relative) =>
        new(Value, contributions.Append(new Contribution(source, relative * Value)), Missing);

    /// <summary>The covariance with another value, through the sources that both hold (GUM 5.2, F.1.2.3).</summary>
    public double CovarianceWith(UncertainValue other)
    {
        var amounts = other.contributions.ToDictionary(c => c.Source.Key, c => c.Amount, StringComparer.Ordinal);
        return contributions.Sum(c => c.Amount * amounts.GetValueOrDefault(c.Source.Key));
    }

    /// <summary>The same value without what some sources contribute.</summary>
    public UncertainValue Without(IReadOnlySet<string> keys) =>
        new(Value, contributions.Where(c => !keys.Contains(c.Source.Key)), Missing);

    /// <summary>The same value with the variance and the degrees of freedom of one source multiplied.</summary>
    public UncertainValue WithScaled(string key, double variance, double degreesOfFreedom) =>
        new(
            Value,
            contributions.Select(c =>
                string.Equals(c.Source.Key, key, StringComparison.Ordinal)
                    ? new Contribution(
                        c.Source with
                        {
                            DegreesOfFreedom = c.Source.DegreesOfFreedom * degreesOfFreedom,
                        },
                        c.Amount * Math.Sqrt(variance)
                    )
                    : c
            ),
            Missing
        );

    private UncertainValue Combined(UncertainValue other, double value, double bySelf, double byOther)
    {
        var amounts = new Dictionary<string, Contribution>(StringComparer.Ordinal);
        foreach (var contribution in contributions)
        {
            amounts.Add(contribution.Source.Key, contribution with { Amount = contribution.Amount * bySelf });
        }

        foreach (var contribution in other.contributions)
        {
            var amount = contribution.Amount * byOther;
            var key = contribution.Source.Key;
            amounts[key] = contribution with
            {
                Amount = amounts.TryGetValue(key, out var known) ? Sum(known.Amount, amount) : amount,
            };
        }

        return new UncertainValue(value, amounts.Values, Missing ?? other.Missing);
    }

    /// <summary>A sum in which what cancels, cancels: rounding would leave dust that shows as a source of its own.</summary>
    private static double Sum(double a, double b)
    {
        var sum = a + b;
        return Math.Abs(sum) > 1e-12 * (Math.Abs(a) + Math.Abs(b)) ? sum : 0;
    }
}
