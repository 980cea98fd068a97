using System.Reflection;
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
    private static readonly string Style = Text("laygate.css");

    public static void MapPages(this IEndpointRouteBuilder app)
    {
        app.MapGet("/laygate.css", () => TypedResults.Text(Style, "text/css", System.Text.Encoding.UTF8));
        app.MapGet("/", Start);
        app.MapPost("/check", CheckAsync).RequireAuthorization(AccessSetup.Checkers);
        app.MapGet("/sign-in", (HttpContext context) => PageResults.Page<SignInPage>(context, Values()));
        app.MapPost("/sign-in", SignInAsync);
        app.MapPost("/sign-out", SignOutAsync);
        app.MapGet("/rules", (HttpContext context, CheckDesk desk) => PageResults.Page<RulesPage>(context, Values(("Book", desk.Book)))).RequireAuthorization(AccessSetup.Checkers);
        app.MapGet("/rules/{id}", Rule).RequireAuthorization(AccessSetup.Checkers);
        app.MapSubmissionPages();
    }

    /// <summary>Parameters of a page.</summary>
    public static Dictionary<string, object?> Values(params (string Name, object? Value)[] values) => values.ToDictionary(pair => pair.Name, pair => pair.Value, StringComparer.Ordinal);

    /// <summary>The plan of a form: its file, or else its text field; and the name of the file.</summary>
    public static async Task<(byte[] Bytes, string Name)> PlanAsync(IFormCollection form, CancellationToken cancel)
    {
        if (form.Files["file"] is { Length: > 0 } file)
        {
            await using var stream = file.OpenReadStream();
            return (await Bodies.ReadAsync(stream, cancel), Path.GetFileName(file.FileName) is { Length: > 0 } name ? name : "plan.yaml");
        }

        // A browser sends line ends of a text field as CRLF; plans written by hand have none of their own to keep.
        using var text = new MemoryStream(System.Text.Encoding.UTF8.GetBytes(form["plan"].ToString().Replace("\r\n", "\n", StringComparison.Ordinal)));
        return (await Bodies.ReadAsync(text, cancel), "plan.yaml");
    }

    private static IResult Start(HttpContext context, CheckDesk desk, IOptions<ServiceSettings> settings) => PageResults.Page<CheckPage>(context, Values(
        ("MayCheck", settings.Value.AnonymousChecks || Callers.Of(context.User) is not null),
        ("Specifications", (IReadOnlyList<(string, string)>)[.. desk.Pack.Specifications.Where(one => !one.IsUnread).Select(one => (one.Name, one.Title))])));

    private static async Task<IResult> CheckAsync(HttpContext context, CheckDesk desk, CheckPool pool, SubmissionRegister register, Bell bell, CancellationToken cancel)
    {
        var form = await FormGuard.ReadAsync(context.Request, cancel);
        var (bytes, name) = await PlanAsync(form, cancel);
        if (form["do"] == "submit")
        {
            var (submission, _) = await register.SubmitAsync(new NewSubmission(name, bytes, null, null), Callers.Need(context), cancel);
            bell.Ring();
            return TypedResults.Redirect($"/submissions/{submission.Id}");
        }

        var wish = new CheckWish(form["rules"].ToString() is { Length: > 0 } rules ? [rules] : null) { Remedies = true, Page = true, Outlook = form["outlook"] == "true" };
        _ = desk.BookOf(wish.Rules);
        return form["do"].ToString() switch
        {
            "sheet" => await SheetAsync(context, desk, pool, wish, (name, bytes, Answers.Language(form["language"].ToString() is { Length: > 0 } language ? language : null)), cancel),
            "report" => await ReportAsync(context, desk, pool, wish, name, bytes, cancel),
            _ => await FindingsAsync(context, desk, pool, wish, name, bytes, cancel),
        };
    }

    private static async Task<IResult> ReportAsync(HttpContext context, CheckDesk desk, CheckPool pool, CheckWish wish, string name, byte[] bytes, CancellationToken cancel)
    {
        var result = await pool.RunAsync(stop => desk.Open(wish).Run(name, bytes, stop), cancel);
        return result.Problems.Count > 0 ? Findings(context, result, bytes) : Answers.Report(context, Answers.Html, result);
    }

    private static async Task<IResult> FindingsAsync(HttpContext context, CheckDesk desk, CheckPool pool, CheckWish wish, string name, byte[] bytes, CancellationToken cancel)
    {
        return Findings(context, await pool.RunAsync(stop => desk.Open(wish).Run(name, bytes, stop), cancel), bytes);
    }

    private static RazorComponentResult Findings(HttpContext context, FileResult result, byte[] bytes)
    {
        var report = ReportView.Of(new ReportedRun(CheckDesk.Version, [result], []));
        return PageResults.Page<ResultPage>(
            context, Values(("Report", report), ("Lines", PlanLines.Of(bytes))), report.Problems.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK);
    }

    private static async Task<IResult> SheetAsync(HttpContext context, CheckDesk desk, CheckPool pool, CheckWish wish, (string Name, byte[] Bytes, string Language) plan, CancellationToken cancel)
    {
        var result = await pool.RunAsync(stop => desk.Open(wish with { Remedies = false, Page = false, Outlook = false }).Sheet(plan.Name, plan.Bytes, draft: false, stop), cancel);
        if (result.Problems.Count > 0)
        {
            return Findings(context, new FileResult(plan.Name, [], result.Problems), plan.Bytes);
        }

        var failing = result.Refused.SelectMany(report => report.Findings).Where(finding => finding.Status == Status.Fail).Select(Wording.Message).ToList();
        return failing.Count > 0 || result.Sheets.Count == 0
            ? PageResults.Page<SheetPage>(context, Values(("Failing", failing)), StatusCodes.Status409Conflict)
            : Answers.Sheets(context, Answers.Html, result.Sheets, plan.Language);
    }

    private static async Task<IResult> SignInAsync(HttpContext context, AccessKeys keys, CancellationToken cancel)
    {
        // The cookie of an earlier session does not count here.
        var form = await FormGuard.ReadAsync(context.Request, cancel, withToken: false);
        var secret = form["key"].ToString().Trim();
        if (await keys.FindAsync(secret, cancel) is null)
        {
            return PageResults.Page<SignInPage>(context, Values(("Wrong", true)), StatusCodes.Status401Unauthorized);
        }

        context.Response.Cookies.Append(KeyAuthentication.Cookie, secret, Options(context));
        return TypedResults.Redirect("/");
    }

    private static async Task<IResult> SignOutAsync(HttpContext context, CancellationToken cancel)
    {
        _ = await FormGuard.ReadAsync(context.Request, cancel);
        context.Response.Cookies.Delete(KeyAuthentication.Cookie, Options(context));
        return TypedResults.Redirect("/");
    }

    private static CookieOptions Options(HttpContext context) => new() { HttpOnly = true, SameSite = Microsoft.AspNetCore.Http.SameSiteMode.Strict, Secure = Border.IsSecure(context.Request), Path = "/" };

    private static IResult Rule(HttpContext context, CheckDesk desk, string id)
    {
        if (KnowledgeApi.Find(desk.Book, id) is not { } rule)
        {
            return TypedResults.NotFound();
        }

        return PageResults.Page<RulePage>(context, Values(("Rule", rule), ("Limits", RuleWords.Limits(rule.Rule, desk.Book.Sources)), ("Cases", desk.Cases(rule.Rule.Definition.Id))));
    }

    private static string Text(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
