using System.Text;
using McuBench.Core.Boards;
using McuBench.Core.Studies;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Studies;

/// <summary>Studies made of a seed: odd names, values from one end of the doubles to the other, each optional thing there
/// or not.</summary>
internal sealed class RandomStudy
{
    // What quoting, escaping and guarding must survive: delimiters, quotation marks, formulas, comments, brackets,
    // escapes, letters of one to four bytes, invisible marks, and what looks like a number or a word of JSON.
    private static readonly string[] Pieces =
    [
        "a",
        "B",
        "7",
        " ",
        ",",
        ";",
        "|",
        "\"",
        "\"\"",
        "'",
        "=",
        "+",
        "-",
        "@",
        "#",
        "\\",
        "/",
        "[ms]",
        "{",
        "}",
        "<b>",
        "&",
        "\u00B5",
        "\u03A9",
        "\u6E56",
        "\U0001F3D4",
        "\u200B",
        "\u202E",
        "\u2028",
        "e\u0301",
        "null",
        "NaN",
        "1e5",
        "1,5",
        "=1+1",
    ];

    private readonly Random random;

    private RandomStudy(int seed) => random = new Random(seed);

    public static Study Of(int seed) => new RandomStudy(seed).Make();

    private Study Make()
    {
        var boards = Distinct(4, Board, board => board.Name);
        var setups = Distinct(5, () => Setup(Pick(boards)), setup => setup.Name);
        var workloads = Distinct(3, Workload, workload => workload.Name);
        var timers = Distinct(3, Timer, timer => timer.Name);
        var meters = Distinct(3, Meter, meter => meter.Name);
        return new Study(
            Name(),
            boards,
            setups,
            workloads,
            timers,
            meters,
            Several(0, 8, () => Trial(Pick(setups), Pick(workloads), Pick(timers))),
            Several(0, 8, () => Reading(Pick(setups), Pick(meters), Pick(workloads)))
        )
        {
            Description = Note(),
            IsInvented = Chance(),
        };
    }

    private Board Board() =>
        new(Name(), Distinct(3, () => new ExecutionCore(Name()) { Description = Note() }, core => core.Name))
        {
            Description = Note(),
        };

    private Setup Setup(Board board) =>
        new(Name(), board, Pick(board.Cores), new Clock(Frequency.FromHertz(Positive())) { Tolerance = Share() })
        {
            Supply = Chance()
                ? new BoardSupply(ElectricPotential.FromVolts(Positive()))
                {
                    Tolerance = Share(),
                    Input = Note(),
                    FedElsewhereToo = Truth(),
                }
                : null,
            Toolchain = Chance()
                ? new Toolchain(Name()) { Version = Note(), Settings = [.. Several(0, 3, Name)] }
                : null,
            Attachments =
            [
                .. Distinct(
                    3,
                    () => new Attachment(Any<AttachmentKind>(), Name(), Any<AttachmentState>()),
                    attachment => attachment.Name
                ),
            ],
        };

    private Workload Workload() =>
        new(Name(), Chance() ? long.MaxValue : random.NextInt64(1, 100_000))
        {
            ItemName = Name(),
            Description = Note(),
            OutputChecksum = Note(),
            IsEmpty = Chance(),
            LoadPeriod = Chance() ? Duration.FromSeconds(Positive()) : null,
        };

    private TrialTimer Timer() =>
        new(Name(), Duration.FromSeconds(Positive()), Any<TimerReading>())
        {
            Tolerance = Share(),
            Place = Any<TimerPlace>(),
            DerivedFromChangedClock = Truth(),
        };

    private Meter Meter()
    {
        var ranges = Distinct(3, Range, range => $"{range.FullScale.Amperes:R}");
        return new Meter(Name(), ranges)
        {
            AveragingTime = Chance() ? Duration.FromSeconds(Positive()) : null,
            ZeroCheck = Chance() ? Check() : null,
            KnownLoadCheck = Chance() ? Check() : null,
        };
    }

    private MeterRange Range()
    {
        var (one, other) = (Positive(), Positive());
        return new MeterRange(
            ElectricCurrent.FromAmperes(Math.Max(one, other)),
            ElectricCurrent.FromAmperes(Math.Min(one, other))
        )
        {
            OfReading = Share() ?? Ratio.Zero,
            OfRange = Share() ?? Ratio.Zero,
            Digits = Chance() ? int.MaxValue : random.Next(10),
            BurdenAtFullScale = Chance() ? ElectricPotential.FromVolts(Chance() ? 0 : Positive()) : null,
        };
    }

    private MeterCheck Check() =>
        new(
            DateOnly.FromDayNumber(random.Next(DateOnly.MaxValue.DayNumber + 1)),
            ElectricCurrent.FromAmperes(Chance() ? 0 : Positive()),
            ElectricCurrent.FromAmperes(Chance() ? -Positive() : Positive())
        );

    private Trial Trial(Setup setup, Workload workload, TrialTimer timer) =>
        new(setup, workload, timer, Duration.FromSeconds(Positive()))
        {
            Order = Chance() ? random.Next(1, int.MaxValue) : null,
            Session = Note(),
            Specimen = Note(),
            Build = Note(),
            Connection = Note(),
            Temperature = Chance() ? Temperature.FromKelvins(Positive()) : null,
            OutputChecksum = Note(),
            CycleCount = Chance() ? random.NextInt64(1, long.MaxValue) : null,
        };

    private SupplyReading Reading(Setup setup, Meter meter, Workload workload)
    {
        var phase = Any<SupplyPhase>();
        var range = Pick(meter.Ranges).FullScale;
        return new SupplyReading(
            setup,
            meter,
            phase,
            range * random.NextDouble(),
            phase is SupplyPhase.Running or SupplyPhase.Waiting or SupplyPhase.Computing ? workload : null
        )
        {
            Point = Any<MeasuringPoint>(),
            BoardVoltage = Chance() ? ElectricPotential.FromVolts(Positive()) : null,
            Range = Chance() ? range : null,
            Attachment = Note(),
            Session = Note(),
            Specimen = Note(),
        };
    }

    private double Positive() =>
        random.Next(4) switch
        {
            0 => random.Next(1, 10_000) / 1000.0,
            1 => random.NextDouble() + double.Epsilon,
            2 => Pick([double.Epsilon, double.MaxValue, 1, 1e-9, 0.1 + 0.2, 5e-324, 2.2250738585072014e-308]),
            _ => BitConverter.Int64BitsToDouble(random.NextInt64(1, BitConverter.DoubleToInt64Bits(double.MaxValue))),
        };

    private Ratio? Share() =>
        random.Next(4) switch
        {
            0 => null,
            1 => Ratio.FromDecimalFractions(random.Next(1_000_000) / 1e6),
            2 => Ratio.FromDecimalFractions(random.NextDouble()),
            _ => Ratio.FromDecimalFractions(Pick([0, double.Epsilon, Math.BitDecrement(1.0), 50e-6, 0.005])),
        };

    private string Name()
    {
        var name = new StringBuilder();
        while (name.Length == 0 || random.Next(3) > 0)
        {
            name.Append(Pick(Pieces));
        }

        var trimmed = name.ToString().Trim();
        return trimmed.Length is > 0 and <= 200 ? trimmed : Name();
    }

    private string? Note() => Chance() ? Name() : null;

    private bool? Truth() => Chance() ? Chance() : null;

    private bool Chance() => random.Next(2) == 0;

    private T Any<T>()
        where T : struct, Enum => Pick(Enum.GetValues<T>());

    private T Pick<T>(IReadOnlyList<T> from) => from[random.Next(from.Count)];

    private List<T> Several<T>(int least, int most, Func<T> make) =>
        [.. Enumerable.Range(0, random.Next(least, most + 1)).Select(_ => make())];

    private List<T> Distinct<T>(int most, Func<T> make, Func<T, string> name) =>
        [.. Several(1, most, make).DistinctBy(name, StringComparer.Ordinal)];
}
