namespace McuBench.Core.Quantities;

/// <summary>A text that is no quantity of the kind expected.</summary>
public sealed class QuantityFormatException : FormatException
{
    /// <summary>Makes the exception of a refusal.</summary>
    /// <param name="error">The refusal.</param>
    /// <exception cref="ArgumentNullException"><paramref name="error"/> is null.</exception>
    public QuantityFormatException(QuantityTextError error)
        : base((error ?? throw new ArgumentNullException(nameof(error))).Message) => Error = error;

    /// <summary>The refusal in full.</summary>
    public QuantityTextError Error { get; }

    /// <summary>Why the text was refused.</summary>
    public QuantityTextErrorKind Kind => Error.Kind;

    /// <summary>The text given, shortened and escaped.</summary>
    public string Given => Error.Given;

    /// <summary>What was expected, with an example.</summary>
    public string Expected => Error.Expected;

    /// <summary>How the writer puts it right.</summary>
    public string Mend => Error.Mend;
}
