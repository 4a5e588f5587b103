using System.Globalization;
using System.IO.Compression;

namespace McuBench.Core.Reporting;

/// <summary>How an enclosed file stands in a page: compressed, in base64, in a block of data that no browser runs.</summary>
internal static class EnclosureText
{
    /// <summary>How the element begins that holds an enclosed file. Nothing else of a page can read so, since all text of
    /// the study is escaped.</summary>
    public const string OpeningTag = "<script type=\"text/plain\" data-packed=\"gzip base64\"";

    /// <summary>What the report says of it.</summary>
    public static string Of(ReportEnclosure enclosure) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{enclosure.Name}: {enclosure.Content.Length} bytes, SHA-256 {enclosure.Sha256}."
        );

    public static string Packed(ReportEnclosure enclosure)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            gzip.Write(enclosure.Content.Span);
        }

        return Convert.ToBase64String(packed.GetBuffer().AsSpan(0, (int)packed.Length));
    }
}
