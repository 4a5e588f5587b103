namespace McuBench.Core.Quantities;

/// <summary>A refusal of a text as a quantity: what was given, what was expected, and the mend.</summary>
/// <remarks>
/// Immutable. The text given appears shortened to 40 characters and with control characters, invisible characters and
/// lone surrogates escaped, so that a message is always safe to print on one line.
/// </remarks>
public sealed record QuantityTextError
{
    internal QuantityTextError(
        QuantityTextErrorKind kind,
        string given,
        QuantityKind expected,
        string problem,
        string mend
    )
    {
        Kind = kind;
        Given = given;
        Expected = $"{expected.Noun}, such as {expected.Example}";
        Mend = mend;
        Message = $"{problem} {mend}";
    }

    /// <summary>The refusal of a text; the problem continues a sentence that the quoted text begins.</summary>
    internal static QuantityTextError About(
        QuantityTextErrorKind kind,
        ReadOnlySpan<char> text,
        QuantityKind expected,
        string problem,
        string mend
    ) => new(kind, Excerpt.Of(text), expected, $"{Excerpt.Quoted(text)} {problem}", mend);

    /// <summary>Why the text was refused.</summary>
    public QuantityTextErrorKind Kind { get; }

    /// <summary>The text given, shortened and escaped; empty where nothing was given.</summary>
    public string Given { get; }

    /// <summary>What was expected, with an example: <c>a current, such as 12 mA</c>.</summary>
    public string Expected { get; }

    /// <summary>How the writer puts it right, one sentence.</summary>
    public string Mend { get; }

    /// <summary>The whole refusal in one line: the problem, then the mend.</summary>
    public string Message { get; }

    /// <summary>The message.</summary>
    public override string ToString() => Message;
}
