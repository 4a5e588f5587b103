using McuBench.Core.Capture;
using McuBench.Core.Conclusions;
using McuBench.Core.Planning;
using McuBench.Core.Trials;

namespace BenchRig;

/// <summary>Shows how far the rig has come.</summary>
public interface IRigDisplay
{
    /// <summary>Told once, before the first trial.</summary>
    void Begin(BenchSchedule schedule, BenchLook look, JournalCut? cut);

    /// <summary>Told of each trial once it is in the journal.</summary>
    void Acknowledged(Trial trial, BenchLook look);
}
