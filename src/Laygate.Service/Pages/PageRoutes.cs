using Laygate.Reading.Sets;
using Laygate.Register;
using Laygate.Reporting.Language;
using Laygate.Reporting.Rules;
using Laygate.Reporting.Runs;
using Laygate.Rules.Results;
using Laygate.Service.Access;
using Laygate.Service.Api;
using Laygate.Service.Checking;
using Laygate.Service.Settings;
using Laygate.Service.Work;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Pages;

/// <summary>The pages: they work without scripts, by forms and links alone.</summary>
internal static class PageRoutes
{
    private static readonly string Style = Asset.Text("laygate.css");

    public static void MapPages(this IEndpointRouteBuilder app)
    {
        app.MapGet("/laygate.css", () => TypedResults.Text(Style, "text/css", System.Text.Encoding.UTF8));
        app.MapGet("/", StartAsync);
        app.MapPost("/check", CheckAsync).RequireAuthorization(AccessSetup.Checkers);
        app.MapSignIn();
        app.MapGet("/rules", (HttpContext context, CheckDesk desk) => PageResults.Page<RulesPage>(context, Values(("Book", desk.Book)))).RequireAuthorization(AccessSetup.Checkers);
        app.MapGet("/rules/{id}", Rule).RequireAuthorization(AccessSetup.Checkers);
        app.MapSubmissionPages();
        app.MapAdministrationPages();
        app.MapNoticePages();
        app.MapRetentionPages();
    }

    /// <summary>Parameters of a page.</summary>
    public static Dictionary<string, object?> Values(params (string Name, object? Value)[] values) => values.ToDictionary(pair => pair.Name, pair => pair.Value, StringComparer.Ordinal);

    /// <summary>The plan of a form with what came with it: its files, or else its text field.</summary>
    public static async Task<Sent> SentAsync(IFormCollection form, CancellationToken cancel)
    {
        // A browser sends an empty file without a name where none was chosen.
        var chosen = form.Files.GetFiles("file").Where(file => file.Length > 0 || file.FileName.Length > 0).ToList();
        var plan = form["name"].ToString().Trim() is { Length: > 0 } named ? named : null;
        if (form["kept"].Count > 0)
        {
            return KeptPlan.Read(form["kept-name"], form["kept"], plan);
        }

        if (chosen is [var file])
        {
            await using var stream = file.OpenReadStream();
            return Sent.One(Path.GetFileName(file.FileName) is { Length: > 0 } name ? name : "plan.yaml", await Bodies.ReadAsync(stream, SetLimits.Bytes, cancel), plan);
        }

        if (chosen.Count > 1)
        {
            return Sent.Of("form", await Sent.FilesAsync(chosen, cancel), plan);
        }

        // A browser sends line ends of a text field as CRLF; plans written by hand have none of their own to keep.
        using var text = new MemoryStream(System.Text.Encoding.UTF8.GetBytes(form["plan"].ToString().Replace("\r\n", "\n", StringComparison.Ordinal)));
        return new Sent("plan.yaml", await Bodies.ReadAsync(text, Bodies.LargestPlan, cancel));
    }

    private static async Task<IResult> StartAsync(HttpContext context, CheckDesk desk, IOptions<ServiceSettings> settings, KeptForms kept, CancellationToken cancel) => PageResults.Page<CheckPage>(context, Values(
        ("MayCheck", settings.Value.AnonymousChecks || Callers.Of(context.User) is not null),
        ("Written", Callers.Of(context.User) is null ? null : await kept.ReadAsync(context, LocalAddress.Start, cancel)),
        ("Specifications", (IReadOnlyList<(string, string)>)[.. desk.Pack.Specifications.Where(one => !one.IsUnread).Select(one => (one.Name, one.Title))])));

    private static async Task<IResult> CheckAsync(HttpContext context, CheckDesk desk, CheckPool pool, SubmissionRegister register, KeptForms kept, Bell bell, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var caller = form["do"] == "submit" ? Callers.Need(context) : null;
        var sent = await SentAsync(form, cancel);
        await kept.KeepAsync(context, LocalAddress.Start, null, cancel);
        if (caller is not null)
        {
            var (submission, _) = await register.SubmitAsync(sent.Submission(null, null), caller, cancel);
            bell.Ring();
            return TypedResults.Redirect($"/submissions/{submission.Id}");
        }

        var wish = new CheckWish(form["rules"].ToString() is { Length: > 0 } rules ? [rules] : null) { Remedies = true, Page = true, Outlook = form["outlook"] == "true", Parts = sent.Parts };
        _ = desk.BookOf(wish.Rules);
        return form["do"].ToString() switch
        {
            "sheet" => await SheetAsync(context, desk, pool, wish, (sent, form, Answers.Language(form["language"].ToString() is { Length: > 0 } language ? language : null)), cancel),
            "report" => await ReportAsync(context, desk, pool, wish, (sent, form), cancel),
            _ => await FindingsAsync(context, desk, pool, wish, (sent, form), cancel),
        };
    }

    private static async Task<IResult> ReportAsync(HttpContext context, CheckDesk desk, CheckPool pool, CheckWish wish, (Sent Sent, IFormCollection Form) plan, CancellationToken cancel)
    {
        var result = await pool.RunAsync(stop => desk.Open(wish).Run(plan.Sent.Name, plan.Sent.Text, stop), cancel);
        return result.Problems.Count > 0 ? Findings(context, result, plan.Sent, plan.Form) : Answers.Report(context, Answers.Html, result);
    }

    private static async Task<IResult> FindingsAsync(HttpContext context, CheckDesk desk, CheckPool pool, CheckWish wish, (Sent Sent, IFormCollection Form) plan, CancellationToken cancel) =>
        Findings(context, await pool.RunAsync(stop => desk.Open(wish).Run(plan.Sent.Name, plan.Sent.Text, stop), cancel), plan.Sent, plan.Form);

    private static RazorComponentResult Findings(HttpContext context, FileResult result, Sent sent, IFormCollection form)
    {
        var report = ReportView.Of(new ReportedRun(CheckDesk.Version, [result], []));
        return PageResults.Page<ResultPage>(
            context, Values(("Report", report), ("Kept", KeptPlan.Of(sent, form)), ("Files", TextFile.Of(sent.Name, sent.Text, sent.Files.Select(file => (file.Name, file.Bytes))))), report.Problems.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK);
    }

    private static async Task<IResult> SheetAsync(HttpContext context, CheckDesk desk, CheckPool pool, CheckWish wish, (Sent Sent, IFormCollection Form, string Language) plan, CancellationToken cancel)
    {
        var result = await pool.RunAsync(stop => desk.Open(wish with { Remedies = false, Page = false, Outlook = false }).Sheet(plan.Sent.Name, plan.Sent.Text, draft: false, stop), cancel);
        if (result.Problems.Count > 0)
        {
            return Findings(context, new FileResult(plan.Sent.Name, [], result.Problems), plan.Sent, plan.Form);
        }

        var failing = result.Refused.SelectMany(report => report.Findings).Where(finding => finding.Status == Status.Fail).Select(Wording.Message).ToList();
        return failing.Count > 0 || result.Sheets.Count == 0
            ? PageResults.Page<SheetPage>(context, Values(("Failing", failing)), StatusCodes.Status409Conflict)
            : Answers.Sheets(context, Answers.Html, result.Sheets, plan.Language);
    }

    private static IResult Rule(HttpContext context, CheckDesk desk, string id)
    {
        if (KnowledgeApi.Find(desk.Book, id) is not { } rule)
        {
            return TypedResults.NotFound();
        }

        return PageResults.Page<RulePage>(context, Values(("Rule", rule), ("Limits", RuleWords.Limits(rule.Rule, desk.Book.Sources)), ("Cases", desk.Cases(rule.Rule.Definition.Id))));
    }
}
