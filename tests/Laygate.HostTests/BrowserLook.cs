using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Laygate.HostTests;

/// <summary>Looks at a page in headless Chromium, with the script beside the public checkers.</summary>
internal static class BrowserLook
{
    public static JsonNode At(string html, string what, string? picture = null)
    {
        var chromium = Needs.Chromium();
        Needs.Tool("playwright-core");
        Needs.Tool("axe-core/axe.min.js");
        var page = Path.Combine(Directory.CreateTempSubdirectory("laygate-page-").FullName, "page.html");
        try
        {
            File.WriteAllText(page, html);
            using var process = Process.Start(new ProcessStartInfo("node", [Path.Combine(SourceTree.Root, "tests", "Tools", "page-check.mjs"), chromium, page, what, picture ?? string.Empty])
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, errors.GetAwaiter().GetResult());
            return JsonNode.Parse(output)!;
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(page)!, recursive: true);
        }
    }

    public static IReadOnlyList<string> Texts(JsonNode? list) => [.. list!.AsArray().Select(item => item!.GetValue<string>())];
}
