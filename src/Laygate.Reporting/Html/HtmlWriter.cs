using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using System.Text;
using Laygate.Reporting.Runs;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.Logging.Abstractions;

namespace Laygate.Reporting.Html;

/// <summary>
/// The report as one page that stands alone: no script, no request, its only style sheet allowed by its hash. Every text of a plan goes through the
/// encoder of the template engine. No time of day stands in it: the same input gives the same bytes.
/// </summary>
public static class HtmlWriter
{
    /// <summary>The content security policy of the page, for a host that also sends it as a header.</summary>
    public static string ContentPolicy { get; } = Policy(Styles.Report);

    /// <summary>Writes a run as UTF-8.</summary>
    /// <param name="run">The run; reports made for a page carry plots and inputs.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(ReportedRun run, Stream output)
    {
        using var form = new HtmlForm(run, output, WholeRun.Aside());
        form.Write(run);
    }

    /// <summary>Renders a page.</summary>
    internal static void Render<[DynamicallyAccessedMembers(DynamicallyAccessedMemberTypes.All)] T>(Stream output, Dictionary<string, object?> parameters)
        where T : IComponent
    {
        using var writer = Writer(output);
        writer.Write("<!DOCTYPE html>\n");
        RenderPart<T>(writer, parameters);
        writer.Write('\n');
    }

    /// <summary>Renders a part of a page.</summary>
    internal static void RenderPart<[DynamicallyAccessedMembers(DynamicallyAccessedMemberTypes.All)] T>(TextWriter writer, Dictionary<string, object?> parameters)
        where T : IComponent
    {
        using var renderer = new HtmlRenderer(new NoServices(), NullLoggerFactory.Instance);
        renderer.Dispatcher.InvokeAsync(() =>
        {
            // Nothing in the pages waits, so that rendering is over when the call returns.
            var root = renderer.BeginRenderingComponent<T>(ParameterView.FromDictionary(parameters));
            root.WriteHtmlTo(writer);
        }).GetAwaiter().GetResult();
    }

    /// <summary>Writes text to a page, which stays open.</summary>
    internal static StreamWriter Writer(Stream output) =>
        new(output, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), bufferSize: 64 << 10, leaveOpen: true) { NewLine = "\n" };

    /// <summary>The policy that lets one style sheet through and nothing else.</summary>
    internal static string Policy(string css) =>
        $"default-src 'none'; style-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(css)))}'; base-uri 'none'; form-action 'none'";

    private sealed class NoServices : IServiceProvider
    {
        public object? GetService(Type serviceType) => null;
    }
}
