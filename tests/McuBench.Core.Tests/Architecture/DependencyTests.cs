using UnitsNet;

namespace McuBench.Core.Tests.Architecture;

/// <summary>What the project relies on its dependencies for, so that an upgrade that changes it is noticed.</summary>
public sealed class DependencyTests
{
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Quantity_NotFinite_IsRefusedBeforeItReachesUs(double value)
    {
        Assert.Throws<ArgumentException>(() => Duration.FromSeconds(value));
        Assert.Throws<ArgumentException>(() => ElectricCurrent.FromMilliamperes(value));
        Assert.Throws<ArgumentException>(() => Frequency.FromMegahertz(value));
        Assert.Throws<ArgumentException>(() => ElectricPotential.FromVolts(value));
        Assert.Throws<ArgumentException>(() => Temperature.FromKelvins(value));
    }
}
