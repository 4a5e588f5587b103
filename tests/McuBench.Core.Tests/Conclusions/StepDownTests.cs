using FsCheck.Xunit;
using McuBench.Core.Conclusions;
using McuBench.Stats.Hypotheses;

namespace McuBench.Core.Tests.Conclusions;

public class StepDownTests
{
    [Property]
    public bool Adjust_NoMargin_IsHolms(uint[]? draws)
    {
        double[] p = [.. (draws ?? []).Append(7u).Select(d => d / (double)uint.MaxValue)];
        var adjusted = StepDown.Adjust([.. p.Select(v => (v, (double?)null))]);

        return adjusted.Select(a => a.Difference).SequenceEqual(MultipleComparisons.Adjust(p).Values);
    }

    /// <summary>By hand: three pairs stay open until the first has lost both its hypotheses, then two.</summary>
    [Fact]
    public void Adjust_WithMargin_CountsPairsWithAHypothesisLeft()
    {
        var adjusted = StepDown.Adjust([(0.001, 0.01), (0.5, 0.012), (0.02, 0.9)]);

        Assert.Equal(0.003, adjusted[0].Difference, 1e-15);
        Assert.Equal(0.03, adjusted[0].Equality!.Value, 1e-15);

        // 2 · 0.012 is below the step before it, which it therefore takes.
        Assert.Equal(0.03, adjusted[1].Equality!.Value, 1e-15);
        Assert.Equal(0.04, adjusted[2].Difference, 1e-15);
        Assert.Equal(1, adjusted[1].Difference);

        // The second pair is done by then: one pair is left.
        Assert.Equal(1, adjusted[2].Equality);
    }

    [Fact]
    public void Adjust_NoPair_IsEmpty() => Assert.Empty(StepDown.Adjust([]));
}
