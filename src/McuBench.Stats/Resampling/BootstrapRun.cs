using System.Buffers;
using System.Globalization;
using McuBench.Stats.Descriptive;

namespace McuBench.Stats.Resampling;

/// <summary>Draws the resamples of a problem and makes the result of them.</summary>
internal static class BootstrapRun
{
    private const string NoSpread = "All resamples give the same value: no standard error and no interval.";

    internal static BootstrapResult Of(BootstrapProblem problem, BootstrapOptions options)
    {
        if (!double.IsFinite(problem.Observed))
        {
            throw NotFinite("of the data", problem.Observed);
        }

        double[] values = ArrayPool<double>.Shared.Rent(options.Resamples);
        double[]? errors =
            options.Method == BootstrapMethod.Studentized ? ArrayPool<double>.Shared.Rent(options.Resamples) : null;
        try
        {
            Draw(problem, options, values, errors);
            return Result(
                problem,
                options,
                values.AsSpan(0, options.Resamples),
                errors is null ? [] : errors.AsSpan(0, options.Resamples)
            );
        }
        finally
        {
            ArrayPool<double>.Shared.Return(values);
            if (errors is not null)
            {
                ArrayPool<double>.Shared.Return(errors);
            }
        }
    }

    private static void Draw(BootstrapProblem problem, BootstrapOptions options, double[] values, double[]? errors)
    {
        if (options.Threads == 1)
        {
            Draw(problem, options, values, errors, 0, options.Resamples);
            return;
        }

        int share = (options.Resamples + options.Threads - 1) / options.Threads;
        try
        {
            Parallel.For(
                0,
                options.Threads,
                new ParallelOptions { MaxDegreeOfParallelism = options.Threads },
                thread =>
                {
                    int from = Math.Min(thread * share, options.Resamples);
                    Draw(problem, options, values, errors, from, Math.Min(from + share, options.Resamples));
                }
            );
        }
        catch (AggregateException fault) when (fault.InnerExceptions.All(inner => inner is ArgumentException))
        {
            // The same refusal as on one thread.
            throw fault.InnerExceptions.Cast<ArgumentException>().OrderBy(inner => inner.Message.Length).First();
        }
    }

    private static void Draw(
        BootstrapProblem problem,
        BootstrapOptions options,
        double[] values,
        double[]? errors,
        int from,
        int to
    )
    {
        Replicator replicator = problem.Replicator();
        var random = RandomStream.Of(options.Seed);
        for (int i = from; i < to; i++)
        {
            random.MoveTo((ulong)i);
            if (errors is null)
            {
                values[i] = replicator.Draw(random);
            }
            else
            {
                (values[i], errors[i]) = replicator.DrawWithError(random);
            }

            if (!double.IsFinite(values[i]))
            {
                throw NotFinite(string.Create(CultureInfo.InvariantCulture, $"of resample {i}"), values[i]);
            }
        }
    }

    private static BootstrapResult Result(
        BootstrapProblem problem,
        BootstrapOptions options,
        Span<double> values,
        Span<double> errors
    )
    {
        var deviations = SquaredDeviations.Of(values);
        double spread = deviations.RootOver(values.Length - 1);
        double bias = deviations.UnscaledMean - problem.Observed;
        var estimate = new Estimate(problem.Observed, problem.Count, options.Describe(problem.Name, problem.Scheme));
        if (spread == 0)
        {
            return new BootstrapResult(estimate with { Notes = [NoSpread] }, bias, options);
        }

        var ends = options.Method switch
        {
            BootstrapMethod.Percentile => BootstrapEnds.Percentile(values, options.Confidence),
            BootstrapMethod.Basic => BootstrapEnds.Basic(values, options.Confidence, problem.Observed),
            BootstrapMethod.Studentized => BootstrapEnds.Studentized(
                values,
                errors,
                options.Confidence,
                problem.Observed,
                problem.StandardError ?? spread
            ),
            _ => BootstrapEnds.BiasCorrected(values, options.Confidence, problem.Observed, problem.Acceleration()),
        };
        return new BootstrapResult(
            estimate with
            {
                StandardError = spread,
                Interval = ends.Interval,
                Notes = ends.Note is null ? [] : [ends.Note],
            },
            bias,
            options
        );
    }

    private static ArgumentException NotFinite(string of, double was) =>
        new(
            string.Create(CultureInfo.InvariantCulture, $"Statistic {of} must be a finite number; was {was}."),
            "statistic"
        );
}
