namespace McuBench.Core.Conclusions;

/// <summary>How far the drawing of conclusions has come.</summary>
/// <param name="Stage">What is being worked on.</param>
/// <param name="Done">How many steps of the stage are done.</param>
/// <param name="Total">How many steps the stage has.</param>
public readonly record struct ConclusionProgress(ConclusionStage Stage, int Done, int Total);
