using McuBench.Stats.Intervals;

namespace McuBench.Stats.Tests.Intervals;

public sealed class ToleranceIntervalTests
{
    [Fact]
    public void Factors_CountsContentsAndConfidences_AgreeWithTwoIndependentQuadratures()
    {
        var r = ReferenceCase.Of("intervals-r", "factors");
        var scipy = ReferenceCase.Of("intervals-scipy", "factors");
        double[] counts = r.Numbers("n");
        for (int i = 0; i < counts.Length; i++)
        {
            var options = new ToleranceOptions
            {
                Content = r.Numbers("content")[i],
                Confidence = r.Numbers("confidence")[i],
            };
            double both = ToleranceFactor.Of((int)counts[i], options);
            double one = ToleranceFactor.Of((int)counts[i], options with { Side = ToleranceSide.Upper });

            Agree.Relative(r.Numbers("two_sided")[i], both, 1e-10);
            Agree.Relative(scipy.Numbers("two_sided")[i], both, 1e-10);
            Agree.Relative(scipy.Numbers("one_sided")[i], one, 1e-10);
            Agree.Relative(r.Numbers("one_sided")[i], one, 1e-10);
        }
    }

    [Fact]
    public void Factors_OneSided_AgreeWithThePublishedTable()
    {
        var reference = ReferenceCase.Of("critical-values", "cv-tolerance-one-sided");
        double[] counts = reference.Numbers("input", "n");
        double[] contents = reference.Numbers("input", "content_p");
        double[][] expected = reference.Rows("recomputed", "confidence_0.95");
        for (int i = 0; i < counts.Length; i++)
        {
            for (int j = 0; j < contents.Length; j++)
            {
                // Kept to eight or nine digits.
                Agree.Relative(
                    expected[i][j],
                    ToleranceFactor.Of(
                        (int)counts[i],
                        new ToleranceOptions { Content = contents[j], Side = ToleranceSide.Upper }
                    ),
                    2e-8
                );
            }
        }
    }

    [Fact]
    public void Factors_HandbookCases_Agree()
    {
        var reference = ReferenceCase.Of("nist-handbook", "hb-tolerance-factors");
        var options = new ToleranceOptions { Content = 0.9, Confidence = 0.99 };
        var upper = options with { Side = ToleranceSide.Upper };

        Agree.Relative(reference.Number("recomputed", "k1_noncentral_t_N43"), ToleranceFactor.Of(43, upper), 1e-9);
        Agree.Relative(reference.Number("recomputed", "k1_noncentral_t_N6"), ToleranceFactor.Of(6, upper), 1e-9);
        // The handbook's two-sided factor is Howe's approximation, a quarter of a percent below the exact one.
        Agree.Relative(reference.Number("recomputed", "k2_howe_N43"), ToleranceFactor.Of(43, options), 3e-3);
    }

    [Fact]
    public void Normal_ThreeSides_AreMeanAndFactorTimesDeviation()
    {
        var sample = Sample.Of(1, 2, 3, 4, 5, 6);
        var options = new ToleranceOptions { Content = 0.9, Confidence = 0.99 };
        double deviation = Math.Sqrt(3.5);
        Interval upper = ToleranceInterval.Normal(sample, options with { Side = ToleranceSide.Upper }).Interval!;
        Interval lower = ToleranceInterval.Normal(sample, options with { Side = ToleranceSide.Lower }).Interval!;

        Assert.Equal(double.NegativeInfinity, upper.Lower);
        Agree.Relative(3.5 + 4.411080572 * deviation, upper.Upper, 1e-9);
        Agree.Relative(3.5 - 4.411080572 * deviation, lower.Lower, 1e-9);
        Assert.Equal(double.PositiveInfinity, lower.Upper);
        Assert.Equal(3.5, ToleranceInterval.Normal(sample, options).Value);
    }

    [Fact]
    public void DistributionFree_CountsOfTheTable_AreTheLeastThatWillDo()
    {
        var reference = ReferenceCase.Of("critical-values", "cv-wilks");
        double[][] promises = reference.Rows("input", "content_and_confidence");
        for (int i = 0; i < promises.Length; i++)
        {
            var options = new ToleranceOptions { Content = promises[i][0], Confidence = promises[i][1] };

            NeedsExactly((int)reference.Numbers("expected", "n_two_sided")[i], options);
            NeedsExactly(
                (int)reference.Numbers("expected", "n_one_sided")[i],
                options with
                {
                    Side = ToleranceSide.Upper,
                }
            );
            NeedsExactly(
                (int)reference.Numbers("expected", "n_one_sided")[i],
                options with
                {
                    Side = ToleranceSide.Lower,
                }
            );
        }
    }

    [Fact]
    public void DistributionFree_ManyValues_LeavesOutWhatItCan()
    {
        // By hand from binomial sums: of 1000 values 0.95 of the population lie with confidence 0.95 below the 962nd.
        var sample = Sample.Of([.. Enumerable.Range(1, 1000).Select(i => (double)i)]);
        var options = new ToleranceOptions { Side = ToleranceSide.Upper };

        Assert.Equal(962, ToleranceInterval.DistributionFree(sample, options).Interval!.Upper);
    }

    [Fact]
    public void BothKinds_NoSpread_HaveNoInterval()
    {
        Assert.Null(ToleranceInterval.Normal(Sample.Of(1)).Interval);
        Assert.Null(ToleranceInterval.Normal(Sample.Of(1, 1)).Interval);
        Assert.Null(ToleranceInterval.DistributionFree(Sample.Of(new double[100])).Interval);
    }

    [Fact]
    public void Options_OutOfRange_AreRefused()
    {
        Assert.Equal(
            "Content",
            Assert.Throws<ArgumentOutOfRangeException>(() => new ToleranceOptions { Content = 99 }).ParamName
        );
        Assert.Equal(
            "Confidence",
            Assert.Throws<ArgumentOutOfRangeException>(() => new ToleranceOptions { Confidence = 0 }).ParamName
        );
    }

    private static void NeedsExactly(int count, ToleranceOptions options)
    {
        double[] values = [.. Enumerable.Range(1, count).Select(i => (double)i)];

        Assert.NotNull(ToleranceInterval.DistributionFree(Sample.Of(values), options).Interval);
        Assert.StartsWith(
            $"Count of values must be at least {count} for ",
            Assert
                .Throws<ArgumentException>(() =>
                    ToleranceInterval.DistributionFree(Sample.Of(values.AsSpan(1)), options)
                )
                .Message,
            StringComparison.Ordinal
        );
    }
}
