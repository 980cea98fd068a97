using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Laygate.HostTests;

/// <summary>Looks at pages in headless Chromium, with the script beside the public checkers. A browser that has looked at one page looks at the next.</summary>
internal sealed class BrowserLook : IDisposable
{
    private static readonly ConcurrentBag<BrowserLook> Idle = [];
    private readonly Process process;
    private readonly Task<string> errors;

    private BrowserLook(string chromium)
    {
        process = Process.Start(new ProcessStartInfo("node", [Path.Combine(SourceTree.Root, "tests", "Tools", "page-check.mjs"), chromium])
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        errors = process.StandardError.ReadToEndAsync();
    }

    public static JsonNode At(string html, string what, string? picture = null)
    {
        var chromium = Needs.Chromium();
        Needs.Tool("playwright-core");
        Needs.Tool("axe-core/axe.min.js");
        var page = Path.Combine(Directory.CreateTempSubdirectory("laygate-page-").FullName, "page.html");
        try
        {
            File.WriteAllText(page, html);
            return At(Idle.TryTake(out var idle) ? idle : new BrowserLook(chromium), new { page, what, @out = picture });
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(page)!, recursive: true);
        }
    }

    public static IReadOnlyList<string> Texts(JsonNode? list) => [.. list!.AsArray().Select(item => item!.GetValue<string>())];

    /// <summary>Ends the browser.</summary>
    public void Dispose()
    {
        process.StandardInput.Close();
        process.WaitForExit();
        process.Dispose();
    }

    private static JsonNode At(BrowserLook browser, object look)
    {
        try
        {
            var answer = browser.Ask(look);
            Assert.Null((string?)answer["problem"]);
            Idle.Add(browser);
            return answer;
        }
        catch
        {
            browser.Dispose();
            throw;
        }
    }

    private JsonNode Ask(object look)
    {
        process.StandardInput.WriteLine(JsonSerializer.Serialize(look));
        process.StandardInput.Flush();
        return JsonNode.Parse(process.StandardOutput.ReadLine() ?? throw new InvalidOperationException(errors.GetAwaiter().GetResult()))!;
    }
}
