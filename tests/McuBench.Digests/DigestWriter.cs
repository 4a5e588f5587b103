using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;

namespace McuBench.Digests;

/// <summary>Prints results as digests of their bits, one line each, so that two runs can be compared by text.</summary>
public sealed class DigestWriter(TextWriter output)
{
    /// <summary>Prints the digest of numbers, bit by bit: -0 isn't 0, and the last place counts.</summary>
    public void Numbers(string name, params ReadOnlySpan<double> values) => Line(name, MemoryMarshal.AsBytes(values));

    /// <summary>Prints the digest of a text.</summary>
    public void Text(string name, string text) => Line(name, Encoding.UTF8.GetBytes(text));

    private void Line(string name, ReadOnlySpan<byte> content) =>
        output.Write(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Convert.ToHexStringLower(SHA256.HashData(content))} {content.Length} {name}\n"
            )
        );
}
