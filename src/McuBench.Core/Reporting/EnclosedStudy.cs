using System.IO.Compression;
using System.Security.Cryptography;
using McuBench.Core.Studies;

namespace McuBench.Core.Reporting;

/// <summary>Puts a study into a report, and takes it out of a page again.</summary>
public static class EnclosedStudy
{
    /// <summary>What the study is called where it is saved out of a page.</summary>
    public const string FileName = "study.json";

    /// <summary>The most bytes of a page that are looked through: 256 MiB.</summary>
    public const int PageBytes = 256 * 1024 * 1024;

    /// <summary>A study as a file enclosed in a report: its JSON, all trials and readings in it. O(n) in the study.</summary>
    /// <param name="study">The study.</param>
    public static ReportEnclosure Of(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        using var json = new MemoryStream();
        StudyJson.Write(json, study);
        return new ReportEnclosure(FileName, json.GetBuffer().AsSpan(0, (int)json.Length));
    }

    /// <summary>Takes the study out of a page that <see cref="HtmlWriter"/> wrote, after checking it against the digest
    /// in the page. O(n) in the page.</summary>
    /// <param name="page">The page. It is read to its end and stays open.</param>
    /// <param name="sourceName">What faults are to call it: the file's name.</param>
    /// <exception cref="StudyFormatException">The page encloses no study, or one that is damaged or can't be read.</exception>
    public static Study Read(Stream page, string sourceName)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentException.ThrowIfNullOrEmpty(sourceName);
        var text = Text(page, sourceName);
        var start = text.IndexOf(EnclosureText.OpeningTag, StringComparison.Ordinal);
        var open = start < 0 ? -1 : text.IndexOf('>', start);
        var end = open < 0 ? -1 : text.IndexOf("</script>", open, StringComparison.Ordinal);
        if (end < 0)
        {
            throw Fault(
                sourceName,
                "The page encloses no study.",
                "Give a report that this library wrote, or the study's own file."
            );
        }

        var json = Unpacked(text.AsSpan(open + 1, end - open - 1), sourceName);
        var digest = $"data-sha256=\"{Convert.ToHexStringLower(SHA256.HashData(json))}\"";
        if (!text.AsSpan(start, open - start).Contains(digest, StringComparison.Ordinal))
        {
            throw Damaged(sourceName);
        }

        using var stream = new MemoryStream(json, writable: false);
        return StudyJson.Read(stream, sourceName);
    }

    private static string Text(Stream page, string sourceName)
    {
        using var limited = new MemoryStream();
        var buffer = new byte[64 * 1024];
        int read;
        while ((read = page.Read(buffer)) > 0)
        {
            if (limited.Length + read > PageBytes)
            {
                throw Fault(
                    sourceName,
                    FormattableString.Invariant($"The page is larger than {PageBytes} bytes."),
                    "Give the study's own file."
                );
            }

            limited.Write(buffer, 0, read);
        }

        return System.Text.Encoding.UTF8.GetString(limited.GetBuffer(), 0, (int)limited.Length);
    }

    /// <summary>The file, up to one byte past the limit of a study's file, so that nothing small unpacks without bound.</summary>
    private static byte[] Unpacked(ReadOnlySpan<char> packed, string sourceName)
    {
        var bytes = new byte[packed.Length / 4 * 3 + 3];
        if (!Convert.TryFromBase64Chars(packed, bytes, out var length))
        {
            throw Damaged(sourceName);
        }

        using var gzip = new GZipStream(new MemoryStream(bytes, 0, length), CompressionMode.Decompress);
        using var json = new MemoryStream();
        var buffer = new byte[64 * 1024];
        try
        {
            int read;
            while (json.Length <= StudyLimits.FileBytes && (read = gzip.Read(buffer)) > 0)
            {
                json.Write(buffer, 0, read);
            }
        }
        catch (InvalidDataException)
        {
            throw Damaged(sourceName);
        }

        return json.Length > StudyLimits.FileBytes
            ? throw Fault(
                sourceName,
                FormattableString.Invariant($"The study in the page is larger than {StudyLimits.FileBytes} bytes."),
                "Split the study, or keep its trials in tables beside it."
            )
            : json.ToArray();
    }

    private static StudyFormatException Damaged(string sourceName) =>
        Fault(sourceName, "The study in the page is damaged.", "Give a copy of the page as it was written.");

    private static StudyFormatException Fault(string sourceName, string problem, string mend) =>
        new([new StudyFault(sourceName, problem, mend)], 1);
}
