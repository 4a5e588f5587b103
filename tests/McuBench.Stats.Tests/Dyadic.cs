using FsCheck;
using FsCheck.Fluent;

namespace McuBench.Stats.Tests;

/// <summary>
/// Values for properties: eighths of whole numbers of a moderate size. Adding eighths and multiplying by powers of two
/// are exact on them, so that a shift or scale of the data changes nothing but what the property is about.
/// </summary>
public sealed record Dyadic(double[] Values)
{
    /// <summary>From 1 to some 40 values, ties likely.</summary>
    public static Arbitrary<Dyadic> Arbitrary() =>
        Arb.From(
            Gen.Choose(-400, 400).NonEmptyListOf().Select(list => new Dyadic([.. list.Select(value => value / 8.0)])),
            Shrink
        );

    /// <summary>The same values in another order.</summary>
    public double[] Shuffled(int seed)
    {
        double[] copy = [.. Values];
        new Random(seed).Shuffle(copy);
        return copy;
    }

    /// <summary>Each value changed.</summary>
    public double[] Map(Func<double, double> change) => [.. Values.Select(change)];

    /// <inheritdoc/>
    public override string ToString() => $"[{string.Join(", ", Values)}]";

    private static IEnumerable<Dyadic> Shrink(Dyadic whole) =>
        whole.Values.Length == 1
            ? []
            : Enumerable
                .Range(0, whole.Values.Length)
                .Select(i => new Dyadic([.. whole.Values.Where((_, k) => k != i)]));
}
