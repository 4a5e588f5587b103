using McuBench.Core.Calculators;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Tests.Calculators;

public class NetOfBaselineTests
{
    private static readonly ElectricCurrent Idle = ElectricCurrent.FromMilliamperes(4);
    private static readonly Duration Run = Duration.FromSeconds(3);

    [Fact]
    public void Current_TwentyLessFourMilliamperes_IsSixteen() =>
        Assert.Equal(0.016, Si.Amperes(NetOfBaseline.Current(ElectricCurrent.FromMilliamperes(20), Idle)), 1e-16);

    [Fact]
    public void Charge_SubtractsTheBaselineOverTheRun() =>
        Assert.Equal(0.048, Si.Coulombs(NetOfBaseline.Charge(ElectricCharge.FromCoulombs(0.06), Idle, Run)), 1e-16);

    [Fact]
    public void Energy_SubtractsTheBaselineAtTheVoltageOverTheRun() =>
        Assert.Equal(
            0.24,
            Si.Joules(NetOfBaseline.Energy(Energy.FromJoules(0.3), ElectricPotential.FromVolts(5), Idle, Run)),
            1e-15
        );

    [Fact]
    public void Charge_BaselineAboveTheGross_IsNegative() =>
        Assert.True(Si.Coulombs(NetOfBaseline.Charge(ElectricCharge.FromCoulombs(0.006), Idle, Run)) < 0);

    [Fact]
    public void Charge_NoTime_Refuses() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => NetOfBaseline.Charge(ElectricCharge.FromCoulombs(1), Idle, Duration.Zero),
            "runTime",
            "Run time must be above zero; was 0 s."
        );
}
