using McuBench.Core.Conclusions;

namespace McuBench.Core.Planning;

/// <summary>How far a bench has come: what each slot still needs, which comes next, and whether to look before going
/// on.</summary>
/// <remarks>Immutable.</remarks>
public sealed class BenchLook
{
    internal BenchLook(IReadOnlyList<StopDecision> decisions, BenchSlot? next, Finding? pause, int expectedTrials)
    {
        Decisions = decisions;
        Next = next;
        Pause = pause;
        ExpectedTrials = expectedTrials;
    }

    /// <summary>What each slot needs, in the schedule's order of slots.</summary>
    public IReadOnlyList<StopDecision> Decisions { get; }

    /// <summary>The slot to run next; absent where no more is needed.</summary>
    public BenchSlot? Next { get; }

    /// <summary>What the last trial has brought up, an outlier or a drift, that is better looked at before going on;
    /// absent where there is nothing new.</summary>
    public Finding? Pause { get; }

    /// <summary>About how many more trials will be needed of all slots together.</summary>
    public int ExpectedTrials { get; }
}
