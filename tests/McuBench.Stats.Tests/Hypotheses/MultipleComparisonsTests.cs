using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class MultipleComparisonsTests
{
    private static readonly (AdjustmentMethod Method, string Name)[] Methods =
    [
        (AdjustmentMethod.Bonferroni, "bonferroni"),
        (AdjustmentMethod.Holm, "holm"),
        (AdjustmentMethod.Hochberg, "hochberg"),
        (AdjustmentMethod.BenjaminiHochberg, "bh"),
    ];

    [Fact]
    public void Adjust_PublishedSets_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("hypotheses", "cl-p-adjust");
        double[] ten = reference.Numbers("input", "ten");
        foreach ((AdjustmentMethod method, string name) in Methods)
        {
            Agree.Relative(
                reference.Numbers("expected", "ten_sorted_ascending", name),
                [.. MultipleComparisons.Adjust(ten, method).Values.Order()],
                1e-13
            );
            Agree.Relative(
                reference.Numbers("recomputed", "ten_input_order", name),
                MultipleComparisons.Adjust(ten, method).Values.AsSpan(),
                1e-11
            );
            Agree.Relative(
                reference.Numbers("recomputed", "four", name),
                MultipleComparisons.Adjust(reference.Numbers("input", "four"), method).Values.AsSpan(),
                1e-14
            );
        }
    }

    [Theory]
    [InlineData("plain", new[] { 0.01, 0.04, 0.03, 0.005 })]
    [InlineData("ties", new[] { 0.02, 0.5, 0.02, 0.02, 0.9, 0.5, 1, 0 })]
    [InlineData("one", new[] { 0.03, 0.2 })]
    public void Adjust_Sets_AgreeWithRAndStatsmodels(string name, double[] pValues)
    {
        foreach ((AdjustmentMethod method, string label) in Methods)
        {
            AdjustedPValues adjusted = MultipleComparisons.Adjust(pValues, method);
            HypothesisReference.AgreeWithBoth($"adjusted_{label}", name, [.. adjusted.Values], 1e-14, 1e-14);
            Assert.Equal(method, adjusted.Method);
        }
    }

    [Fact]
    public void Adjust_OnePValue_StaysAsItIs() =>
        Assert.All(Methods, m => Assert.Equal([0.04], MultipleComparisons.Adjust([0.04], m.Method).Values));

    [Fact]
    public void Adjust_OutOfRange_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => MultipleComparisons.Adjust([0.5, 1.5]));

        Assert.Equal("pValues", refusal.ParamName);
        Assert.StartsWith(
            "Probability must be between 0 and 1, ends included; was 1.5.",
            refusal.Message,
            StringComparison.Ordinal
        );
        Assert.Throws<ArgumentOutOfRangeException>(() => MultipleComparisons.Adjust([double.NaN]));
        Assert.Throws<ArgumentException>(() => MultipleComparisons.Adjust([]));
    }

    [Fact]
    public void Equals_SameValues_IsTrueAndHasOneHash()
    {
        AdjustedPValues first = MultipleComparisons.Adjust([0.1, 0.2]);

        Assert.Equal(first, MultipleComparisons.Adjust([0.1, 0.2]));
        Assert.Equal(first.GetHashCode(), MultipleComparisons.Adjust([0.1, 0.2]).GetHashCode());
        Assert.NotEqual(first, MultipleComparisons.Adjust([0.1, 0.3]));
        Assert.NotEqual(first, MultipleComparisons.Adjust([0.1, 0.2], AdjustmentMethod.BenjaminiHochberg));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Adjust_AnyPValues_OrdersTheMethodsAndKeepsTheOrder(Dyadic data)
    {
        double[] pValues = data.Map(v => Math.Abs(v) / 50);
        double[][] adjusted = [.. Methods.Select(m => MultipleComparisons.Adjust(pValues, m.Method).Values.ToArray())];
        for (int i = 0; i < pValues.Length; i++)
        {
            // Bonferroni is never below Holm, Holm never below Hochberg, Hochberg never below Benjamini-Hochberg.
            for (int method = 1; method < adjusted.Length; method++)
            {
                Assert.True(adjusted[method][i] <= adjusted[method - 1][i] * (1 + 1e-14));
            }

            Assert.InRange(adjusted[^1][i], pValues[i], 1);
            for (int k = 0; k < i; k++)
            {
                Assert.True(pValues[i] < pValues[k] || adjusted.All(a => a[i] >= a[k]));
            }
        }
    }
}
