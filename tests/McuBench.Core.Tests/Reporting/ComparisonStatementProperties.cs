using System.Globalization;
using System.Text.RegularExpressions;
using FsCheck.Xunit;
using McuBench.Core.Boards;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;
using McuBench.Core.Supply;
using McuBench.Core.Trials;
using UnitsNet;

namespace McuBench.Core.Tests.Reporting;

/// <summary>Random results, and sentences about them that are read back: who is named first, what of what, in every
/// direction.</summary>
public sealed partial class ComparisonStatementProperties
{
    /// <summary>A figure shown may be off by half of its last digit.</summary>
    private const double HalfADigit = 0.500001;

    [Property]
    public void OfQuantity_AnyResults_SayWhatTheNumbersSay(int seed)
    {
        var comparison = Random(seed);
        foreach (var quantity in Quantities(comparison))
        {
            var said = ComparisonStatement.OfQuantity(comparison, quantity);

            switch (quantity.Verdict)
            {
                case Verdict.Different or Verdict.DifferentWithinMargin:
                    AssertDifference(said, comparison, quantity);
                    break;
                case Verdict.EqualWithinMargin:
                    Assert.StartsWith("Marl and Tuff are equal in ", said, StringComparison.Ordinal);
                    Assert.Contains("within the stated margin of ", said, StringComparison.Ordinal);
                    AssertRatio(said, quantity, "ratio ");
                    AssertClaimsNoDifference(said);
                    break;
                case Verdict.NotResolved:
                    Assert.StartsWith("Marl and Tuff are not resolved in ", said, StringComparison.Ordinal);
                    AssertRatio(said, quantity, "the first's is ");
                    Assert.InRange(1, quantity.Ratio.Lower!.Value, quantity.Ratio.Upper!.Value);
                    AssertClaimsNoDifference(said);
                    break;
                default:
                    Assert.StartsWith("Marl and Tuff get no verdict in ", said, StringComparison.Ordinal);
                    AssertClaimsNoDifference(said);
                    break;
            }
        }
    }

    [Property]
    public void OfQuantity_SidesExchanged_ClaimTheSame(int seed)
    {
        var comparison = Random(seed);
        var turned = SetupComparison.Of(comparison.Second, comparison.First, OptionsOf(seed));
        foreach (var (one, other) in Quantities(comparison).Zip(Quantities(turned)))
        {
            Assert.Equal(one.Verdict, other.Verdict);
            if (one.Less is not null)
            {
                Assert.Equal(
                    ComparisonStatement
                        .OfQuantity(comparison, one)
                        .Replace(Counts(comparison), Counts(turned), StringComparison.Ordinal),
                    ComparisonStatement.OfQuantity(turned, other)
                );
            }
        }
    }

    [Property]
    public void OfQuantity_AnyCounts_AreSaidInTheRightNumber(int seed)
    {
        var comparison = Random(seed);
        var (first, second) = (comparison.First.RunTime.Trials, comparison.Second.RunTime.Trials);
        var said = ComparisonStatement.OfQuantity(comparison, comparison.RunTime);
        if (comparison.RunTime.Verdict == Verdict.NoVerdict)
        {
            return;
        }

        Assert.Contains($"; {Counts(comparison)}, ", said, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\b1 trials\b|\b([2-9]|1\d+) trial\b", said);
        Assert.True(first > 0 && second > 0);
    }

    private static void AssertDifference(string said, SetupComparison comparison, QuantityComparison quantity)
    {
        var (less, more) =
            comparison.RunTime == quantity || quantity.Less is not null
                ? quantity.Less == Side.First
                    ? ("Marl", "Tuff")
                    : ("Tuff", "Marl")
                : throw new InvalidOperationException("A difference has a side.");
        Assert.StartsWith($"{less} ", said, StringComparison.Ordinal);
        Assert.Matches($@"^{less} \w+ \S+ % (less|fewer) [\w ]+? than {more}\b", said);

        // Whoever is named first really has the smaller figure, and the percentage is of the other's.
        var (a, b) = Figures(comparison, quantity.Quantity);
        var (smaller, larger) = less == "Marl" ? (a, b) : (b, a);
        Assert.True(smaller < larger, said);
        var shown = Percentages().Matches(said).Select(match => match.Groups[1].Value).ToArray();
        AssertShown(1 - smaller / larger, shown[0], 100, said);
        var saved = less == "Marl" ? quantity.SavedByFirst : quantity.SavedBySecond;
        AssertShown(saved.Lower!.Value.DecimalFractions, shown[2], 100, said);
        AssertShown(saved.Upper!.Value.DecimalFractions, shown[3], 100, said);
        if (quantity.Quantity == ComparedQuantity.RunTime)
        {
            AssertShown(larger / smaller, Times().Match(said).Groups[1].Value, 1, said);
            Assert.Contains("whole run", said, StringComparison.Ordinal);
        }
        else
        {
            Assert.DoesNotContain("as fast", said, StringComparison.Ordinal);
        }

        var isOfSupply = quantity.Quantity is ComparedQuantity.ChargePerTask or ComparedQuantity.EnergyPerTask;
        Assert.Equal(isOfSupply, said.Contains("gross, whole board", StringComparison.Ordinal));
        Assert.Equal(
            quantity.Verdict == Verdict.DifferentWithinMargin,
            said.Contains("yet within the stated margin", StringComparison.Ordinal)
        );
    }

    private static void AssertRatio(string said, QuantityComparison quantity, string before)
    {
        var (a, b) = (quantity.Ratio.Lower!.Value, quantity.Ratio.Upper!.Value);
        var match = Regex.Match(said, Regex.Escape(before) + @"(\S+?),? .*?interval (\S+) to ([\d.e-]+)");
        AssertShown(quantity.Ratio.Value, match.Groups[1].Value, 1, said);
        AssertShown(a, match.Groups[2].Value, 1, said);
        AssertShown(b, match.Groups[3].Value, 1, said);
    }

    private static void AssertClaimsNoDifference(string said) =>
        Assert.DoesNotMatch(@" % (less|fewer)|times as fast", said);

    private static void AssertShown(double held, string shown, double factor, string said)
    {
        var point = shown.IndexOf('.', StringComparison.Ordinal);

        // "10550" is rounded to tens where the interval leaves no meaning to the last digit.
        var decimals = point < 0 ? shown.TrimEnd('0').Length - shown.Length : shown.Length - point - 1;
        var difference = Math.Abs(held * factor - double.Parse(shown, CultureInfo.InvariantCulture));
        Assert.True(difference <= HalfADigit * Math.Pow(10, -decimals), $"{held} was said as {shown}: {said}");
    }

    private static (double First, double Second) Figures(SetupComparison comparison, ComparedQuantity quantity) =>
        quantity switch
        {
            ComparedQuantity.RunTime => (
                comparison.First.RunTime.Value.Seconds,
                comparison.Second.RunTime.Value.Seconds
            ),
            ComparedQuantity.CyclesPerItem => (
                comparison.First.CyclesPerItem.Value,
                comparison.Second.CyclesPerItem.Value
            ),
            ComparedQuantity.ChargePerTask => (
                comparison.First.Supply!.ChargePerTask.Value.Coulombs,
                comparison.Second.Supply!.ChargePerTask.Value.Coulombs
            ),
            _ => (
                comparison.First.Supply!.EnergyPerTask!.Value.Joules,
                comparison.Second.Supply!.EnergyPerTask!.Value.Joules
            ),
        };

    private static IEnumerable<QuantityComparison> Quantities(SetupComparison comparison) =>
        new[]
        {
            comparison.RunTime,
            comparison.CyclesPerItem,
            comparison.ChargePerTask,
            comparison.EnergyPerTask,
        }.OfType<QuantityComparison>();

    private static string Counts(SetupComparison comparison)
    {
        var (first, second) = (comparison.First.RunTime.Trials, comparison.Second.RunTime.Trials);
        var of = second == 1 ? "trial" : "trials";
        return first == second
            ? FormattableString.Invariant($"{first} {of} each")
            : FormattableString.Invariant($"{first} and {second} {of}");
    }

    private static SetupComparison Random(int seed)
    {
#pragma warning disable CA5394 // Draws of test cases, not secrets.
        var random = new Random(seed);
        var first = Summary("Marl", random);
        return SetupComparison.Of(first, Summary("Tuff", random), OptionsOf(seed));
#pragma warning restore CA5394
    }

    private static ConclusionOptions OptionsOf(int seed) =>
        ConclusionOptions.Default with
        {
            Margin = seed % 3 == 0 ? null : Ratio.FromPercent(seed % 3 == 1 ? 3 : 20),
        };

#pragma warning disable CA5394
    private static SetupSummary Summary(string name, Random random)
    {
        // Between nearly alike and far apart, with scatter from a tenth of a permille to a tenth.
        var seconds = Math.Exp((random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-3, 2)));
        var scatter = Math.Pow(10, -4 + 3 * random.NextDouble());
        var setup = new Setup(name, new Board(name), Frequency.FromMegahertz(random.Next(20, 200)))
        {
            Supply = new BoardSupply(ElectricPotential.FromVolts(5)),
        };
        var series = TrialSeries.Of(
            setup,
            Sketch.Echo,
            Sketch.Microseconds,
            Enumerable
                .Range(0, random.Next(1, 8))
                .Select(_ => Duration.FromSeconds(seconds * (1 + scatter * (random.NextDouble() - 0.5))))
                .ToArray()
        );
        var meter = new Meter("bench meter", Sketch.Fifty with { Digits = 2 }, Sketch.FiveHundred with { Digits = 2 });
        var current = 20 + 20 * random.NextDouble();
        var readings = Enumerable
            .Range(0, random.Next(0, 5))
            .Select(_ => new SupplyReading(
                setup,
                meter,
                SupplyPhase.Running,
                ElectricCurrent.FromMilliamperes(current * (1 + 0.01 * (random.NextDouble() - 0.5))),
                Sketch.Echo
            ))
            .ToArray();
        return SetupSummary.Of(series, readings);
    }
#pragma warning restore CA5394

    [GeneratedRegex(@"(-?[\d.]+) %")]
    private static partial Regex Percentages();

    [GeneratedRegex(@"that is ([\d.e+-]+) times as fast")]
    private static partial Regex Times();
}
