namespace McuBench.Core.Supply.Traces;

/// <summary>Takes traces that come while they are measured.</summary>
public static class TraceFeed
{
    /// <summary>Gives each block that comes on to a consumer, until there are no more.</summary>
    /// <param name="blocks">The blocks, each after the one before.</param>
    /// <param name="consumer">Takes the samples. When reading is cancelled it has taken all blocks that had come.</param>
    /// <param name="cancellationToken">Ends the reading.</param>
    /// <returns>How many samples came.</returns>
    /// <exception cref="OperationCanceledException">Reading was cancelled.</exception>
    public static async Task<long> ReadAsync(
        IAsyncEnumerable<TraceBlock> blocks,
        ITraceConsumer consumer,
        CancellationToken cancellationToken = default
    )
    {
        ArgumentNullException.ThrowIfNull(blocks);
        ArgumentNullException.ThrowIfNull(consumer);
        long samples = 0;
        await foreach (var block in blocks.WithCancellation(cancellationToken))
        {
            consumer.Take(block.AsChunk());
            samples += block.Amperes.Length;
        }

        return samples;
    }
}
