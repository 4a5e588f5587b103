using System.Text.RegularExpressions;
using McuBench.Core.Quantities;
using UnitsNet;

namespace McuBench.Core.Capture;

/// <summary>How a board says its results in lines of text: a regular expression whose named groups are the figures.</summary>
/// <remarks>
/// <para>
/// The expression is .NET's, runs without backtracking, and must match the whole line, so that a line that a boot message
/// has cut into is not taken for a shorter figure. Where more may stand around, the expression says so with <c>.*</c>.
/// </para>
/// <para>
/// Groups: <c>time</c> (a number, or a number with its unit), <c>unit</c>, <c>ticks</c> (a whole number), <c>items</c>,
/// <c>sequence</c>, <c>marker</c>, <c>checksum</c>. At least one of <c>time</c>, <c>ticks</c> and <c>marker</c> must be
/// there; a group of another name is refused, since it would be a misspelt one.
/// </para>
/// <para>Immutable; safe to use from many threads.</para>
/// </remarks>
/// <example>
/// <code>new LinePattern(@"run (?&lt;sequence&gt;\d+): (?&lt;time&gt;[\d.]+) (?&lt;unit&gt;m?s)")</code>
/// </example>
public sealed record LinePattern
{
    /// <summary>The most characters in an expression.</summary>
    public const int LongestExpression = 2000;

    /// <summary>The most time that one line may take.</summary>
    public static readonly TimeSpan LineTime = TimeSpan.FromSeconds(1);

    private static readonly string[] Groups = ["time", "unit", "ticks", "items", "sequence", "marker", "checksum"];

    private readonly Regex regex;

    /// <summary>Makes a pattern.</summary>
    /// <param name="expression">The regular expression, of at most <see cref="LongestExpression"/> characters.</param>
    /// <exception cref="ArgumentException">It is no regular expression, can't run without backtracking (backreference,
    /// lookaround, atomic group), would need too many states, names none of the groups that are read, or names one that
    /// isn't.</exception>
    public LinePattern(string expression)
    {
        ArgumentException.ThrowIfNullOrEmpty(expression);
        if (expression.Length > LongestExpression)
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"Line's expression must have at most {LongestExpression} characters; had {expression.Length}."
                ),
                nameof(expression)
            );
        }

        Expression = expression;
        regex = Compiled(expression);
        RefuseOtherGroups();
    }

    /// <summary>The regular expression.</summary>
    public string Expression { get; }

    /// <summary>The unit of <c>time</c> where the line doesn't say it: "ms", "us", "s"; absent where it does.</summary>
    /// <exception cref="ArgumentException">It is no unit of time.</exception>
    public string? Unit
    {
        get;
        init
        {
            if (value is not null && !QuantityText.TryParseDuration($"1 {value}", out _, out _))
            {
                throw new ArgumentException(
                    $"Line's unit must be a unit of time, such as ms; was {Excerpt.Quoted(value)}.",
                    nameof(Unit)
                );
            }

            field = value;
        }
    }

    /// <summary>How fast the counter behind <c>ticks</c> counts; without it ticks are kept and no run time is made of
    /// them.</summary>
    public Frequency? TickRate
    {
        get;
        init => field = value is { } rate ? Require.Positive(rate, "Tick rate", nameof(TickRate)) : null;
    }

    /// <summary>Equal when expression, unit and tick rate are equal.</summary>
    public bool Equals(LinePattern? other) =>
        other is not null && Expression == other.Expression && Unit == other.Unit && Equals(TickRate, other.TickRate);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Expression, Unit, TickRate);

    /// <summary>What the line says; null where it doesn't match.</summary>
    /// <exception cref="RegexMatchTimeoutException">The line took more than <see cref="LineTime"/>.</exception>
    internal Match? Match(string line) => regex.Match(line) is { Success: true } match ? match : null;

    private static Regex Compiled(string expression)
    {
        try
        {
            return new Regex(
                $@"\A(?:{expression})\z",
                RegexOptions.NonBacktracking | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture,
                LineTime
            );
        }
        catch (RegexParseException broken)
        {
            throw new ArgumentException(
                $"Line's expression must be a regular expression; {Excerpt.Quoted(expression)} is not: {broken.Message}",
                nameof(expression),
                broken
            );
        }
        catch (NotSupportedException backtracks)
        {
            throw new ArgumentException(
                $"Line's expression must run without backtracking: no backreference, lookaround or atomic group, and no large counted repeats; was {Excerpt.Quoted(expression)}.",
                nameof(expression),
                backtracks
            );
        }
    }

    private void RefuseOtherGroups()
    {
        var names = regex.GetGroupNames().Where(name => name != "0").ToArray();
        if (names.FirstOrDefault(name => !Groups.Contains(name, StringComparer.Ordinal)) is { } other)
        {
            throw new ArgumentException(
                $"Line's groups must be among {string.Join(", ", Groups)}; {Excerpt.Quoted(other)} is none of them.",
                "expression"
            );
        }

        if (!names.Any(name => name is "time" or "ticks" or "marker"))
        {
            throw new ArgumentException(
                "Line's expression must name what is to be read, in a group called time, ticks or marker, such as (?<time>[0-9.]+); it names none.",
                "expression"
            );
        }
    }
}
