using McuBench.Stats.Tests.Distributions;
using McuBench.Stats.Uncertainty;

namespace McuBench.Stats.Tests.Uncertainty;

public sealed class MonteCarloTests
{
    private static readonly InputQuantity[] Mixed =
    [
        InputQuantity.FromStandardUncertainty("n", 10, 0.1),
        InputQuantity.FromStandardUncertainty("t", 2, 0.1, 5),
        InputQuantity.FromRectangular("r", 0, 0.3),
        InputQuantity.FromTriangular("tri", 0, 0.3),
        InputQuantity.FromUShaped("u", 0, 0.3),
    ];

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    public void RunAndRunAdaptive_AnyNumberOfThreads_GiveTheSameBits(int threads)
    {
        var one = new MonteCarloOptions
        {
            Seed = 7,
            Draws = 50_001,
            Threads = 1,
            SignificantDigits = 1,
        };
        MonteCarloOptions several = one with { Threads = threads };

        Assert.Equal(
            MonteCarlo.Run(Mixed, Model, null, one, Token).Sorted.ToArray(),
            MonteCarlo.Run(Mixed, Model, null, several, Token).Sorted.ToArray()
        );
        Assert.Equal(
            MonteCarlo.RunAdaptive(Mixed, Model, null, one, Token).Sorted.ToArray(),
            MonteCarlo.RunAdaptive(Mixed, Model, null, several, Token).Sorted.ToArray()
        );
    }

    [Fact]
    public void Run_OtherSeed_GivesOtherDraws()
    {
        var one = new MonteCarloOptions { Seed = 7, Draws = 1000 };

        Assert.NotEqual(
            MonteCarlo.Run(Mixed, Model, null, one, Token).Value,
            MonteCarlo.Run(Mixed, Model, null, one with { Seed = 8 }, Token).Value
        );
    }

    [Fact]
    public void RunAdaptive_SumOfFourNormals_SettlesWithinItsTolerance()
    {
        InputQuantity[] inputs =
        [
            .. Enumerable.Range(1, 4).Select(i => InputQuantity.FromStandardUncertainty($"x{i}", 0, 1)),
        ];
        MonteCarloResult drawn = MonteCarlo.RunAdaptive(inputs, x => x[0] + x[1] + x[2] + x[3], cancellation: Token);

        // u = 2.0 to two digits leaves half of 0.1; the standard's exact answers are 2 and 3.92.
        Assert.Equal(0.05, drawn.Tolerance!.Value, 1e-15);
        Assert.True(drawn.Settled);
        Assert.Equal(2, drawn.StandardUncertainty, 0.05);
        Assert.Equal(3.92, drawn.Symmetric!.Upper, 0.1);
        Assert.Equal(0, drawn.Draws % 10_000);
        Assert.Empty(drawn.Notes);
    }

    [Fact]
    public void RunAdaptive_TooFewDrawsForTheDigits_SaysSo()
    {
        var options = new MonteCarloOptions { Draws = 20_000, SignificantDigits = 4 };
        MonteCarloResult drawn = MonteCarlo.RunAdaptive(Mixed, Model, null, options, Token);

        Assert.False(drawn.Settled);
        Assert.Equal(20_000, drawn.Draws);
        Assert.Equal("20000 draws did not settle 4 digits of the uncertainty.", Assert.Single(drawn.Notes));
    }

    [Fact]
    public void Run_ModelThatIsConstant_HasNoInterval()
    {
        MonteCarloResult drawn = MonteCarlo.Run(Mixed, _ => 3, cancellation: Token);

        Assert.Equal(0, drawn.StandardUncertainty);
        Assert.Null(drawn.Symmetric);
        Assert.Null(drawn.Shortest);
    }

    [Fact]
    public void Run_ModelGivesNaN_IsRefusedWithTheInputs()
    {
        var input = InputQuantity.FromRectangular("x", 0, 1);
        var refusal = Assert.Throws<ArgumentException>(() =>
            MonteCarlo.Run([input], x => Math.Sqrt(x[0]), cancellation: Token)
        );

        Assert.Equal("model", refusal.ParamName);
        Assert.StartsWith(
            "Model must give a finite number for all that its inputs may be; gave NaN for (-0.",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Run_CorrelatedInputWithLimits_IsRefused()
    {
        var refusal = Assert.Throws<ArgumentException>(() =>
            MonteCarlo.Run(Mixed, Model, [new Correlation("n", "r", 0.5)], cancellation: Token)
        );

        Assert.Equal("inputs", refusal.ParamName);
        Assert.StartsWith(
            "Correlated inputs must be normal for Monte Carlo",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Options_OutOfRange_AreRefused()
    {
        Refusal.Of(
            () => new MonteCarloOptions { Draws = 999 },
            "Draws",
            "Number of draws must be 1000 to 100000000; was 999."
        );
        Refusal.Of(
            () => MonteCarloOptions.Default with { Confidence = 1 },
            "Confidence",
            "Confidence must be above 0 and below 1; was 1."
        );
        Refusal.Of(
            () => MonteCarlo.RunAdaptive(Mixed, Model, null, new MonteCarloOptions { Draws = 1000 }, Token),
            "options",
            "Number of draws of an adaptive run must be at least 20000 at this confidence; was 1000."
        );
    }

    private static double Model(ReadOnlySpan<double> x) => (x[0] / x[1]) + x[2] + (x[3] * x[4]);
}
