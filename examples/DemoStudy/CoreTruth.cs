using McuBench.Core.Boards;

namespace DemoStudy;

/// <summary>What is true of an execution core in the demo's world.</summary>
/// <param name="Board">The board that it sits on.</param>
/// <param name="Core">The core, as the bench names it.</param>
/// <param name="CurrentPerHertz">The current that each hertz of clock adds while it runs, in amperes per hertz.</param>
/// <param name="Noise">The standard deviation of its run times from trial to trial, as a share of the part that follows
/// the clock.</param>
public sealed record CoreTruth(BoardTruth Board, ExecutionCore Core, double CurrentPerHertz, double Noise);
