using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;
using McuBench.Core.Studies;

namespace McuBench.Core.Tests.Reporting;

public sealed class EnclosedStudyTests
{
    private static readonly Study Small = Study.FromTrials(
        "Gauges </script> & \"more\"",
        [Sketch.TrialOf(2.4) with { Order = 1 }, Sketch.TrialOf(2.5) with { Specimen = "</script>" }]
    );

    [Fact]
    public void Read_PageOfAReport_GivesTheStudyBack() => Assert.Equal(Small, Read(Page(Small)));

    [Fact]
    public void Page_Digest_IsOfTheStudysJson()
    {
        using var json = new MemoryStream();
        StudyJson.Write(json, Small);
        var digest = Convert.ToHexStringLower(SHA256.HashData(json.ToArray()));

        Assert.Contains($"SHA-256 {digest}.", Page(Small), StringComparison.Ordinal);
    }

    [Fact]
    public void Page_SameStudy_GivesTheSameBytes() =>
        Assert.Equal(Page(Small), Page(StudyJson.Read(Json(Small), "study.json")));

    [Fact]
    public void Read_NoStudyInIt_SaysSo() =>
        AssertFault(
            "<!DOCTYPE html><p>nothing</p>",
            "report.html: The page encloses no study. Give a report that this library wrote, or the study's own file."
        );

    [Fact]
    public void Read_CutPage_SaysSo()
    {
        var page = Page(Small);
        var cut = page[..(page.IndexOf("data-packed", StringComparison.Ordinal) + 100)];

        AssertFault(
            cut,
            "report.html: The page encloses no study. Give a report that this library wrote, or the study's own file."
        );
    }

    [Theory]
    [InlineData("!!!!")]
    [InlineData("AAAA")]
    public void Read_DamagedStudy_SaysSo(string damage)
    {
        var page = Page(Small);
        var start = page.IndexOf('>', page.IndexOf("data-packed", StringComparison.Ordinal)) + 1;

        AssertFault(
            page[..start] + damage + page[(start + damage.Length)..],
            "report.html: The study in the page is damaged. Give a copy of the page as it was written."
        );
    }

    [Fact]
    public void Read_StudyOfAnotherDigest_SaysSo()
    {
        var page = Page(Small);
        var start = page.IndexOf("data-sha256=\"", StringComparison.Ordinal) + "data-sha256=\"".Length;
        var other = page[start] == '0' ? '1' : '0';

        AssertFault(
            page[..start] + other + page[(start + 1)..],
            "report.html: The study in the page is damaged. Give a copy of the page as it was written."
        );
    }

    [Fact]
    public void Read_StudyThatUnpacksWithoutBound_IsRefused()
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            var zeros = new byte[1 << 20];
            for (var i = 0; i <= StudyLimits.FileBytes / zeros.Length; i++)
            {
                gzip.Write(zeros);
            }
        }

        AssertFault(
            $"<script type=\"text/plain\" data-packed=\"gzip base64\" data-sha256=\"\">{Convert.ToBase64String(packed.ToArray())}</script>",
            "report.html: The study in the page is larger than 67108864 bytes. Split the study, or keep its trials in tables beside it."
        );
    }

    private static void AssertFault(string page, string message) =>
        Assert.Equal(message, Assert.Throws<StudyFormatException>(() => Read(page)).Message);

    private static Study Read(string page)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(page));
        return EnclosedStudy.Read(stream, "report.html");
    }

    private static string Page(Study study)
    {
        using var page = new StringWriter();
        HtmlWriter.Write(
            page,
            StudyReport.Full(StudyConclusions.Of(study, cancellationToken: TestContext.Current.CancellationToken), [])
        );
        return page.ToString();
    }

    private static string Json(Study study)
    {
        using var json = new MemoryStream();
        StudyJson.Write(json, study);
        return Encoding.UTF8.GetString(json.ToArray());
    }
}
