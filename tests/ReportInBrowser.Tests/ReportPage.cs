using CompareBoards;
using PuppeteerSharp;

namespace ReportInBrowser.Tests;

/// <summary>Reports as the example writes them, in a folder that goes when the tests end.</summary>
public sealed class ReportPage : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("report-in-browser-");
    private readonly Lazy<string> demo;
    private readonly Lazy<string> hostile;

    /// <summary>Makes the pages when they are first asked for.</summary>
    public ReportPage()
    {
        demo = new Lazy<string>(() => Made("demo"));
        hostile = new Lazy<string>(() =>
        {
            var study = Path.Combine(folder.FullName, "hostile.json");
            File.WriteAllText(study, HostileStudy.Json);
            return Made("hostile", study);
        });
    }

    /// <summary>The page on the demo study.</summary>
    public string Demo => demo.Value;

    /// <summary>The page on a study whose every name tries to be more than a name.</summary>
    public string Hostile => hostile.Value;

    /// <summary>An empty folder.</summary>
    public string NewFolder() => folder.CreateSubdirectory(Path.GetRandomFileName()).FullName;

    /// <summary>Loads a page, and says what went wrong or was asked for meanwhile.</summary>
    public static async Task<IReadOnlyList<string>> LoadAsync(IPage page, string file)
    {
        var said = new List<string>();
        page.Console += (_, message) => said.Add($"console: {message.Message.Text}");
        page.PageError += (_, error) => said.Add($"error: {error.Message}");
        page.Request += (_, asked) =>
        {
            var url = asked.Request.Url;
            if (
                !url.StartsWith("data:", StringComparison.Ordinal) && !url.StartsWith("file:", StringComparison.Ordinal)
            )
            {
                said.Add($"asked for {url}");
            }
        };
        await page.GoToAsync(new Uri(file).AbsoluteUri, WaitUntilNavigation.Load);
        return said;
    }

    /// <inheritdoc/>
    public void Dispose() => folder.Delete(recursive: true);

    private string Made(string name, params string[] study)
    {
        var report = Path.Combine(folder.FullName, name);
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = Application.Run([.. study, "--out", report], output, error, null, CancellationToken.None);
        Assert.Equal((0, ""), (code, error.ToString()));
        return Path.Combine(report, "report.html");
    }
}
