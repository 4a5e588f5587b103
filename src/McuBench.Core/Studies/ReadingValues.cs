using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;

namespace McuBench.Core.Studies;

/// <summary>The values of a supply reading as a file gives them, names not yet looked up; SI doubles.</summary>
internal readonly record struct ReadingValues(string Setup, string Meter, SupplyPhase Phase, double Current)
{
    private static readonly IReadOnlyList<string> Properties = EnumWord<ReadingColumn>.All;

    public string? Workload { get; init; }

    public MeasuringPoint? Point { get; init; }

    public double? BoardVoltage { get; init; }

    public double? Range { get; init; }

    public string? Attachment { get; init; }

    public string? Session { get; init; }

    public string? Specimen { get; init; }

    /// <summary>Makes the reading; null after a fault, or where something that it refers to was left out.</summary>
    public SupplyReading? Make(StudyNames names, IFieldFaults faults)
    {
        var values = this;
        var setup = names.Setups.Find(Setup, "setup", faults);
        var meter = names.Meters.Find(Meter, "meter", faults);
        Workload? workload = null;
        if (Workload is { } name)
        {
            workload = names.Workloads.Find(name, "workload", faults);
            if (workload is null)
            {
                return null;
            }
        }

        if (setup is null || meter is null)
        {
            return null;
        }

        return faults.Make(
            Properties,
            () =>
                new SupplyReading(setup, meter, values.Phase, Si.Current(values.Current), workload)
                {
                    Point = values.Point ?? MeasuringPoint.BeforeRegulator,
                    BoardVoltage = values.BoardVoltage is { } volts ? Si.Voltage(volts) : null,
                    Range = values.Range is { } amperes ? Si.Current(amperes) : null,
                    Attachment = values.Attachment,
                    Session = values.Session,
                    Specimen = values.Specimen,
                }
        );
    }
}
