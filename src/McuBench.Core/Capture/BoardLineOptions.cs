using System.Text;

namespace McuBench.Core.Capture;

/// <summary>How lines from a board are taken in.</summary>
/// <remarks>Immutable.</remarks>
public sealed record BoardLineOptions
{
    /// <summary>UTF-8, lines of up to 65,536 characters.</summary>
    public static BoardLineOptions Default { get; } = new();

    /// <summary>The most characters of a line that are kept and matched, from 16 to 16,777,216; a longer line is
    /// overlong, and memory stays bounded however long it becomes.</summary>
    public int LongestLine
    {
        get;
        init
        {
            if (value is < 16 or > 1 << 24)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(LongestLine),
                    value,
                    FormattableString.Invariant($"Longest line must be from 16 to {1 << 24} characters; was {value}.")
                );
            }

            field = value;
        }
    } = 65_536;

    /// <summary>How bytes are text, where bytes are read. What is no text in it becomes U+FFFD; nothing throws.</summary>
    public Encoding Encoding
    {
        get;
        init => field = Require.Given(value, nameof(Encoding));
    } = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
}
