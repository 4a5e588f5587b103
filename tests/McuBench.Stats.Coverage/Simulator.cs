using McuBench.Stats.Resampling;

namespace McuBench.Stats.Coverage;

/// <summary>Runs procedures on drawn data.</summary>
/// <remarks>Each run draws from a stream of its own, so the figures are the same on any number of threads.</remarks>
public sealed class Simulator(int runs, ulong seed, int threads)
{
    /// <summary>The counts of values that are tried.</summary>
    public static IReadOnlyList<int> Counts { get; } = [3, 5, 10, 30, 100];

    /// <summary>How many times as many runs decide where a promise seems to be missed.</summary>
    private const int MoreRuns = 4;

    private const ulong StreamsPerCell = 1UL << 32;

    /// <summary>Tries procedures on one population at one count.</summary>
    /// <remarks>Among some thousand cells a few miss three simulation errors by chance. What seems to miss is run again, from
    /// other streams and four times as often, and that result is given.</remarks>
    public IReadOnlyList<CellResult> Run(IReadOnlyList<Procedure> procedures, Population population, int count)
    {
        ArgumentNullException.ThrowIfNull(procedures);
        ArgumentNullException.ThrowIfNull(population);
        Procedure[] tried = [.. procedures.Where(p => p.Tried.HasFlag(population.Shape))];
        ulong stream = (((uint)population.Shape << 16) | (uint)count) * StreamsPerCell;
        CellResult[] results = Run(tried, population, count, runs, stream);
        Procedure[] doubtful = [.. results.Where(r => r.Misses).Select(r => r.Procedure)];
        CellResult[] again = Run(doubtful, population, count, MoreRuns * runs, stream + StreamsPerCell / 2);
        return [.. results.Select(r => again.FirstOrDefault(a => a.Procedure == r.Procedure) ?? r)];
    }

    private CellResult[] Run(Procedure[] procedures, Population population, int count, int times, ulong stream)
    {
        if (procedures.Length == 0)
        {
            return [];
        }

        var outcomes = new Outcome?[times][];
        Parallel.For(
            0,
            times,
            new ParallelOptions { MaxDegreeOfParallelism = threads },
            i =>
            {
                var scene = new Scene(population, count, RandomStream.Of(seed, stream + (ulong)i));
                outcomes[i] = [.. procedures.Select(p => i % p.OneIn == 0 ? Try(p, scene) : null)];
            }
        );
        return [.. procedures.Select((p, k) => Sum(p, population, count, outcomes, k))];
    }

    private static CellResult Sum(Procedure procedure, Population population, int count, Outcome?[][] outcomes, int k)
    {
        Outcome[] answers = [.. outcomes.Where(o => o[k] is not null).Select(o => o[k]!.Value)];
        return new CellResult(
            procedure,
            population,
            count,
            (outcomes.Length + procedure.OneIn - 1) / procedure.OneIn,
            answers.Length,
            answers.Count(a => a.Happened),
            answers
                .Where(a => double.IsFinite(a.Width))
                .Select(a => a.Width)
                .DefaultIfEmpty(double.PositiveInfinity)
                .Average()
        );
    }

    /// <summary>A refusal, of too few values or of values that are all equal, is no answer.</summary>
    private static Outcome? Try(Procedure procedure, Scene scene)
    {
        try
        {
            return procedure.Run(scene);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
