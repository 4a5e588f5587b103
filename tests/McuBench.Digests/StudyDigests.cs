using McuBench.Core.Capture;
using McuBench.Core.Conclusions;
using McuBench.Core.Reporting;

namespace McuBench.Digests;

/// <summary>A whole study: read, concluded, reported.</summary>
public static class StudyDigests
{
    /// <summary>Computes and prints them.</summary>
    public static void Write(DigestWriter digests, string studyFile)
    {
        ArgumentNullException.ThrowIfNull(digests);
        var conclusions = StudyConclusions.Of(StudyFile.Read(studyFile));
        using var page = new StringWriter { NewLine = "\n" };
        HtmlWriter.Write(page, StudyReport.Full(conclusions, []));
        digests.Text("the report of the study", page.ToString());
        foreach (var comparison in conclusions.Comparisons)
        {
            digests.Text($"{comparison.First.Setup.Name} and {comparison.Second.Setup.Name}", $"{comparison}");
        }
    }
}
