using FsCheck.Xunit;
using McuBench.Stats.Uncertainty;

namespace McuBench.Stats.Tests.Uncertainty;

public sealed class PropagationTests
{
    private static readonly InputQuantity A = InputQuantity.FromStandardUncertainty("a", 3, 0.3, 8);
    private static readonly InputQuantity B = InputQuantity.FromRectangular("b", 2, 0.2);

    [Property]
    public void FirstOrder_ProductInEitherOrderAndGiven_Agree(byte first, byte second, sbyte correlation)
    {
        var a = InputQuantity.FromStandardUncertainty("a", 1 + first, 0.5);
        var b = InputQuantity.FromStandardUncertainty("b", 1 + second, 0.25);
        Correlation[] joined = [new("a", "b", correlation / 128.0)];
        UncertaintyBudget found = Propagation.FirstOrder([a, b], x => x[0] * x[1], joined);
        UncertaintyBudget turned = Propagation.FirstOrder([b, a], x => x[1] * x[0], joined);
        UncertaintyBudget given = Propagation.WithSensitivities([a, b], a.Value * b.Value, [b.Value, a.Value], joined);

        Agree.Relative(given.StandardUncertainty, found.StandardUncertainty, 1e-10);
        Agree.Relative(given.StandardUncertainty, turned.StandardUncertainty, 1e-10);
        Agree.Relative(1, given.Components.Sum(part => part.Share), 1e-12);
    }

    [Property]
    public void FirstOrder_ModelScaledAndShifted_ScalesTheUncertaintyOnly(short shift, byte power)
    {
        double scale = Math.ScaleB(1, (power % 40) - 20);
        UncertaintyBudget plain = Propagation.FirstOrder([A, B], x => x[0] / x[1]);
        UncertaintyBudget moved = Propagation.FirstOrder([A, B], x => scale * ((x[0] / x[1]) + (shift / 64.0)));

        Agree.Relative(scale * plain.StandardUncertainty, moved.StandardUncertainty, 1e-9);
        Agree.Relative(plain.DegreesOfFreedom!.Value, moved.DegreesOfFreedom!.Value, 1e-8);
    }

    [Fact]
    public void FirstOrder_FullCorrelationThatCancels_HasNoUncertaintyAndSaysSo()
    {
        var a = InputQuantity.FromStandardUncertainty("a", 3, 0.3);
        var b = InputQuantity.FromStandardUncertainty("b", 3, 0.3);
        UncertaintyBudget budget = Propagation.WithSensitivities([a, b], 0, [1, -1], [new("a", "b", 1)]);

        Assert.Equal(0, budget.StandardUncertainty);
        Assert.Null(budget.IntervalAt());
        Assert.Single(budget.Notes);
    }

    [Fact]
    public void FirstOrder_CorrelatedInputsOfUnlikeFreedom_HasNoCoverageFactor()
    {
        UncertaintyBudget budget = Propagation.FirstOrder([A, B], x => x[0] + x[1], [new("a", "b", 0.5)]);

        Assert.Null(budget.DegreesOfFreedom);
        Assert.Null(budget.ExpandedUncertainty());
        Assert.Equal(
            "Correlated inputs of different degrees of freedom: none can be had for the result, and no coverage factor.",
            Assert.Single(budget.Notes)
        );
    }

    [Fact]
    public void Divisors_OfEachKind_AreThoseOfTheGuide()
    {
        Agree.Relative(Math.Sqrt(1 / 3.0), InputQuantity.FromRectangular("x", 0, 1).StandardUncertainty, 1e-15);
        Agree.Relative(Math.Sqrt(1 / 6.0), InputQuantity.FromTriangular("x", 0, 1).StandardUncertainty, 1e-15);
        Agree.Relative(Math.Sqrt(1 / 2.0), InputQuantity.FromUShaped("x", 0, 1).StandardUncertainty, 1e-15);
        Assert.Equal(0.25, InputQuantity.FromExpanded("x", 0, 0.5, 2).StandardUncertainty);
    }

    [Fact]
    public void FromReadings_ReadingsThatAreAllEqual_AreRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => InputQuantity.FromReadings("t", Sample.Of(2.4, 2.4, 2.4)));

        Assert.Equal("readings", refusal.ParamName);
        Assert.StartsWith(
            "Readings must scatter to show an uncertainty; were 3 times 2.4: state the resolution as rectangular limits.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("a", "c", "Correlation must be of two of the inputs; none has the name 'c'.")]
    public void FirstOrder_CorrelationOfAnUnknownInput_IsRefused(string first, string second, string message)
    {
        var refusal = Assert.Throws<ArgumentException>(() =>
            Propagation.FirstOrder([A, B], x => x[0], [new Correlation(first, second, 0.1)])
        );

        Assert.Equal("correlations", refusal.ParamName);
        Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FirstOrder_CorrelationsThatCannotHoldTogether_AreRefused()
    {
        var c = InputQuantity.FromStandardUncertainty("c", 1, 1);
        var refusal = Assert.Throws<ArgumentException>(() =>
            Propagation.FirstOrder([A, B, c], x => x[0], [new("a", "b", 0.9), new("a", "c", 0.9), new("b", "c", -0.9)])
        );

        Assert.Equal("correlations", refusal.ParamName);
        Assert.Contains("those of 'c' with the inputs before it can't.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void FirstOrder_NameThatStandsTwice_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() => Propagation.FirstOrder([A, A], x => x[0]));

        Assert.Equal("inputs", refusal.ParamName);
        Assert.StartsWith(
            "Names of the inputs must differ; 'a' stands twice.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }
}
