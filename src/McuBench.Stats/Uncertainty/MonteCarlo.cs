using System.Collections.Immutable;
using System.Globalization;

namespace McuBench.Stats.Uncertainty;

/// <summary>Propagation of distributions by Monte Carlo (gum-s1-2008): draws the inputs, runs the model on each draw and
/// takes value, uncertainty and intervals from what comes out.</summary>
/// <remarks>
/// The draws come from Philox4x64-10 (<see cref="Resampling.RandomStream"/>), a stream for each block of draws: the same
/// seed gives the same bits on any number of threads. Correlated inputs must be normal. The degrees of freedom of inputs
/// with limits are not used.
/// </remarks>
public static class MonteCarlo
{
    // Large enough that starting a block costs nothing beside it, small enough that all threads have work.
    private const int BlockOfAFixedRun = 4096;

    // Blocks made ahead of the test for an end; a constant, so that thread counts change nothing.
    private const int BlocksAhead = 8;

    // Readings fewer than 4 leave a t distribution without a variance.
    private const double FreedomWithVariance = 2;

    /// <summary>Runs a given number of draws. O(n log n) in the draws.</summary>
    /// <param name="inputs">The inputs, one or more, of different names.</param>
    /// <param name="model">The model; called from several threads at once.</param>
    /// <param name="correlations">The correlations that are not 0; null for independent inputs.</param>
    /// <param name="options">How to draw; null for <see cref="MonteCarloOptions.Default"/>.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <exception cref="ArgumentException">Names repeat or are unknown, correlations can't hold together, a correlated
    /// input is not normal, or the model gave NaN or infinity for a draw, which the message shows.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    /// <exception cref="AggregateException">The model threw; what it threw is inside.</exception>
    public static MonteCarloResult Run(
        IReadOnlyList<InputQuantity> inputs,
        MeasurementModel model,
        IReadOnlyList<Correlation>? correlations = null,
        MonteCarloOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        options ??= MonteCarloOptions.Default;
        (ModelDraws draws, ImmutableArray<string> notes) = Prepare(inputs, model, correlations, options);
        double[] results = new double[options.Draws];
        int blocks = (results.Length + BlockOfAFixedRun - 1) / BlockOfAFixedRun;
        Parallel.For(0, blocks, Threads(options, cancellation), block => draws.Fill(block, Part(results, block)));
        for (int block = 0; block < blocks; block++)
        {
            draws.RefuseNotFinite(block, Part(results, block));
        }

        return new MonteCarloResult(results, options) { Notes = notes };

        static Span<double> Part(double[] results, int block)
        {
            int start = block * BlockOfAFixedRun;
            return results.AsSpan(start, Math.Min(BlockOfAFixedRun, results.Length - start));
        }
    }

    /// <summary>Draws until value, standard uncertainty and both ends of an interval have settled to the digits asked for
    /// (gum-s1-2008, 7.9), or the number of draws is used up, which a note says.</summary>
    /// <param name="inputs">The inputs, one or more, of different names.</param>
    /// <param name="model">The model; called from several threads at once.</param>
    /// <param name="correlations">The correlations that are not 0; null for independent inputs.</param>
    /// <param name="options">How to draw; null for <see cref="MonteCarloOptions.Default"/>. <see
    /// cref="MonteCarloOptions.Draws"/> is the most that are drawn; at least two blocks always are, of 10,000 or 100/(1 −
    /// confidence) each, whichever is more.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <exception cref="ArgumentException">As for <see cref="Run"/>.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    /// <exception cref="AggregateException">The model threw; what it threw is inside.</exception>
    public static MonteCarloResult RunAdaptive(
        IReadOnlyList<InputQuantity> inputs,
        MeasurementModel model,
        IReadOnlyList<Correlation>? correlations = null,
        MonteCarloOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        options ??= MonteCarloOptions.Default;
        (ModelDraws draws, ImmutableArray<string> notes) = Prepare(inputs, model, correlations, options);
        var blocks = new SettlingBlocks(options);
        while (!blocks.Settled && blocks.RoomForMore)
        {
            double[][] ahead = new double[BlocksAhead][];
            int made = blocks.Count;
            Parallel.For(
                0,
                BlocksAhead,
                Threads(options, cancellation),
                k =>
                {
                    ahead[k] = new double[blocks.Size];
                    draws.Fill(made + k, ahead[k]);
                }
            );
            for (int k = 0; k < BlocksAhead && !blocks.Settled && blocks.RoomForMore; k++)
            {
                draws.RefuseNotFinite(made + k, ahead[k]);
                blocks.Add(ahead[k]);
            }
        }

        return new MonteCarloResult(blocks.All(), options)
        {
            Settled = blocks.Settled,
            Tolerance = blocks.Tolerance,
            Notes = blocks.Settled
                ? notes
                :
                [
                    .. notes,
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{blocks.Count * blocks.Size} draws did not settle {options.SignificantDigits} digits of the uncertainty."
                    ),
                ],
        };
    }

    private static (ModelDraws Draws, ImmutableArray<string> Notes) Prepare(
        IReadOnlyList<InputQuantity> inputs,
        MeasurementModel model,
        IReadOnlyList<Correlation>? correlations,
        MonteCarloOptions options
    )
    {
        ArgumentNullException.ThrowIfNull(model);
        var set = new InputSet(inputs, correlations);
        var draws = new ModelDraws(new InputDraws(set), model, options.Seed);
        ImmutableArray<string> notes =
        [
            .. set
                .Inputs.Where(input =>
                    input.Shape == InputShape.StudentT && input.DegreesOfFreedom <= FreedomWithVariance
                )
                .Select(input =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"'{input.Name}' has {input.DegreesOfFreedom} degrees of freedom, and so a distribution without a variance: only the intervals mean something."
                    )
                ),
        ];
        return (draws, notes);
    }

    private static ParallelOptions Threads(MonteCarloOptions options, CancellationToken cancellation) =>
        new()
        {
            // As many as the runtime sees fit, where none is asked for.
            MaxDegreeOfParallelism = options.Threads ?? -1,
            CancellationToken = cancellation,
        };
}
