using PuppeteerSharp;

namespace ReportInBrowser.Tests;

/// <summary>One headless browser for all tests: the system's, never one from elsewhere.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Places =
    [
        "/usr/bin/chromium",
        "/usr/bin/chromium-browser",
        "/usr/bin/google-chrome",
        "C:/Program Files/Google/Chrome/Application/chrome.exe",
        "/Applications/Chromium.app/Contents/MacOS/Chromium",
    ];

    private IBrowser? browser;

    /// <summary>A page of its own settings, in a profile of its own.</summary>
    public async Task<IPage> NewPageAsync(int width, string? downloads = null)
    {
        if (browser is null)
        {
            Assert.Skip("No Chromium is installed here (Debian: chromium).");
        }

        var context = await browser.CreateBrowserContextAsync(
            new BrowserContextOptions
            {
                DownloadBehavior = downloads is null
                    ? null
                    : new DownloadBehavior { Policy = DownloadPolicy.Allow, DownloadPath = downloads },
            }
        );
        var page = await context.NewPageAsync();
        await page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 800 });
        return page;
    }

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        var program = Places.FirstOrDefault(File.Exists);
        if (program is null && Environment.GetEnvironmentVariable("CI") == "true")
        {
            Assert.Fail("CI must have Chromium, so that these tests run.");
        }

        if (program is not null)
        {
            browser = await Puppeteer.LaunchAsync(
                new LaunchOptions
                {
                    ExecutablePath = program,
                    Headless = true,

                    // Build machines run as root, where the sandbox doesn't start; the pages are our own.
                    Args = ["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage"],
                }
            );
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
        {
            await browser.CloseAsync();
            await browser.DisposeAsync();
        }
    }
}
