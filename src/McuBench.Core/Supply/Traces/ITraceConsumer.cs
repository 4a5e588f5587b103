namespace McuBench.Core.Supply.Traces;

/// <summary>Takes a trace as it is read, a chunk at a time, so that none has to fit in memory.</summary>
public interface ITraceConsumer
{
    /// <summary>Takes the samples that follow.</summary>
    /// <param name="chunk">The samples, valid until the call returns.</param>
    void Take(TraceChunk chunk);
}
