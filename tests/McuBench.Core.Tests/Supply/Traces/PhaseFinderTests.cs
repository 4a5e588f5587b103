using McuBench.Core.Supply.Traces;
using UnitsNet;

namespace McuBench.Core.Tests.Supply.Traces;

public sealed class PhaseFinderTests
{
    [Fact]
    public void Phases_EvenSteps_AreDividedInTheMiddleOfTheStep()
    {
        var finder = PhaseFinder.ByThreshold(ElectricCurrent.FromAmperes(2), ElectricCurrent.FromAmperes(3));
        finder.Take(TraceChunk.Even(2, [1.0, 1, 5, 5, 5, 1]));

        var phases = finder.Phases();
        Assert.Equal([false, true, false], phases.Select(phase => phase.IsActive));
        Assert.Equal([0, 3, 9], phases.Select(phase => phase.Start.Seconds));
        Assert.Equal([3, 6, 1], phases.Select(phase => phase.Length.Seconds));
        Assert.Equal([3, 30, 1], phases.Select(phase => phase.Charge.Coulombs));
        Assert.Equal([2L, 3, 1], phases.Select(phase => phase.Samples));
        Assert.Equal([1, 5, 1], phases.Select(phase => phase.MeanCurrent!.Value.Amperes));
        Assert.All(phases, phase => Assert.Null(phase.Energy));
    }

    [Fact]
    public void Phases_UnevenTimesByMarker_AddUpToTheWhole()
    {
        double[] seconds = [1, 2, 4, 5, 7, 8];
        double[] amperes = [1, 1, 6, 4, 1, 2];
        double[] volts = [3, 3, 2.5, 2.5, 3, 3];
        var finder = PhaseFinder.ByMarker();
        var integrator = new TraceIntegrator();
        for (var i = 0; i < seconds.Length; i += 2)
        {
            var chunk = TraceChunk.Timed(
                seconds.AsSpan(i, 2),
                amperes.AsSpan(i, 2),
                volts.AsSpan(i, 2),
                [(byte)(i == 2 ? 1 : 0), (byte)(i == 2 ? 1 : 0)]
            );
            finder.Take(chunk);
            integrator.Take(chunk);
        }

        var phases = finder.Phases();
        var totals = integrator.Totals()!;
        Assert.Equal([1, 3, 6], phases.Select(phase => phase.Start.Seconds));
        Assert.Equal([2, 6 * 1.5 + 4 * 1.5, 2.5], phases.Select(phase => phase.Charge.Coulombs));
        Assert.Equal([6, 37.5, 7.5], phases.Select(phase => phase.Energy!.Value.Joules));
        Assert.Equal(totals.Charge.Value.Coulombs, phases.Sum(phase => phase.Charge.Coulombs), 1e-14);
        Assert.Equal(totals.Energy!.Value.Joules, phases.Sum(phase => phase.Energy!.Value.Joules), 1e-13);
    }

    [Fact]
    public void Phases_MarkerThatNeverFalls_IsOnePhase()
    {
        var finder = PhaseFinder.ByMarker();
        finder.Take(TraceChunk.Even(1, [1.0, 2, 3], default, [0, 1, 1]));

        var phases = finder.Phases();
        Assert.Equal([false, true], phases.Select(phase => phase.IsActive));
        // The task has no end in the trace, and is none.
        Assert.Empty(TaskCharges.Of(phases));
    }

    [Fact]
    public void Phases_NoSampleOrOne_AreNoneOrOneWithoutLength()
    {
        var none = PhaseFinder.ByMarker();
        var one = PhaseFinder.ByThreshold(ElectricCurrent.FromAmperes(1), ElectricCurrent.FromAmperes(1));
        one.Take(TraceChunk.Timed([3], [2.0]));

        Assert.Empty(none.Phases());
        var phase = Assert.Single(one.Phases());
        Assert.Equal((true, 3.0, 0.0), (phase.IsActive, phase.Start.Seconds, phase.Length.Seconds));
        Assert.Null(phase.MeanCurrent);
    }

    [Fact]
    public void Misuse_IsRefusedWithWhatWouldDo()
    {
        var finder = PhaseFinder.ByThreshold(ElectricCurrent.FromAmperes(1), ElectricCurrent.FromAmperes(1));
        finder.Take(TraceChunk.Even(1, [1.0, 2]));

        Refusal.Is<ArgumentException>(
            () => finder.Take(TraceChunk.Even(1, [1.0, double.NaN])),
            "chunk",
            "Samples must all be there to find phases; sample 3 is missing."
        );
        Refusal.Is<ArgumentException>(
            () => finder.Take(TraceChunk.Even(2, [1.0])),
            "chunk",
            "A trace must be of one form throughout; steps, times or voltages have changed."
        );
        Refusal.Is<ArgumentException>(
            () => PhaseFinder.ByMarker().Take(TraceChunk.Even(1, [1.0])),
            "chunk",
            "A trace must have a marker line to find phases by it; has none."
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => PhaseFinder.ByThreshold(ElectricCurrent.FromMilliamperes(2), ElectricCurrent.FromMilliamperes(1)),
            "high",
            "Upper threshold must be at least the lower one of 2 mA; was 1 mA."
        );
        Refusal.Is<ArgumentOutOfRangeException>(
            () => PhaseFinder.ByMarker(0),
            "leastSamples",
            "Least length in samples must be at least 1; was 0."
        );
        _ = finder.Phases();
        Assert.Equal(
            "Samples must be given before the phases are asked for; they were.",
            Assert.Throws<InvalidOperationException>(() => finder.Take(TraceChunk.Even(1, [1.0]))).Message
        );
    }
}
