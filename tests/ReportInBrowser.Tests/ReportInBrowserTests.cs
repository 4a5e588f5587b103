using System.Globalization;
using System.Text.Json;
using Deque.AxeCore.Commons;
using McuBench.Core.Capture;
using McuBench.Core.Reporting;
using PuppeteerSharp;
using PuppeteerSharp.Media;

namespace ReportInBrowser.Tests;

/// <summary>The report's page in a real browser.</summary>
public sealed class ReportInBrowserTests(Chromium chromium, ReportPage report)
    : IClassFixture<Chromium>,
        IClassFixture<ReportPage>
{
    /// <summary>A4 less the margins of 16 mm, in pixels of 1/96 inch.</summary>
    private const int PrintedWidth = 672;

    private const string FiguresTable =
        "[...document.querySelectorAll('table')].find(t => t.caption.textContent.startsWith('Time.'))";

    [Fact]
    public async Task Page_Loaded_LogsNothingAndAsksForNothing()
    {
        await using var page = await chromium.NewPageAsync(1280);

        var said = await ReportPage.LoadAsync(page, report.Demo);

        Assert.Empty(said);
        Assert.Equal(
            "ui",
            await page.EvaluateExpressionAsync<string>("document.querySelector('table button') ? 'ui' : 'none'")
        );
    }

    [Theory]
    [InlineData("light", 1280, true)]
    [InlineData("dark", 1280, false)]
    [InlineData("light", 360, false)]
    public async Task Page_Axe_FindsNoViolation(string scheme, int width, bool unfolded)
    {
        await using var page = await chromium.NewPageAsync(width);
        await page.EmulateMediaFeaturesAsync([
            new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = scheme },
        ]);
        await ReportPage.LoadAsync(page, report.Demo);
        await page.EvaluateExpressionAsync(
            $"document.querySelectorAll('details').forEach(d => d.open = {(unfolded ? "true" : "false")})"
        );

        await page.EvaluateExpressionAsync(AxeScript());
        var result = await page.EvaluateExpressionAsync<JsonElement>(
            "axe.run().then(r => ({ passes: r.passes.length, violations: r.violations.map(v => v.id + ': ' + v.help + ' ' + v.nodes[0].html.slice(0, 200)) }))"
        );

        Assert.Empty(result.GetProperty("violations").EnumerateArray().Select(violation => violation.GetString()));
        Assert.InRange(result.GetProperty("passes").GetInt32(), 20, int.MaxValue);
    }

    [Theory]
    [InlineData(360)]
    [InlineData(768)]
    [InlineData(1280)]
    public async Task Page_AnyWidth_ScrollsDownwardsOnly(int width)
    {
        await using var page = await chromium.NewPageAsync(width);
        foreach (var file in new[] { report.Demo, report.Hostile })
        {
            await ReportPage.LoadAsync(page, file);
            await page.EvaluateExpressionAsync("document.querySelectorAll('details').forEach(d => d.open = true)");

            Assert.Equal(width, await page.EvaluateExpressionAsync<int>("document.documentElement.scrollWidth"));
        }
    }

    [Fact]
    public async Task Table_Narrow_ScrollsWithinANamedRegionThatTheKeyboardReaches()
    {
        await using var page = await chromium.NewPageAsync(360);
        await ReportPage.LoadAsync(page, report.Demo);

        var region = await page.EvaluateExpressionAsync<JsonElement>(
            $"(() => {{ const r = {FiguresTable}.parentElement; return {{ wider: r.scrollWidth > r.clientWidth, tab: r.tabIndex, role: r.getAttribute('role'), name: document.getElementById(r.getAttribute('aria-labelledby')).textContent }}; }})()"
        );

        Assert.True(region.GetProperty("wider").GetBoolean());
        Assert.Equal(0, region.GetProperty("tab").GetInt32());
        Assert.Equal("region", region.GetProperty("role").GetString());
        Assert.StartsWith("Time.", region.GetProperty("name").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Table_HeadPressedByKeyboard_SortsByNumberThenBackwardsThenAsWritten()
    {
        await using var page = await chromium.NewPageAsync(1280);
        await ReportPage.LoadAsync(page, report.Demo);
        var written = await ColumnAsync(page);
        await page.EvaluateExpressionAsync($"{FiguresTable}.tHead.rows[0].cells[3].querySelector('button').focus()");

        await page.Keyboard.PressAsync("Enter");
        Assert.Equal("ascending", await SortedAsync(page));
        Assert.Equal(written.Order(), await ColumnAsync(page));
        Assert.NotEqual(written, await ColumnAsync(page));

        await page.Keyboard.PressAsync("Enter");
        Assert.Equal("descending", await SortedAsync(page));
        Assert.Equal(written.OrderDescending(), await ColumnAsync(page));

        await page.Keyboard.PressAsync(" ");
        Assert.Null(await SortedAsync(page));
        Assert.Equal(written, await ColumnAsync(page));
    }

    [Fact]
    public async Task Page_WithoutScript_ReadsTheSame()
    {
        await using var page = await chromium.NewPageAsync(1280);
        await ReportPage.LoadAsync(page, report.Demo);
        const string words = "document.body.innerText.replace('Save study.json', '').replace(/\\s+/g, ' ').trim()";
        var withScript = await page.EvaluateExpressionAsync<string>(words);

        await page.SetJavaScriptEnabledAsync(false);
        await page.ReloadAsync();

        Assert.Equal(withScript, await page.EvaluateExpressionAsync<string>(words));
        Assert.Equal(0, await page.EvaluateExpressionAsync<int>("document.querySelectorAll('th button').length"));
        Assert.True(await page.EvaluateExpressionAsync<bool>("document.querySelector('button.save').hidden"));
    }

    [Fact]
    public async Task Link_ToFoldedTrials_UnfoldsThem()
    {
        await using var page = await chromium.NewPageAsync(1280);
        await ReportPage.LoadAsync(page, report.Demo);

        await page.EvaluateExpressionAsync($"{FiguresTable}.querySelector('tbody a').click()");
        await page.WaitForFunctionAsync("() => document.querySelector(location.hash)?.open === true");

        Assert.StartsWith(
            "Marl 100 MHz: 12 trials",
            await page.EvaluateExpressionAsync<string>("document.querySelector(location.hash).textContent.trim()"),
            StringComparison.Ordinal
        );
        Assert.True(
            await page.EvaluateExpressionAsync<bool>(
                "(() => { const y = document.querySelector(location.hash).getBoundingClientRect().top; return y >= 0 && y < innerHeight; })()"
            )
        );
    }

    [Fact]
    public async Task EveryLink_LeadsToSomethingOnThePage()
    {
        await using var page = await chromium.NewPageAsync(1280);
        await ReportPage.LoadAsync(page, report.Demo);

        var links = await page.EvaluateExpressionAsync<JsonElement>(
            "(() => { const all = [...document.links].map(a => a.getAttribute('href')); return { all: all.length, dead: all.filter(h => !h.startsWith('#') || !document.getElementById(h.slice(1))) }; })()"
        );

        Assert.InRange(links.GetProperty("all").GetInt32(), 50, int.MaxValue);
        Assert.Empty(links.GetProperty("dead").EnumerateArray().Select(link => link.GetString()));
    }

    [Fact]
    public async Task Save_Pressed_GivesTheStudyThatTheReportWasMadeFrom()
    {
        var folder = report.NewFolder();
        await using var page = await chromium.NewPageAsync(1280, folder);
        await ReportPage.LoadAsync(page, report.Demo);

        await page.ClickAsync("button.save");
        var saved = Path.Combine(folder, EnclosedStudy.FileName);
        var deadline = TimeProvider.System.GetTimestamp();
        while (!File.Exists(saved) && TimeProvider.System.GetElapsedTime(deadline) < TimeSpan.FromSeconds(20))
        {
            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        Assert.Equal(
            StudyFile.Read(Path.Combine(AppContext.BaseDirectory, "demo", "study.json")),
            StudyFile.Read(saved)
        );
    }

    [Fact]
    public async Task Page_OfHostileNames_RunsNoneOfThem()
    {
        await using var page = await chromium.NewPageAsync(1280);

        var said = await ReportPage.LoadAsync(page, report.Hostile);

        Assert.Empty(said);
        Assert.True(await page.EvaluateExpressionAsync<bool>("window.wasRun === undefined"));
        Assert.Contains(
            HostileStudy.Script,
            await page.EvaluateExpressionAsync<string>("document.body.innerText"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Page_InTheDark_IsDark()
    {
        await using var page = await chromium.NewPageAsync(1280);
        const string paper =
            "getComputedStyle(document.body).backgroundColor.match(/\\d+/g).slice(0, 3).reduce((a, b) => a + Number(b), 0) / 3";
        await ReportPage.LoadAsync(page, report.Demo);

        foreach (var (scheme, least, most) in new[] { ("light", 200, 255), ("dark", 0, 50) })
        {
            await page.EmulateMediaFeaturesAsync([
                new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = scheme },
            ]);
            Assert.InRange(await page.EvaluateExpressionAsync<double>(paper), least, most);
        }
    }

    [Fact]
    public async Task Print_A4_HoldsEveryTable()
    {
        await using var page = await chromium.NewPageAsync(PrintedWidth);
        await ReportPage.LoadAsync(page, report.Demo);

        await page.EmulateMediaTypeAsync(MediaType.Print);
        var wider = await page.EvaluateExpressionAsync<string[]>(
            string.Create(
                CultureInfo.InvariantCulture,
                $"[...document.querySelectorAll('table')].filter(t => t.getBoundingClientRect().right > {PrintedWidth} + 1).map(t => t.caption.textContent + ' ' + t.getBoundingClientRect().right)"
            )
        );

        Assert.Empty(wider);
        Assert.Equal(
            "none",
            await page.EvaluateExpressionAsync<string>("getComputedStyle(document.querySelector('nav')).display")
        );
    }

    private static Task<string?> SortedAsync(IPage page) =>
        page.EvaluateExpressionAsync<string?>($"{FiguresTable}.tHead.rows[0].cells[3].getAttribute('aria-sort')");

    private static Task<double[]> ColumnAsync(IPage page) =>
        page.EvaluateExpressionAsync<double[]>(
            $"[...{FiguresTable}.tBodies[0].rows].map(row => Number(row.cells[3].dataset.order))"
        );

    private static string AxeScript()
    {
        var assembly = typeof(AxeResult).Assembly;
        using var script = new StreamReader(
            assembly.GetManifestResourceStream("Deque.AxeCore.Commons.Resources.axe.min.js")!
        );
        return script.ReadToEnd();
    }
}
