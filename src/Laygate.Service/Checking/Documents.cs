using System.Text;
using Laygate.Register;
using Laygate.Reporting.Cards;
using Laygate.Reporting.Html;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;

namespace Laygate.Service.Checking;

/// <summary>The documents of a screening as they are kept: the report for print and the site sheets, in the words and pictures of that day (decision 20).</summary>
internal static class Documents
{
    /// <summary>Name of the report for print.</summary>
    public const string Report = "report.html";

    private const string Page = "text/html";

    /// <summary>Name of a site sheet.</summary>
    /// <param name="draft">Whether it is a draft.</param>
    /// <param name="language">Language of the cards.</param>
    /// <param name="page">Whether it is a page for print; otherwise text.</param>
    public static string Sheet(bool draft, string language, bool page) => $"{(draft ? "draft" : "sheet")}-{language}.{(page ? "html" : "md")}";

    /// <summary>The documents of a screening.</summary>
    /// <param name="result">What the check found, with plots and inputs.</param>
    /// <param name="sheets">Its site sheets, as drafts where it fails; null where it could not be read.</param>
    public static IReadOnlyList<KeptDocument> Of(FileResult result, SheetResult? sheets)
    {
        var isDraft = Fails(result);
        var run = new ReportedRun(CheckDesk.Version, [result], []);
        return
        [
            Made(Report, Page, HtmlWriter.ContentPolicy, output => HtmlWriter.Write(run, output)),
            .. sheets is not { Refused.Count: 0, Sheets.Count: > 0 } ? [] : CardTexts.Languages.SelectMany(language => new[]
            {
                Made(Sheet(isDraft, language, page: true), Page, CardsWriter.ContentPolicy, output => CardsWriter.Write(sheets.Sheets, language, output)),
                Made(Sheet(isDraft, language, page: false), "text/markdown", null, output => output.Write(Encoding.UTF8.GetBytes(CardsWriter.Markdown(sheets.Sheets, language)))),
            }),
        ];
    }

    /// <summary>Whether a plan fails, so that it has site sheets only as drafts.</summary>
    public static bool Fails(FileResult result) => result.Reports.Any(report => report.Counts.Failed > 0);

    /// <summary>Writes a document as it was made.</summary>
    public static void Write(KeptDocument kept, Stream output)
    {
        using var unpacked = Packed.Open(kept.Bytes);
        unpacked.CopyTo(output);
    }

    private static KeptDocument Made(string name, string type, string? policy, Action<Stream> write) => new(name, type, policy, Packed.Of(write));
}
