using McuBench.Core.Boards;

namespace McuBench.Core.Planning;

/// <summary>One trial to be run.</summary>
/// <param name="Order">Its place among all trials, from 1.</param>
/// <param name="Session">Its session, from 1.</param>
/// <param name="Block">Its block within the session, from 1: each setup runs once in it.</param>
/// <param name="Setup">The setup.</param>
public sealed record BenchStep(int Order, int Session, int Block, Setup Setup);
