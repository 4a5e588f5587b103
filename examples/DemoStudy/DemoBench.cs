using McuBench.Core.Boards;
using McuBench.Core.Supply;
using UnitsNet;

namespace DemoStudy;

/// <summary>What stands on the demo's bench: the setups that are compared, the meter, and the oddities that happen.</summary>
public static class DemoBench
{
    /// <summary>The display that every board carries on its own supply.</summary>
    public static Attachment Display { get; } = new(AttachmentKind.Display, "level display", AttachmentState.Active);

    /// <summary>What reads the supply current.</summary>
    public static Meter Meter { get; } =
        new(
            "bench meter",
            new MeterRange(ElectricCurrent.FromMilliamperes(40), ElectricCurrent.FromMicroamperes(10))
            {
                OfReading = Ratio.FromPercent(0.4),
                OfRange = Ratio.FromPercent(0.05),
                Digits = 2,
                BurdenAtFullScale = ElectricPotential.FromMillivolts(20),
            },
            new MeterRange(ElectricCurrent.FromMilliamperes(200), ElectricCurrent.FromMicroamperes(100))
            {
                OfReading = Ratio.FromPercent(0.4),
                OfRange = Ratio.FromPercent(0.05),
                Digits = 2,
                BurdenAtFullScale = ElectricPotential.FromMillivolts(40),
            }
        )
        {
            AveragingTime = Duration.FromSeconds(0.4),
            ZeroCheck = new MeterCheck(
                new DateOnly(2025, 9, 2),
                ElectricCurrent.FromMilliamperes(0),
                ElectricCurrent.FromMilliamperes(0.02)
            ),
            KnownLoadCheck = new MeterCheck(
                new DateOnly(2025, 9, 2),
                ElectricCurrent.FromMilliamperes(50),
                ElectricCurrent.FromMilliamperes(50.1)
            ),
        };

    /// <summary>Schist's core A at 160 MHz with the toolchain of every day.</summary>
    public static Setup SchistA160 { get; } = Plain(DemoModel.SchistA, 160);

    /// <summary>The same with a newer toolchain, which truly changes nothing.</summary>
    public static Setup SchistA160Newer { get; } =
        SchistA160 with
        {
            Name = "Schist A 160 MHz, newer toolchain",
            Toolchain = DemoModel.Schist.Toolchain with { Version = "12.0" },
        };

    /// <summary>The setups, in the order of the study.</summary>
    public static IReadOnlyList<Setup> Setups { get; } =
    [
        Plain(DemoModel.MarlCore, 100),
        Plain(DemoModel.MarlCore, 150),
        Plain(DemoModel.MarlCore, 200),
        Plain(DemoModel.SchistA, 80),
        SchistA160,
        SchistA160Newer,
        Plain(DemoModel.SchistB, 40),
        Plain(DemoModel.SchistB, 80),
        Plain(DemoModel.SchistB, 120),
        Plain(DemoModel.SchistB, 160),
        Plain(DemoModel.TuffCore, 24),
        Plain(DemoModel.TuffCore, 48),
    ];

    /// <summary>The series whose run times grow from trial to trial.</summary>
    public static (Setup Setup, Workload Workload) Drifting { get; } =
        (Named("Schist A 80 MHz"), DemoModel.MedianFilter);

    /// <summary>The series in which two trials were held up.</summary>
    public static (Setup Setup, Workload Workload) WithOutliers { get; } =
        (Named("Schist B 80 MHz"), DemoModel.FrameChecksum);

    /// <summary>The series in which one trial put out something wrong, and did so fast.</summary>
    public static (Setup Setup, Workload Workload) WithWrongOutput { get; } =
        (Named("Marl 200 MHz"), DemoModel.EchoSpectrum);

    /// <summary>A setup by its name.</summary>
    public static Setup Named(string name) =>
        Setups.Single(setup => string.Equals(setup.Name, name, StringComparison.Ordinal));

    private static Setup Plain(CoreTruth truth, int megahertz)
    {
        var board = truth.Board;
        var who = board.Board.Cores.Count > 1 ? $"{board.Board.Name} {truth.Core.Name}" : board.Board.Name;
        return new Setup(
            FormattableString.Invariant($"{who} {megahertz} MHz"),
            board.Board,
            truth.Core,
            new Clock(Frequency.FromMegahertz(megahertz))
            {
                Tolerance = Ratio.FromDecimalFractions(board.ClockTolerance),
            }
        )
        {
            Supply = new BoardSupply(ElectricPotential.FromVolts(5))
            {
                Tolerance = Ratio.FromPercent(1),
                Input = "5 V pin",
                FedElsewhereToo = false,
            },
            Toolchain = board.Toolchain,
            Attachments = [Display],
        };
    }
}
