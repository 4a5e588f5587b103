using System.Collections.Immutable;
using McuBench.Stats.Distributions;

namespace McuBench.Stats.Hypotheses;

/// <summary>
/// From mean squares and what components their expectations hold to tests, components and the variance of the grand mean: the
/// part that all layouts of random factors share.
/// </summary>
/// <param name="sources">The name of each row.</param>
/// <param name="sums">The sum of squares of each row, the last being what is left, in the square of the data's unit times
/// 4^<paramref name="exponent"/>.</param>
/// <param name="degreesOfFreedom">The degrees of freedom of each row.</param>
/// <param name="expected">For each row how often its expectation holds the component of each row; 1 for the last.</param>
/// <param name="exponent">The power of two by which the data were scaled.</param>
/// <param name="count">The number of values.</param>
/// <param name="name">The argument that refusals name.</param>
internal sealed class ComponentTable(
    string[] sources,
    double[] sums,
    int[] degreesOfFreedom,
    double[][] expected,
    int exponent,
    int count,
    string name
)
{
    // With fewer a test or an interval has no meaning.
    private const double LeastDegreesOfFreedom = 0.5;

    private readonly MeanSquares _squares = new(
        [.. sums.Select((sum, i) => sum / degreesOfFreedom[i])],
        degreesOfFreedom
    );

    /// <summary>The whole analysis.</summary>
    /// <param name="mean">The grand mean, in the unit of the data.</param>
    /// <param name="sharesInMean">How much of each component is in the variance of the grand mean.</param>
    /// <param name="isBalanced">Whether all groups of a factor are of one size.</param>
    /// <param name="confidence">The confidence of each interval.</param>
    /// <param name="method">The method's name.</param>
    internal ComponentAnalysis Analyse(
        double mean,
        double[] sharesInMean,
        bool isBalanced,
        double confidence,
        string method
    )
    {
        double[][] multiples = Multiples();
        int rows = sources.Length;
        var table = ImmutableArray.CreateBuilder<AnovaRow>(rows);
        var tests = ImmutableArray.CreateBuilder<FTestResult?>(rows - 1);
        var components = ImmutableArray.CreateBuilder<VarianceComponent>(rows);
        for (int i = 0; i < rows; i++)
        {
            table.Add(new AnovaRow(sources[i], Squared(sums[i]), degreesOfFreedom[i]));
            components.Add(Component(i, multiples[i], isBalanced, confidence, method));
            if (i < rows - 1)
            {
                tests.Add(Test(i, multiples, method));
            }
        }

        return new ComponentAnalysis(
            table.MoveToImmutable(),
            tests.MoveToImmutable(),
            components.MoveToImmutable(),
            Mean(mean, Combination(multiples, sharesInMean), isBalanced, confidence, method),
            isBalanced,
            method
        );
    }

    // Each component as a sum of multiples of mean squares: the expectations solved from the last row up.
    private double[][] Multiples()
    {
        int rows = sources.Length;
        double[][] multiples = new double[rows][];
        for (int i = rows - 1; i >= 0; i--)
        {
            double[] others = [.. expected[i].Select((share, m) => m == i ? 0 : -share)];
            double[] row = Combination(multiples, others);
            row[i] += 1;
            multiples[i] = [.. row.Select(multiple => multiple / expected[i][i])];
        }

        return multiples;
    }

    private static double[] Combination(double[][] multiples, double[] shares)
    {
        double[] sum = new double[shares.Length];
        for (int m = 0; m < shares.Length; m++)
        {
            for (int k = 0; k < sum.Length && shares[m] != 0; k++)
            {
                sum[k] += shares[m] * multiples[m][k];
            }
        }

        // What should cancel in balanced layouts leaves rounding errors, which would be taken for a share.
        double largest = sum.Max(Math.Abs);
        return [.. sum.Select(multiple => Math.Abs(multiple) < 1e-13 * largest ? 0 : multiple)];
    }

    private VarianceComponent Component(int row, double[] multiples, bool isBalanced, double confidence, string method)
    {
        double moment = Squared(_squares.Combine(multiples));
        (double lower, double upper) = _squares.Interval(multiples, confidence);
        lower = Squared(Math.Max(0, lower));
        upper = Squared(upper);
        var notes = ImmutableArray.CreateBuilder<string>();
        if (moment < 0)
        {
            notes.Add(
                "The mean squares ask for a variance below 0, for which 0 stands: the source is too small to be seen."
            );
        }

        bool hasInterval = upper > lower;
        if (!hasInterval)
        {
            notes.Add("There is no interval: its upper end would not be above 0.");
        }
        else if (!isBalanced && row < sources.Length - 1)
        {
            notes.Add("The interval is approximate beyond its method, since the groups are not of one size.");
        }

        var variance = new Estimate(Math.Max(0, moment), count, $"variance component, {method}")
        {
            Interval = hasInterval ? new Interval(lower, upper, confidence) : null,
            Notes = notes.ToImmutable(),
        };
        return new VarianceComponent(sources[row], variance, moment);
    }

    // Against what the mean square is expected to be without its own component.
    private FTestResult? Test(int row, double[][] multiples, string method)
    {
        double[] below = Combination(multiples, [.. expected[row].Select((share, m) => m == row ? 0 : share)]);
        double denominator = _squares.Combine(below);
        if (!(denominator > 0))
        {
            return null;
        }

        double f = _squares[row] / denominator;
        if (!double.IsFinite(f))
        {
            return null;
        }

        bool isExact = below.Count(multiple => multiple != 0) == 1;
        double df = isExact
            ? _squares.DegreesOfFreedom(Array.FindIndex(below, multiple => multiple != 0))
            : _squares.Satterthwaite(below);
        if (df < LeastDegreesOfFreedom)
        {
            return null;
        }

        return new FTestResult(
            f,
            _squares.DegreesOfFreedom(row),
            df,
            FisherF.Of(_squares.DegreesOfFreedom(row), df).UpperTail(f),
            count,
            isExact ? method : $"{method}, Satterthwaite's denominator"
        );
    }

    private Estimate Mean(double mean, double[] multiples, bool isBalanced, double confidence, string method)
    {
        double variance = _squares.Combine(multiples);
        double df = variance > 0 ? _squares.Satterthwaite(multiples) : 0;
        var estimate = new Estimate(mean, count, $"mean, {method}");
        if (df < LeastDegreesOfFreedom)
        {
            return estimate with
            {
                Notes = ["There is no standard error: the mean squares nearly cancel in the variance of the mean."],
            };
        }

        double error = Math.ScaleB(Math.Sqrt(variance), exponent);
        double reach = error * StudentT.Of(df).UpperQuantile((1 - confidence) / 2);
        return estimate with
        {
            StandardError = error,
            DegreesOfFreedom = df,
            Interval = new Interval(mean - reach, mean + reach, confidence),
            Notes = isBalanced
                ? []
                : ["The degrees of freedom are Satterthwaite's, since the groups are not of one size."],
        };
    }

    private double Squared(double value) =>
        Check.Representable(Math.ScaleB(value, 2 * exponent), "Sum of squares", name);
}
