using FsCheck.Xunit;
using McuBench.Stats.Hypotheses;

namespace McuBench.Stats.Tests.Hypotheses;

public sealed class CrossedAnovaTests
{
    [Fact]
    public void Of_Penicillin_AgreesWithTheReference()
    {
        var reference = ReferenceCase.Of("anova", "cl-penicillin");
        ComponentAnalysis result = CrossedAnova.Of(
            OneWayTests.GroupsOf(reference, "diameter_plate_rows_sample_columns")
        );

        Agree.Relative(
            reference.Numbers("recomputed", "MS_plate_sample_residual"),
            [.. result.Rows.Select(row => row.MeanSquare)],
            1e-11
        );
        Agree.Relative(
            [
                reference.Number("recomputed", "variance_plate_anova"),
                reference.Number("recomputed", "variance_sample_anova"),
                reference.Number("recomputed", "variance_residual"),
            ],
            [.. result.Components.Select(component => component.Variance.Value)],
            1e-10
        );
        // Printed from an iterative fit by restricted maximum likelihood, the same in a balanced layout.
        Assert.Equal(reference.Number("expected", "mean"), result.Mean.Value, 5e-5);
        Assert.Equal(reference.Number("expected", "se_mean"), result.Mean.StandardError!.Value, 1e-4);
        Assert.Equal([23, 5, 115], result.Rows.Select(row => row.DegreesOfFreedom));
    }

    [Property(Arbitrary = [typeof(Dyadic)])]
    public void Of_Turned_ExchangesTheFactors(Dyadic data)
    {
        double[] values = [.. data.Values, 0, 1, 5, 9, 2, 3, 7.5, 4, -6];
        int columns = 3;
        int rows = values.Length / columns;
        ComponentAnalysis plain = CrossedAnova.Of([
            .. Enumerable.Range(0, rows).Select(i => Sample.Of(values.AsSpan(i * columns, columns))),
        ]);
        ComponentAnalysis turned = CrossedAnova.Of([
            .. Enumerable
                .Range(0, columns)
                .Select(j => Sample.Of([.. Enumerable.Range(0, rows).Select(i => values[i * columns + j] + 1e6)])),
        ]);
        double total = plain.Rows.Sum(row => row.SumOfSquares);

        Assert.Equal(plain.Rows[0].SumOfSquares, turned.Rows[1].SumOfSquares, 1e-10 * total);
        Assert.Equal(plain.Rows[1].SumOfSquares, turned.Rows[0].SumOfSquares, 1e-10 * total);
        Assert.Equal(plain.Components[2].MomentEstimate, turned.Components[2].MomentEstimate, 1e-10 * total);
        double[] used = values[..(rows * columns)];
        double mean = used.Average();
        Agree.Relative(used.Sum(value => (value - mean) * (value - mean)), total, 1e-11);
    }

    [Fact]
    public void Of_SquaresAboveTheRange_AreRefusedByName()
    {
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() =>
            CrossedAnova.Of([Sample.Of(1e200, 2e200), Sample.Of(4e200, -1e200)])
        );

        Assert.Equal("rows", refusal.ParamName);
        Assert.StartsWith(
            "Sum of squares of the values must be below 1.8E308",
            refusal.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Of_Refusals_SayWhatWouldDo()
    {
        Refused("Count of groups must be at least 2; was 1.", Sample.Of(1, 2));
        Refused("Count of values must be at least 2; was 1.", Sample.Of(1), Sample.Of(2));
        Refused("Count of values in a row must be 2, one for each column; was 3.", Sample.Of(1, 2), Sample.Of(1, 2, 3));
        Refused(
            "Values must differ; all were equal, which leaves no variance to part.",
            Sample.Of(3, 3),
            Sample.Of(3, 3)
        );

        static void Refused(string message, params Sample[] rows)
        {
            var refusal = Assert.Throws<ArgumentException>(() => CrossedAnova.Of(rows));
            Assert.Equal("rows", refusal.ParamName);
            Assert.StartsWith(message, refusal.Message, StringComparison.Ordinal);
        }
    }
}
