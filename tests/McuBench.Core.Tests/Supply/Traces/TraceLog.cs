using McuBench.Core.Supply.Traces;

namespace McuBench.Core.Tests.Supply.Traces;

/// <summary>Keeps all samples of a short trace.</summary>
internal sealed class TraceLog : ITraceConsumer
{
    public List<double> Seconds { get; } = [];

    public List<double> Amperes { get; } = [];

    public List<double> Volts { get; } = [];

    public List<byte> Markers { get; } = [];

    public void Take(TraceChunk chunk)
    {
        Seconds.AddRange(chunk.Seconds);
        Amperes.AddRange(chunk.Amperes);
        Volts.AddRange(chunk.Volts);
        Markers.AddRange(chunk.Markers);
    }
}
