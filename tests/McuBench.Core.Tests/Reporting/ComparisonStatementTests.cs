using System.Globalization;
using System.Text.RegularExpressions;
using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Reporting;

/// <summary>The words agree with the numbers, whichever way round the comparison stands.</summary>
public sealed class ComparisonStatementTests
{
    private static readonly double[] Wobble = [0.9990, 1.0004, 1.0012, 0.9996, 0.9998];

    private static readonly Attachment Panel = new(AttachmentKind.Display, "panel", AttachmentState.Active);

    [Fact]
    public void Of_FirstTakesLess_SaysByHowMuchOfTheSecond()
    {
        var comparison = Compare(Summary("Marl", 200, 0.8), Summary("Tuff", 160, 1.0));

        var said = ComparisonStatement.Of(comparison);

        Assert.StartsWith("Marl takes 20.0", said, StringComparison.Ordinal);
        Assert.Contains(" % less time than Tuff for the echo spectrum (95 % interval ", said, StringComparison.Ordinal);
        Assert.Contains(
            "5 trials each, this specimen of each, whole run); that is 1.25",
            said,
            StringComparison.Ordinal
        );
        Assert.EndsWith(
            " times as fast. The setups differ in board (Marl; Tuff) and clock (200 MHz; 160 MHz).",
            said,
            StringComparison.Ordinal
        );
        AssertPercentagesAgree(said, comparison.TimeSaved);
    }

    [Fact]
    public void OfQuantity_SidesExchanged_SaysTheSame()
    {
        var marl = Summary("Marl", 200, 0.8);
        var tuff = Summary("Tuff", 160, 1.1);
        var one = Compare(marl, tuff);
        var other = Compare(tuff, marl);

        Assert.Equal(
            ComparisonStatement.OfQuantity(one, one.RunTime),
            ComparisonStatement.OfQuantity(other, other.RunTime)
        );
        Assert.Equal(
            ComparisonStatement.OfQuantity(one, one.CyclesPerItem),
            ComparisonStatement.OfQuantity(other, other.CyclesPerItem)
        );
    }

    [Fact]
    public void OfQuantity_MoreWorkPerClock_CountsCyclesOfTheWorkItem()
    {
        // 0.9 s at 160 MHz are 144e6 cycles, 1 s at 200 MHz 200e6: 28 % fewer.
        var comparison = Compare(Summary("Marl", 200, 1.0), Summary("Tuff", 160, 0.9));

        var said = ComparisonStatement.OfQuantity(comparison, comparison.CyclesPerItem);

        Assert.StartsWith("Tuff needs 28.0", said, StringComparison.Ordinal);
        Assert.Contains(
            " % fewer clock cycles per spectrum than Marl for the echo spectrum (95 % interval ",
            said,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void OfQuantity_NothingShown_SaysSoWithTheSmallestDifferenceThatWouldShow()
    {
        var comparison = Compare(Summary("Marl", 200, 1.0), Summary("Tuff", 160, 1.0002));

        var said = ComparisonStatement.OfQuantity(comparison, comparison.RunTime);

        Assert.Equal(Verdict.NotResolved, comparison.RunTime.Verdict);
        Assert.StartsWith(
            "Marl and Tuff are not resolved in run time for the echo spectrum: the first's is 0.9998 times the second's (95 % interval ",
            said,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "so neither a difference nor equality is shown. Data like these show",
            said,
            StringComparison.Ordinal
        );
        Assert.EndsWith(" % or more in four of five studies.", said, StringComparison.Ordinal);
    }

    [Fact]
    public void OfQuantity_EqualWithinMargin_NamesTheMargin()
    {
        var margin = ConclusionOptions.Default with { Margin = Ratio.FromPercent(2) };
        var comparison = Compare(Summary("Marl", 200, 1.0), Summary("Tuff", 160, 1.0002), margin);

        var said = ComparisonStatement.OfQuantity(comparison, comparison.RunTime);

        Assert.StartsWith(
            "Marl and Tuff are equal in run time within the stated margin of 2 % for the echo spectrum (ratio 0.9998, 95 % interval ",
            said,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void OfQuantity_DifferentWithinMargin_SaysBoth()
    {
        var margin = ConclusionOptions.Default with { Margin = Ratio.FromPercent(2) };
        var comparison = Compare(Summary("Marl", 200, 1.0), Summary("Tuff", 160, 1.01), margin);

        var said = ComparisonStatement.OfQuantity(comparison, comparison.RunTime);

        Assert.StartsWith("Marl takes 0.99", said, StringComparison.Ordinal);
        Assert.EndsWith("The difference is real, yet within the stated margin of 2 %.", said, StringComparison.Ordinal);
    }

    [Fact]
    public void OfQuantity_OneTrialEach_GetsNoVerdict()
    {
        var comparison = Compare(Summary("Marl", 200, 0.8, trials: 1), Summary("Tuff", 160, 1.0, trials: 1));

        var said = ComparisonStatement.OfQuantity(comparison, comparison.RunTime);

        Assert.Equal(
            "Marl and Tuff get no verdict in run time for the echo spectrum: a side has too few trials or readings for its scatter to be known. The first's is 0.8000 times the second's.",
            said
        );
    }

    [Fact]
    public void OfQuantity_Charge_SaysGrossAndWhatIsIncluded()
    {
        var comparison = Compare(
            Summary("Marl", 200, 1.0, milliamperes: 40, attachments: [Panel]),
            Summary("Tuff", 160, 1.0, milliamperes: 80)
        );

        var said = ComparisonStatement.OfQuantity(comparison, comparison.ChargePerTask!);

        Assert.StartsWith("Marl costs 50", said, StringComparison.Ordinal);
        Assert.Contains(" % less charge per task than Tuff for the echo spectrum (", said, StringComparison.Ordinal);
        Assert.Contains("gross, whole board, panel included).", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_TrialCountsDiffer_SaysBoth()
    {
        var comparison = Compare(Summary("Marl", 200, 0.8, trials: 5), Summary("Tuff", 160, 1.0, trials: 4));

        Assert.Contains("; 5 and 4 trials, ", ComparisonStatement.Of(comparison), StringComparison.Ordinal);
    }

    private static SetupComparison Compare(
        SetupSummary first,
        SetupSummary second,
        ConclusionOptions? options = null
    ) => SetupComparison.Of(first, second, options);

    private static SetupSummary Summary(
        string name,
        double megahertz,
        double seconds,
        int trials = 5,
        double? milliamperes = null,
        IReadOnlyList<Attachment>? attachments = null
    )
    {
        var setup = new Setup(name, new Board(name), Frequency.FromMegahertz(megahertz))
        {
            Attachments = attachments ?? [],
        };
        var series = TrialSeries.Of(
            setup,
            Sketch.Echo,
            Sketch.Microseconds,
            Wobble.Take(trials).Select(factor => Duration.FromSeconds(seconds * factor))
        );
        var meter = new Meter("bench meter", Sketch.Fifty with { Digits = 2 }, Sketch.FiveHundred with { Digits = 2 });
        var readings = milliamperes is { } current
            ? new[]
            {
                new SupplyReading(
                    setup,
                    meter,
                    SupplyPhase.Running,
                    ElectricCurrent.FromMilliamperes(current),
                    Sketch.Echo
                ),
            }
            : [];
        return SetupSummary.Of(series, readings);
    }

    /// <summary>The three percentages that a sentence opens with are the result's, within half of their last digit.</summary>
    private static void AssertPercentagesAgree(string said, Measured<Ratio> saved)
    {
        var figures = Regex.Matches(said, @"-?\d+(\.\d+)?(?= %)").Select(match => match.Value).ToArray();

        // Between the claim and its interval stands the confidence.
        string[] shown = [figures[0], figures[2], figures[3]];
        double[] held = [saved.Value.Percent, saved.Lower!.Value.Percent, saved.Upper!.Value.Percent];
        for (var i = 0; i < shown.Length; i++)
        {
            var decimals = shown[i].Length - shown[i].IndexOf('.', StringComparison.Ordinal) - 1;
            Assert.Equal(
                held[i],
                double.Parse(shown[i], CultureInfo.InvariantCulture),
                0.5000001 * Math.Pow(10, -decimals)
            );
        }
    }
}
