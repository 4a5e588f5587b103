using McuBench.Core.Boards;
using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Studies;

/// <summary>What trials and readings may refer to, by name.</summary>
internal sealed class StudyNames
{
    public NamedThings<Board> Boards { get; } = new("board", "boards");

    public NamedThings<Setup> Setups { get; } = new("setup", "setups");

    public NamedThings<Workload> Workloads { get; } = new("workload", "workloads");

    public NamedThings<TrialTimer> Timers { get; } = new("timer", "timers");

    public NamedThings<Meter> Meters { get; } = new("meter", "meters");

    public static StudyNames Of(Study study)
    {
        var names = new StudyNames();
        names.Boards.AddAll(study.Boards, board => board.Name);
        names.Setups.AddAll(study.Setups, setup => setup.Name);
        names.Workloads.AddAll(study.Workloads, workload => workload.Name);
        names.Timers.AddAll(study.Timers, timer => timer.Name);
        names.Meters.AddAll(study.Meters, meter => meter.Name);
        return names;
    }
}
