using McuBench.Core.Boards;

namespace DemoStudy;

/// <summary>What one run of a workload costs a core in the demo's world.</summary>
/// <param name="Core">The core.</param>
/// <param name="Workload">The workload.</param>
/// <param name="FixedTime">The time that doesn't follow the clock (writing to the display), in seconds.</param>
/// <param name="Cycles">The clock cycles of the rest.</param>
public sealed record TaskTruth(CoreTruth Core, Workload Workload, double FixedTime, double Cycles);
