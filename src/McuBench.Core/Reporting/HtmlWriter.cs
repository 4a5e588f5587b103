namespace McuBench.Core.Reporting;

/// <summary>
/// Writes a report as one self-contained HTML page: no network; light and dark; for phones, desks and paper. Tables can
/// be sorted by a script within the page, without which it reads the same. Whatever comes from the study is escaped, so
/// a board named <c>&lt;script&gt;</c> is text, and the page's policy lets no other script run.
/// </summary>
/// <remarks>The same report gives the same bytes.</remarks>
public static class HtmlWriter
{
    /// <summary>Writes a report as a page. O(n) in its text, pictures and enclosures.</summary>
    /// <param name="writer">Where to; stays open. Write it as UTF-8, which is what the page says it is.</param>
    /// <param name="report">What.</param>
    /// <exception cref="ArgumentException">Two blocks have one anchor, or a link leads to an anchor that no block has.</exception>
    public static void Write(TextWriter writer, Report report)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(report);
        new HtmlPage(writer, report).Write();
    }
}
