using System.Globalization;

namespace McuBench.Stats.Tests.Edges;

/// <summary>Every public procedure on data at every edge: a finite answer or a worded refusal, and an end to it.</summary>
public sealed class EdgeSweepTests
{
    private const int MostMilliseconds = 60_000;

    /// <summary>Degrees of freedom are infinite where a standard error is known without doubt, a width where no number holds
    /// the distance of the ends.</summary>
    private static readonly string[] MayBeInfinite = [".DegreesOfFreedom", ".Width"];

    public static TheoryData<string> Names => [.. EdgeProcedures.All.Select(p => p.Name)];

    [Theory(Timeout = MostMilliseconds)]
    [MemberData(nameof(Names))]
    public async Task EveryProcedure_AtEveryEdge_GivesFiniteNumbersOrRefuses(string name)
    {
        var faults = await Task.Run(
            () =>
                Cases(Named(name), EdgeData.Finite)
                    .Select(c => Fault(c.Edge, c.Run))
                    .Where(fault => fault is not null)
                    .ToList(),
            TestContext.Current.CancellationToken
        );

        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    [Theory(Timeout = MostMilliseconds)]
    [MemberData(nameof(Names))]
    public async Task EveryProcedure_OfNaNOrInfinity_Refuses(string name)
    {
        var accepted = await Task.Run(
            () =>
                Cases(Named(name), EdgeData.NotFinite)
                    .Where(c => Record.Exception(() => c.Run()) is not ArgumentException)
                    .Select(c => c.Edge)
                    .ToList(),
            TestContext.Current.CancellationToken
        );

        Assert.Empty(accepted);
    }

    private static EdgeProcedure Named(string name) => EdgeProcedures.All.Single(p => p.Name == name);

    private static IEnumerable<(string Edge, Func<object?> Run)> Cases(
        EdgeProcedure procedure,
        IReadOnlyDictionary<string, double[]> edges
    )
    {
        foreach (var (edge, data) in edges)
        {
            yield return (edge, () => procedure.Run(data, EdgeData.Ordinary));
            if (procedure.TakesTwo)
            {
                yield return ($"{edge}, second", () => procedure.Run(EdgeData.Ordinary, data));
                yield return ($"{edge}, both", () => procedure.Run(data, data));
            }
        }
    }

    private static string? Fault(string edge, Func<object?> run)
    {
        try
        {
            var wrong = NumbersOf
                .Result(run())
                .Where(n => !double.IsFinite(n.Value))
                .Where(n =>
                    double.IsNaN(n.Value) || !MayBeInfinite.Any(p => n.Path.EndsWith(p, StringComparison.Ordinal))
                )
                .Select(n => string.Create(CultureInfo.InvariantCulture, $"{n.Path} = {n.Value}"))
                .ToList();
            return wrong.Count == 0 ? null : $"{edge}: {string.Join(", ", wrong)}";
        }
        catch (ArgumentException refusal)
        {
            return refusal.ParamName is null || refusal.Message.Length == 0 ? $"{edge}: a refusal without words" : null;
        }
        catch (InvalidOperationException refusal)
            when (refusal.Message.Contains("must settle within", StringComparison.Ordinal))
        {
            return null;
        }
        catch (Exception exception)
        {
            return $"{edge}: {exception.GetType().Name}: {exception.Message}\n{exception.StackTrace}";
        }
    }
}
