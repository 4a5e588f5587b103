using McuBench.Core.Supply;
using McuBench.Core.Trials;

namespace McuBench.Core.Conclusions;

/// <summary>The mean currents of one series by phase, in amperes, all at one measuring point.</summary>
/// <param name="Waiting">Inside a run, waiting; null where it wasn't read.</param>
/// <param name="Computing">Inside a run, computing; the running current stands in where waiting was read apart.</param>
/// <param name="Idle">Between runs; null where it wasn't read.</param>
internal sealed record PhaseFigures(PhaseCurrent? Waiting, PhaseCurrent? Computing, PhaseCurrent? Idle)
{
    public static PhaseFigures None { get; } = new(null, null, null);

    public PhaseCurrent? Of(SupplyPhase phase) =>
        phase switch
        {
            SupplyPhase.Waiting => Waiting,
            SupplyPhase.Computing => Computing,
            SupplyPhase.Idle => Idle,
            _ => null,
        };

    public static PhaseFigures Of(TrialSeries series, IReadOnlyList<SupplyReading> readings)
    {
        var point = readings.Any(r => r.Point == MeasuringPoint.BeforeRegulator)
            ? MeasuringPoint.BeforeRegulator
            : MeasuringPoint.AfterRegulator;
        var setup = series.Setup.Name;
        var task = $"{setup}|{series.Workload.Name}";
        var waiting = Current(SupplyPhase.Waiting, $"{task}|waiting", $"waiting, {setup}");
        var computing = Current(SupplyPhase.Computing, $"{task}|computing", $"computing, {setup}");
        if (computing is null && waiting is not null)
        {
            computing = Current(SupplyPhase.Running, $"{task}|running", $"running, {setup}");
        }

        return new PhaseFigures(
            waiting,
            computing,
            Current(SupplyPhase.Idle, $"{setup}|idle", $"idle current of {setup}")
        );

        PhaseCurrent? Current(SupplyPhase phase, string key, string of)
        {
            SupplyReading[] taken =
            [
                .. readings.Where(r =>
                    r.Phase == phase && r.Point == point && (r.Workload is null || r.Workload == series.Workload)
                ),
            ];
            return taken.Length == 0 ? null : new PhaseCurrent(taken, CurrentFigures.Mean(taken, key, of));
        }
    }
}

/// <summary>A mean current and the readings that it was made of.</summary>
internal sealed record PhaseCurrent(IReadOnlyList<SupplyReading> Readings, UncertainValue Mean);
