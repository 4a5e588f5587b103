using McuBench.Core.Trials;

namespace BenchRig;

/// <summary>The way to a board: has it run its workload once.</summary>
public interface IWire : IAsyncDisposable
{
    /// <summary>Runs the workload once and gives the trial.</summary>
    /// <exception cref="RigException">No answer came.</exception>
    Task<Trial> RunAsync(CancellationToken cancellationToken);
}
