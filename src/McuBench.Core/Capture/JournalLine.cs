using System.Security.Cryptography;
using System.Text;

namespace McuBench.Core.Capture;

/// <summary>One line of a journal as bytes: a JSON object whose first property is the checksum of the rest of it and of
/// the line before.</summary>
/// <remarks>
/// <code>{"check":"0123456789abcdef","trial":{…}}</code>
/// The checksum is the first 8 bytes of SHA-256 over the checksum of the line before, as its 16 characters, and the
/// bytes between the comma and the last brace. Chained like this, a line can't be changed, lost or moved unnoticed.
/// </remarks>
internal static class JournalLine
{
    /// <summary>The length of a checksum, in characters.</summary>
    public const int CheckLength = 16;

    /// <summary>What the first line is chained to.</summary>
    public const string Beginning = "0000000000000000";

    private static ReadOnlySpan<byte> Head => "{\"check\":\""u8;

    private static ReadOnlySpan<byte> Join => "\","u8;

    /// <summary>The line of an entry, its line end included.</summary>
    public static byte[] Of(ReadOnlySpan<byte> entry, string previous, out string check)
    {
        check = CheckOf(entry, previous);
        return [.. Head, .. Encoding.ASCII.GetBytes(check), .. Join, .. entry, (byte)'}', (byte)'\n'];
    }

    /// <summary>The entry and the checksum of a line without its line end; false where it is no such line. Whether the
    /// checksum is right is another question.</summary>
    public static bool TryTakeApart(ReadOnlySpan<byte> line, out ReadOnlySpan<byte> entry, out string check)
    {
        var entryAt = Head.Length + CheckLength + Join.Length;
        entry = default;
        check = string.Empty;
        if (
            line.Length <= entryAt
            || !line.StartsWith(Head)
            || !line[(Head.Length + CheckLength)..].StartsWith(Join)
            || line[^1] != '}'
        )
        {
            return false;
        }

        entry = line[entryAt..^1];
        check = Encoding.ASCII.GetString(line.Slice(Head.Length, CheckLength));
        return true;
    }

    /// <summary>The checksum of an entry behind another line.</summary>
    public static string CheckOf(ReadOnlySpan<byte> entry, string previous)
    {
        byte[] bytes = [.. Encoding.ASCII.GetBytes(previous), .. entry];
        return Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, CheckLength / 2));
    }
}
