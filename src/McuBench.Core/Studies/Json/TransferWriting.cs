using System.Globalization;
using McuBench.Core.Boards;
using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Studies.Json;

/// <summary>Makes transfer records of a study, all values spelt out, absent things left out.</summary>
internal static class TransferWriting
{
    public static StudyTransfer.Document Of(Study study, StudyTables tables) =>
        new()
        {
            Format = StudyJson.FormatName,
            Version = StudyJson.Version,
            Title = study.Title,
            Description = study.Description,
            Invented = study.IsInvented ? true : null,
            Boards = [.. study.Boards.Select(Of)],
            Setups = [.. study.Setups.Select(Of)],
            Workloads = [.. study.Workloads.Select(Of)],
            Timers = [.. study.Timers.Select(Of)],
            Meters = Listed(study.Meters, Of),
            Trials = tables.Trials is null ? Listed(study.Trials, Of) : null,
            Readings = tables.Readings is null ? Listed(study.Readings, Of) : null,
            TrialFiles = tables.Trials is null ? null : [new StudyTransfer.Table { Path = tables.Trials }],
            ReadingFiles = tables.Readings is null ? null : [new StudyTransfer.Table { Path = tables.Readings }],
        };

    private static StudyTransfer.Board Of(Board board) =>
        new()
        {
            Name = board.Name,
            Description = board.Description,
            Cores =
            [
                .. board.Cores.Select(core => new StudyTransfer.Core
                {
                    Name = core.Name,
                    Description = core.Description,
                }),
            ],
        };

    private static StudyTransfer.Setup Of(Setup setup) =>
        new()
        {
            Name = setup.Name,
            Board = setup.Board.Name,
            Core = setup.Core.Name,
            Clock = new StudyTransfer.Clock
            {
                Frequency = QuantityText.Format(setup.Clock.Nominal),
                Tolerance = Text(setup.Clock.Tolerance),
            },
            Supply = setup.Supply is { } supply
                ? new StudyTransfer.Supply
                {
                    Voltage = QuantityText.Format(supply.Voltage),
                    Tolerance = Text(supply.Tolerance),
                    Input = supply.Input,
                    FedElsewhereToo = supply.FedElsewhereToo,
                }
                : null,
            Toolchain = setup.Toolchain is { } toolchain
                ? new StudyTransfer.Toolchain
                {
                    Name = toolchain.Name,
                    Version = toolchain.Version,
                    Settings = Listed(toolchain.Settings, setting => setting),
                }
                : null,
            Attachments = Listed(
                setup.Attachments,
                attachment => new StudyTransfer.Attachment
                {
                    Kind = EnumWord<AttachmentKind>.Of(attachment.Kind),
                    Name = attachment.Name,
                    State = EnumWord<AttachmentState>.Of(attachment.State),
                }
            ),
        };

    private static StudyTransfer.Workload Of(Workload workload) =>
        new()
        {
            Name = workload.Name,
            WorkItemsPerRun = workload.WorkItemsPerRun,
            ItemName = workload.ItemName,
            Description = workload.Description,
            OutputChecksum = workload.OutputChecksum,
            Empty = workload.IsEmpty ? true : null,
            LoadPeriod = workload.LoadPeriod is { } period ? QuantityText.Format(period) : null,
        };

    private static StudyTransfer.Timer Of(TrialTimer timer) =>
        new()
        {
            Name = timer.Name,
            Resolution = QuantityText.Format(timer.Resolution),
            Reading = EnumWord<TimerReading>.Of(timer.Reading),
            Tolerance = Text(timer.Tolerance),
            Place = EnumWord<TimerPlace>.Of(timer.Place),
            DerivedFromChangedClock = timer.DerivedFromChangedClock,
        };

    private static StudyTransfer.Meter Of(Meter meter) =>
        new()
        {
            Name = meter.Name,
            Ranges =
            [
                .. meter.Ranges.Select(range => new StudyTransfer.MeterRange
                {
                    FullScale = QuantityText.Format(range.FullScale),
                    Resolution = QuantityText.Format(range.Resolution),
                    OfReading = Text(range.OfReading),
                    OfRange = Text(range.OfRange),
                    Digits = range.Digits,
                    BurdenAtFullScale = range.BurdenAtFullScale is { } burden ? QuantityText.Format(burden) : null,
                }),
            ],
            AveragingTime = meter.AveragingTime is { } time ? QuantityText.Format(time) : null,
            ZeroCheck = Of(meter.ZeroCheck),
            KnownLoadCheck = Of(meter.KnownLoadCheck),
        };

    private static StudyTransfer.MeterCheck? Of(MeterCheck? check) =>
        check is null
            ? null
            : new StudyTransfer.MeterCheck
            {
                Date = check.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                Expected = QuantityText.Format(check.Expected),
                Read = QuantityText.Format(check.Read),
            };

    public static StudyTransfer.Trial Of(Trial trial) =>
        new()
        {
            Setup = trial.Setup.Name,
            Workload = trial.Workload.Name,
            Timer = trial.Timer.Name,
            RunTime = QuantityText.Format(trial.RunTime),
            Order = trial.Order,
            Session = trial.Session,
            Specimen = trial.Specimen,
            Build = trial.Build,
            Connection = trial.Connection,
            Temperature = trial.Temperature is { } temperature ? QuantityText.Format(temperature) : null,
            OutputChecksum = trial.OutputChecksum,
            CycleCount = trial.CycleCount,
        };

    public static StudyTransfer.Reading Of(SupplyReading reading) =>
        new()
        {
            Setup = reading.Setup.Name,
            Meter = reading.Meter.Name,
            Phase = EnumWord<SupplyPhase>.Of(reading.Phase),
            Current = QuantityText.Format(reading.Current),
            Workload = reading.Workload?.Name,
            Point = EnumWord<MeasuringPoint>.Of(reading.Point),
            BoardVoltage = reading.BoardVoltage is { } voltage ? QuantityText.Format(voltage) : null,
            Range = reading.Range is { } range ? QuantityText.Format(range) : null,
            Attachment = reading.Attachment,
            Session = reading.Session,
            Specimen = reading.Specimen,
        };

    private static string? Text(Ratio? share) => share is { } given ? QuantityText.Format(given) : null;

    private static List<TPart>? Listed<T, TPart>(IReadOnlyList<T> items, Func<T, TPart> of) =>
        items.Count == 0 ? null : [.. items.Select(of)];
}
