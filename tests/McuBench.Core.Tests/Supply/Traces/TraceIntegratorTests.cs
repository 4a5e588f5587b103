using McuBench.Core.Quantities;
using McuBench.Core.Supply;
using McuBench.Core.Supply.Traces;
using UnitsNet;

namespace McuBench.Core.Tests.Supply.Traces;

public sealed class TraceIntegratorTests
{
    private static readonly double[] TwoMilliamperes = [2e-3, 2e-3];

    [Fact]
    public void Totals_ConstantCurrent_AreTheSiFacts()
    {
        // 1 mA for an hour is 3.6 C and at 3.6 V 12.96 J; 1 Wh is 3600 J.
        var integrator = new TraceIntegrator();
        integrator.Take(TraceChunk.Timed([0, 3600], [1e-3, 1e-3], [3.6, 3.6]));

        var totals = integrator.Totals()!;
        Assert.Equal(3.6, totals.Charge.Value.Coulombs, 1e-15);
        Assert.Equal(12.96, totals.Energy!.Value.Joules, 1e-14);
        Assert.Equal(12.96 / 3600, totals.Energy.Value.WattHours, 1e-15);
        Assert.Equal(1e-3, totals.MeanCurrent!.Value.Amperes, 1e-18);
        Assert.Equal(3600, totals.Time.Seconds);
    }

    [Fact]
    public void Totals_Accuracy_EntersAsRectangularLimits()
    {
        var accuracy = new TraceAccuracy
        {
            Gain = Ratio.FromPercent(1),
            Offset = ElectricCurrent.FromMicroamperes(10),
            TimeBase = Ratio.FromPartsPerMillion(100),
            VoltageGain = Ratio.FromPercent(0.5),
        };
        var integrator = new TraceIntegrator(accuracy);
        integrator.Take(TraceChunk.Even(0.5, [2e-3, 2e-3, 2e-3], [5.0, 5, 5]));

        var totals = integrator.Totals()!;
        // 2 mC; gain 20 uC, offset 10 uC, time base 0.2 uC; each over the root of 3.
        Assert.Equal(
            Math.Sqrt(20 * 20 + 10 * 10 + 0.2 * 0.2) * 1e-6 / Math.Sqrt(3),
            totals.Charge.StandardUncertainty!.Value.Coulombs,
            1e-18
        );
        Assert.Equal(
            Math.Sqrt(20 * 20 + 10 * 10) * 1e-6 / Math.Sqrt(3),
            totals.MeanCurrent!.StandardUncertainty!.Value.Amperes,
            1e-18
        );
        // 10 mJ; gain 100, offset 10 uA at 5 V, time base 1, voltage 50 uJ.
        Assert.Equal(
            Math.Sqrt(100 * 100 + 50 * 50 + 1 + 50 * 50) * 1e-6 / Math.Sqrt(3),
            totals.Energy!.StandardUncertainty!.Value.Joules,
            1e-18
        );
        Assert.Equal(
            ["gain of the meter", "offset of the meter", "time base of the meter"],
            totals.Charge.Budget.Select(line => line.Component)
        );
        Assert.Equal(0, totals.Charge.DegreesOfFreedom is double.PositiveInfinity ? 0 : 1);
    }

    [Fact]
    public void Totals_ConstantVoltageGiven_IsChargeTimesIt()
    {
        var integrator = new TraceIntegrator(new TraceAccuracy { VoltageGain = Ratio.FromPercent(3) });
        integrator.Take(TraceChunk.Even(1, [1e-3, 1e-3, 1e-3]));

        var totals = integrator.Totals(voltage: ElectricPotential.FromVolts(3.3))!;
        Assert.Equal(6.6e-3, totals.Energy!.Value.Joules, 1e-17);
        Assert.Equal(6.6e-3 * 0.03 / Math.Sqrt(3), totals.Energy.StandardUncertainty!.Value.Joules, 1e-17);
        Assert.Null(integrator.Totals()!.Energy);
    }

    [Fact]
    public void Totals_Edges_ShowAsSampling()
    {
        // A pulse of one sample: with every other sample it is twice as long or not there.
        var integrator = new TraceIntegrator();
        integrator.Take(TraceChunk.Even(1, [0, 0, 1, 0, 0]));

        var charge = integrator.Totals()!.Charge;
        Assert.Equal(1, charge.Value.Coulombs);
        Assert.Equal(1 / Math.Sqrt(3), charge.StandardUncertainty!.Value.Coulombs, 1e-15);
        Assert.Equal("sampling and noise, from every other sample", charge.Budget.Single().Component);
    }

    [Fact]
    public void Totals_ClippedSamples_AreCountedAndLeaveNoInterval()
    {
        var range = new MeterRange(ElectricCurrent.FromMilliamperes(50), ElectricCurrent.FromMilliamperes(0.1))
        {
            OfRange = Ratio.FromPercent(0.1),
            Digits = 2,
        };
        var accuracy = TraceAccuracy.Of(range);
        var integrator = new TraceIntegrator(accuracy);
        integrator.Take(TraceChunk.Even(1, [0.01, 0.05, 0.06, 0.049]));

        var totals = integrator.Totals()!;
        Assert.Equal(250e-6, accuracy.Offset.Amperes, 1e-18);
        Assert.Equal(2, totals.Clipped);
        Assert.False(totals.Charge.HasInterval);
        Assert.Equal("2 samples are clipped: the truth is above this, by an unknown amount.", totals.Charge.Notes[0]);
    }

    [Fact]
    public void Totals_OneSampleOrNone_HaveNoIntervalAndNoMean()
    {
        var integrator = new TraceIntegrator();
        Assert.Null(integrator.Totals());
        integrator.Take(TraceChunk.Timed([1], [0.5]));

        var totals = integrator.Totals()!;
        Assert.Equal(0, totals.Charge.Value.Coulombs);
        Assert.Equal("One sample alone spans no time.", totals.Charge.Notes[0]);
        Assert.Null(totals.MeanCurrent);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Append_Parts_AreTheWholeToTheBit(bool isEven)
    {
        const int count = 10_000;
        var random = new Random(3);
        double[] amperes = [.. Enumerable.Range(0, count).Select(_ => random.NextDouble())];
        double[] volts = [.. Enumerable.Range(0, count).Select(_ => 3 + random.NextDouble())];
        double[] seconds = [.. Enumerable.Range(0, count).Select(i => i + random.NextDouble())];
        var whole = new TraceIntegrator();
        var parts = new TraceIntegrator();
        whole.Take(Chunk(0, count));
        for (var (from, to) = (0, 1); from < count; (from, to) = (to, Math.Min(count, to * 3)))
        {
            var part = new TraceIntegrator();
            part.Take(Chunk(from, to));
            parts.Append(part);
        }

        Assert.Equal(whole.Totals(), parts.Totals());

        TraceChunk Chunk(int from, int to) =>
            isEven
                ? TraceChunk.Even(0.1, amperes.AsSpan(from..to), volts.AsSpan(from..to))
                : TraceChunk.Timed(seconds.AsSpan(from..to), amperes.AsSpan(from..to), volts.AsSpan(from..to));
    }

    [Fact]
    public void Take_AnotherForm_IsRefused()
    {
        var integrator = new TraceIntegrator();
        integrator.Take(TraceChunk.Even(1, [1.0]));

        Refusal.Is<ArgumentException>(
            () => integrator.Take(TraceChunk.Timed([1], [1.0], [3.0])),
            "chunk",
            "A trace must be of one form throughout, here steps of 1 s without voltages; was times of its own with voltages."
        );
        Refusal.Is<ArgumentException>(
            () => TraceChunk.Timed([1, 2], [1.0]),
            "seconds",
            "Count of times must be 1, one for each current; was 2."
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => integrator.Totals(confidence: 1),
            "confidence",
            "Confidence must be above 0 and below 1; was 1."
        );
    }

    [Fact]
    public async Task ReadAsync_LiveBlocks_AreIntegratedAsTheyCome()
    {
        var integrator = new TraceIntegrator();
        var samples = await TraceFeed.ReadAsync(Blocks(), integrator, TestContext.Current.CancellationToken);

        Assert.Equal(200, samples);
        Assert.Equal(199 * 0.5 * 2e-3, integrator.Totals()!.Charge.Value.Coulombs, 1e-16);
    }

    private static async IAsyncEnumerable<TraceBlock> Blocks()
    {
        for (var i = 0; i < 100; i++)
        {
            await Task.Yield();
            yield return TraceBlock.Even(QuantityText.ParseDuration("0.5 s"), TwoMilliamperes);
        }
    }
}
