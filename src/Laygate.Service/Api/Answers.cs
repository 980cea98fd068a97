using Laygate.Register;
using Laygate.Reporting.Cards;
using Laygate.Reporting.Html;
using Laygate.Reporting.Markdown;
using Laygate.Reporting.Runs;
using Laygate.Reporting.Sarif;
using Laygate.Rules.Results;
using Laygate.Service.Checking;
using Laygate.Service.Watching;

namespace Laygate.Service.Api;

/// <summary>Reports and site sheets in the forms in which they are answered. A form that is not asked for is not made.</summary>
internal static class Answers
{
    /// <summary>SARIF 2.1.0.</summary>
    public const string Sarif = "application/sarif+json";

    /// <summary>A page.</summary>
    public const string Html = "text/html";

    /// <summary>Markdown (RFC 7763).</summary>
    public const string Markdown = "text/markdown";

    /// <summary>JSON.</summary>
    public const string Json = "application/json";

    /// <summary>Plain text.</summary>
    public const string Plain = "text/plain";

    /// <summary>Forms of a report, the usual one first.</summary>
    public static readonly string[] OfReports = [Json, Sarif, Html, Markdown];

    /// <summary>Forms of a site sheet, the usual one first.</summary>
    public static readonly string[] OfSheets = [Markdown, Plain, Html];

    /// <summary>A report in one form.</summary>
    /// <param name="context">The request, for the headers of its answer.</param>
    /// <param name="type">One of <see cref="OfReports"/>.</param>
    /// <param name="result">What the check found.</param>
    public static IResult Report(HttpContext context, string type, FileResult result) =>
        type is Json ? new Written(Json, output => Screening.Json(result, output)) : Report(context, type, ReportedRun.Of(result.Reports));

    /// <summary>A run in a form other than JSON.</summary>
    /// <param name="context">The request, for the headers of its answer.</param>
    /// <param name="type">One of <see cref="OfReports"/> but <see cref="Json"/>.</param>
    /// <param name="run">The run.</param>
    public static IResult Report(HttpContext context, string type, ReportedRun run) => type switch
    {
        Sarif => Bytes(type, output => SarifWriter.Write(run, output)),
        Markdown => Bytes(type, output => MarkdownWriter.Write(run, output)),
        _ => Page(context, HtmlWriter.ContentPolicy, output => HtmlWriter.Write(run, output)),
    };

    /// <summary>Site sheets in one form.</summary>
    /// <param name="context">The request, for the headers of its answer.</param>
    /// <param name="type">One of <see cref="OfSheets"/>.</param>
    /// <param name="sheets">The sheets.</param>
    /// <param name="language">Language of the cards.</param>
    public static IResult Sheets(HttpContext context, string type, IReadOnlyList<SiteSheet> sheets, string language) => type is Html
        ? Page(context, CardsWriter.ContentPolicy, output => CardsWriter.Write(sheets, language, output))
        : TypedResults.Text(CardsWriter.Markdown(sheets, language), type, System.Text.Encoding.UTF8);

    /// <summary>A document as it was kept at the screening.</summary>
    /// <param name="context">The request, for the headers of its answer.</param>
    /// <param name="kept">The document.</param>
    /// <param name="type">Its media type, where the caller takes it under another one; null: its own.</param>
    public static IResult Kept(HttpContext context, KeptDocument kept, string? type = null)
    {
        if (kept.Policy is { } policy)
        {
            SecurityHeaders.Use(context, policy);
        }

        context.Response.Headers.CacheControl = "private, no-store";
        return new Written((type ?? kept.Type) + "; charset=utf-8", output => Documents.Write(kept, output));
    }

    /// <summary>Language of the cards; English when nothing is asked for.</summary>
    /// <param name="language">What is asked for.</param>
    /// <exception cref="BadHttpRequestException">There are none in this language.</exception>
    public static string Language(string? language)
    {
        var known = language ?? CardTexts.Languages[0];
        return CardTexts.Languages.Contains(known, StringComparer.Ordinal)
            ? known
            : throw new BadHttpRequestException($"There are no cards in this language. Languages are: {string.Join(", ", CardTexts.Languages)}.");
    }

    /// <summary>A page that stands alone under a policy of its own: its one style sheet by hash, no script, no request.</summary>
    /// <param name="context">The request, for the headers of its answer.</param>
    /// <param name="policy">The policy.</param>
    /// <param name="write">Writes the page.</param>
    public static IResult Page(HttpContext context, string policy, Action<Stream> write)
    {
        SecurityHeaders.Use(context, policy);
        context.Response.Headers.CacheControl = "private, no-store";
        return Bytes(Html, write);
    }

    private static Written Bytes(string type, Action<Stream> write) => new(type is Sarif ? type : type + "; charset=utf-8", write);
}
