using System.Globalization;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Uncertainty;

/// <summary>An input of a measurement: its value, its standard uncertainty and how that was come by.</summary>
/// <remarks>
/// Immutable; equal when all properties are equal. Values and uncertainties are in one unit that the caller knows.
/// Degrees of freedom of a type B uncertainty say how well it is known itself (gum-2008, G.4.2): about ½ (Δu/u)⁻² for an
/// uncertainty that may be off by Δu; infinite where it is taken as certain.
/// </remarks>
public sealed record InputQuantity
{
    private static readonly double RootOfTwo = Math.Sqrt(2);
    private static readonly double RootOfThree = Math.Sqrt(3);
    private static readonly double RootOfSix = Math.Sqrt(6);

    private InputQuantity(string name, double value, double stated, double divisor, double degreesOfFreedom)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Check.Finite(value, "Value");
        Check.DegreesOfFreedom(degreesOfFreedom);
        Name = name;
        Value = value;
        Stated = stated;
        Divisor = divisor;
        DegreesOfFreedom = degreesOfFreedom;
    }

    /// <summary>The name, by which correlations and budgets refer to the input.</summary>
    public string Name { get; }

    /// <summary>The estimate of the input.</summary>
    public double Value { get; }

    /// <summary>What was given of the uncertainty, above 0: the half-width between limits, an expanded uncertainty, or
    /// for readings the standard deviation of one.</summary>
    public double Stated { get; }

    /// <summary>What <see cref="Stated"/> is divided by: √3 for rectangular limits, √6 for triangular, √2 for U-shaped, the
    /// coverage factor of an expanded uncertainty, √n for n readings, 1 for a standard uncertainty.</summary>
    public double Divisor { get; }

    /// <summary>The standard uncertainty, above 0.</summary>
    public double StandardUncertainty => Stated / Divisor;

    /// <summary>The degrees of freedom of the standard uncertainty, above 0, possibly infinite.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>Whether the uncertainty comes from scatter or from other knowledge.</summary>
    public EvaluationType Evaluation { get; private init; } = EvaluationType.TypeB;

    /// <summary>The shape that Monte Carlo draws. Student's t stands for every uncertainty of finite degrees of freedom
    /// that has no limits, scaled by <see cref="StandardUncertainty"/> (gum-s1-2008, 6.4.9).</summary>
    public InputShape Shape { get; private init; }

    /// <summary>The mean of repeated readings, with s/√n at n − 1 degrees of freedom (gum-2008, 4.2). O(n).</summary>
    /// <param name="name">The name of the input.</param>
    /// <param name="readings">Two readings or more that are not all equal.</param>
    /// <exception cref="ArgumentException">There is one reading only, or all are equal: then scatter says nothing and
    /// the resolution has to be stated as limits.</exception>
    public static InputQuantity FromReadings(string name, Sample readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Check.AtLeast(readings.Count, 2, nameof(readings));
        double scatter = Scale.StandardDeviation(readings.Values);
        if (!(scatter > 0))
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Readings must scatter to show an uncertainty; were {readings.Count} times {readings.Values[0]}: state the resolution as rectangular limits."
                ),
                nameof(readings)
            );
        }

        return new InputQuantity(
            name,
            Location.Mean(readings.Values),
            scatter,
            Math.Sqrt(readings.Count),
            readings.Count - 1
        )
        {
            Evaluation = EvaluationType.TypeA,
            Shape = InputShape.StudentT,
        };
    }

    /// <summary>A value with its standard uncertainty.</summary>
    /// <param name="name">The name of the input.</param>
    /// <param name="value">The estimate, finite.</param>
    /// <param name="standardUncertainty">The standard uncertainty, above 0.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom, above 0; infinite where it is taken as certain.</param>
    /// <param name="evaluation">How it was come by.</param>
    /// <exception cref="ArgumentException">The name is blank or a number is outside its range.</exception>
    public static InputQuantity FromStandardUncertainty(
        string name,
        double value,
        double standardUncertainty,
        double degreesOfFreedom = double.PositiveInfinity,
        EvaluationType evaluation = EvaluationType.TypeB
    )
    {
        Check.Positive(standardUncertainty, "Standard uncertainty");
        Check.Named(evaluation);
        return new InputQuantity(name, value, standardUncertainty, 1, degreesOfFreedom)
        {
            Evaluation = evaluation,
            Shape = Unlimited(degreesOfFreedom),
        };
    }

    /// <summary>A value with its expanded uncertainty, as certificates state it (gum-2008, 4.3.3).</summary>
    /// <param name="name">The name of the input.</param>
    /// <param name="value">The estimate, finite.</param>
    /// <param name="expandedUncertainty">The expanded uncertainty, above 0.</param>
    /// <param name="coverageFactor">The factor by which it was expanded, above 0.</param>
    /// <param name="degreesOfFreedom">The degrees of freedom, above 0; infinite where none are stated.</param>
    /// <exception cref="ArgumentException">The name is blank or a number is outside its range.</exception>
    public static InputQuantity FromExpanded(
        string name,
        double value,
        double expandedUncertainty,
        double coverageFactor,
        double degreesOfFreedom = double.PositiveInfinity
    )
    {
        Check.Positive(expandedUncertainty, "Expanded uncertainty");
        Check.Positive(coverageFactor, "Coverage factor");
        return new InputQuantity(name, value, expandedUncertainty, coverageFactor, degreesOfFreedom)
        {
            Shape = Unlimited(degreesOfFreedom),
        };
    }

    /// <summary>A value that may lie anywhere within limits (gum-2008, 4.3.7): u = half-width/√3.</summary>
    /// <param name="name">The name of the input.</param>
    /// <param name="value">The middle between the limits, finite.</param>
    /// <param name="halfWidth">Half the distance of the limits, above 0.</param>
    /// <param name="degreesOfFreedom">How well the limits are known: degrees of freedom above 0, infinite for certain.</param>
    /// <exception cref="ArgumentException">The name is blank or a number is outside its range.</exception>
    public static InputQuantity FromRectangular(
        string name,
        double value,
        double halfWidth,
        double degreesOfFreedom = double.PositiveInfinity
    ) => Limited(name, value, halfWidth, RootOfThree, degreesOfFreedom, InputShape.Rectangular);

    /// <summary>A value within limits, the middle likeliest (gum-2008, 4.3.9): u = half-width/√6.</summary>
    /// <param name="name">The name of the input.</param>
    /// <param name="value">The middle between the limits, finite.</param>
    /// <param name="halfWidth">Half the distance of the limits, above 0.</param>
    /// <param name="degreesOfFreedom">How well the limits are known: degrees of freedom above 0, infinite for certain.</param>
    /// <exception cref="ArgumentException">The name is blank or a number is outside its range.</exception>
    public static InputQuantity FromTriangular(
        string name,
        double value,
        double halfWidth,
        double degreesOfFreedom = double.PositiveInfinity
    ) => Limited(name, value, halfWidth, RootOfSix, degreesOfFreedom, InputShape.Triangular);

    /// <summary>A value that swings between limits as a sine does (gum-2008, H.1.3.3): u = half-width/√2.</summary>
    /// <param name="name">The name of the input.</param>
    /// <param name="value">The middle between the limits, finite.</param>
    /// <param name="halfWidth">Half the distance of the limits, above 0.</param>
    /// <param name="degreesOfFreedom">How well the limits are known: degrees of freedom above 0, infinite for certain.</param>
    /// <exception cref="ArgumentException">The name is blank or a number is outside its range.</exception>
    public static InputQuantity FromUShaped(
        string name,
        double value,
        double halfWidth,
        double degreesOfFreedom = double.PositiveInfinity
    ) => Limited(name, value, halfWidth, RootOfTwo, degreesOfFreedom, InputShape.UShaped);

    private static InputQuantity Limited(
        string name,
        double value,
        double halfWidth,
        double divisor,
        double degreesOfFreedom,
        InputShape shape
    )
    {
        Check.Positive(halfWidth, "Half-width");
        return new InputQuantity(name, value, halfWidth, divisor, degreesOfFreedom) { Shape = shape };
    }

    private static InputShape Unlimited(double degreesOfFreedom) =>
        double.IsPositiveInfinity(degreesOfFreedom) ? InputShape.Normal : InputShape.StudentT;
}
