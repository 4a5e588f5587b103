using McuBench.Core.Capture;
using UnitsNet;

namespace McuBench.Core.Tests.Capture;

public sealed class LinePatternTests
{
    [Theory]
    [InlineData("(?<time>", "Line's expression must be a regular expression; \"(?<time>\" is not: ")]
    [InlineData(
        @"(?<time>\d+) \k<time>",
        "Line's expression must run without backtracking: no backreference, lookaround or atomic group, and no large counted repeats; was "
    )]
    [InlineData(
        @"(?=x)(?<time>\d+)",
        "Line's expression must run without backtracking: no backreference, lookaround or atomic group, and no large counted repeats; was "
    )]
    [InlineData(
        "(?<tme>[0-9.]+)",
        "Line's groups must be among time, unit, ticks, items, sequence, marker, checksum; \"tme\" is none of them."
    )]
    [InlineData(
        "run (?<sequence>[0-9]+)",
        "Line's expression must name what is to be read, in a group called time, ticks or marker, such as (?<time>[0-9.]+); it names none."
    )]
    public void Constructor_ExpressionThatCantBeUsed_IsRefused(string expression, string message) =>
        Refusal.Is<ArgumentException>(() => _ = new LinePattern(expression), "expression", message);

    [Fact]
    public void Constructor_ExpressionTooLong_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => _ = new LinePattern("(?<time>1)" + new string('x', LinePattern.LongestExpression)),
            "expression",
            "Line's expression must have at most 2000 characters; had 2010."
        );

    [Fact]
    public void Unit_NoUnitOfTime_IsRefused() =>
        Refusal.Is<ArgumentException>(
            () => _ = new LinePattern("(?<time>1)") { Unit = "mA" },
            "Unit",
            "Line's unit must be a unit of time, such as ms; was \"mA\"."
        );

    [Fact]
    public void TickRate_Zero_IsRefused() =>
        Refusal.Is<ArgumentOutOfRangeException>(
            () => _ = new LinePattern("(?<ticks>1)") { TickRate = Frequency.Zero },
            "TickRate",
            "Tick rate must be above zero; was 0 Hz."
        );

    [Fact]
    public void Equality_SameExpressionUnitAndRate_IsEqual()
    {
        var one = new LinePattern("(?<ticks>[0-9]+)") { TickRate = Frequency.FromMegahertz(1), Unit = "ms" };
        var other = new LinePattern("(?<ticks>[0-9]+)") { TickRate = Frequency.FromHertz(1e6), Unit = "ms" };

        Assert.Equal(one, other);
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.NotEqual(one, other with { Unit = "s" });
        Assert.NotEqual(one, other with { TickRate = null });
    }
}
