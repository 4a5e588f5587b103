using McuBench.Core.Boards;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests;

/// <summary>Small invented things for tests that need one and don't care which.</summary>
internal static class Sketch
{
    public static Board Marl { get; } = new("Marl");

    public static Board Schist { get; } = new("Schist", [new ExecutionCore("A"), new ExecutionCore("B")]);

    public static Setup MarlAt200 { get; } = new("Marl 200", Marl, Frequency.FromMegahertz(200));

    public static Workload Echo { get; } = new("echo spectrum", 1000) { ItemName = "spectrum" };

    public static TrialTimer Microseconds { get; } =
        new("on-board ticks", Duration.FromMicroseconds(1), TimerReading.TickDifferenceRandomStart);

    public static MeterRange Fifty { get; } =
        new(ElectricCurrent.FromMilliamperes(50), ElectricCurrent.FromMicroamperes(10));

    public static MeterRange FiveHundred { get; } =
        new(ElectricCurrent.FromMilliamperes(500), ElectricCurrent.FromMicroamperes(100));

    public static Meter Bench { get; } = new("bench meter", Fifty, FiveHundred);

    public static Trial TrialOf(double seconds) => new(MarlAt200, Echo, Microseconds, Duration.FromSeconds(seconds));
}
