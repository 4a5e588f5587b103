using McuBench.Core.Quantities;
using McuBench.Core.Trials;

namespace McuBench.Core.Studies;

/// <summary>The values of a trial as a file gives them, names not yet looked up; SI doubles.</summary>
internal readonly record struct TrialValues(string Setup, string Workload, string Timer, double RunTime)
{
    private static readonly IReadOnlyList<string> Properties = EnumWord<TrialColumn>.All;

    public int? Order { get; init; }

    public string? Session { get; init; }

    public string? Specimen { get; init; }

    public string? Build { get; init; }

    public string? Connection { get; init; }

    public double? Temperature { get; init; }

    public string? OutputChecksum { get; init; }

    public long? CycleCount { get; init; }

    /// <summary>Makes the trial; null after a fault, or where something that it refers to was left out.</summary>
    public Trial? Make(StudyNames names, IFieldFaults faults)
    {
        var values = this;
        var setup = names.Setups.Find(Setup, "setup", faults);
        var workload = names.Workloads.Find(Workload, "workload", faults);
        var timer = names.Timers.Find(Timer, "timer", faults);
        if (setup is null || workload is null || timer is null)
        {
            return null;
        }

        return faults.Make(
            Properties,
            () =>
                new Trial(setup, workload, timer, Si.Duration(values.RunTime))
                {
                    Order = values.Order,
                    Session = values.Session,
                    Specimen = values.Specimen,
                    Build = values.Build,
                    Connection = values.Connection,
                    Temperature = values.Temperature is { } kelvins ? Si.Temperature(kelvins) : null,
                    OutputChecksum = values.OutputChecksum,
                    CycleCount = values.CycleCount,
                }
        );
    }
}
