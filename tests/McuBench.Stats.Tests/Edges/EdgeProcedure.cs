namespace McuBench.Stats.Tests.Edges;

/// <summary>A public procedure as a function of one or two sets of data.</summary>
/// <param name="Name">Type and method; what follows a comma tells forms of one method apart.</param>
/// <param name="Run">The procedure, with everything else as an ordinary caller would have it.</param>
internal sealed record EdgeProcedure(string Name, Func<double[], double[], object?> Run)
{
    /// <summary>Whether the second set of data counts.</summary>
    internal bool TakesTwo { get; private init; } = true;

    /// <summary>Type and method alone.</summary>
    internal string Method => Name.Split(',')[0];

    /// <summary>A procedure of one set of data.</summary>
    internal static EdgeProcedure OfOne(string name, Func<double[], object?> run) =>
        new(name, (data, _) => run(data)) { TakesTwo = false };

    /// <summary>A procedure of one sample.</summary>
    internal static EdgeProcedure OfSample(string name, Func<Sample, object?> run) =>
        OfOne(name, data => run(Sample.Of(data)));

    /// <summary>A procedure of two samples.</summary>
    internal static EdgeProcedure OfSamples(string name, Func<Sample, Sample, object?> run) =>
        new(name, (first, second) => run(Sample.Of(first), Sample.Of(second)));

    /// <summary>A procedure of points: as many as the shorter set has values.</summary>
    internal static EdgeProcedure OfPoints(string name, Func<double[], double[], object?> run) =>
        new(
            name,
            (x, y) =>
            {
                int n = Math.Min(x.Length, y.Length);
                return run(x[..n], y[..n]);
            }
        );
}
