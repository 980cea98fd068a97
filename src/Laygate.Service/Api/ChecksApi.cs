using System.Text;
using Laygate.Checking.Comparing;
using Laygate.Model.Plans;
using Laygate.Reporting.Comparing;
using Laygate.Service.Access;
using Laygate.Service.Checking;
using Microsoft.AspNetCore.Mvc;

namespace Laygate.Service.Api;

/// <summary>Two states of a plan.</summary>
/// <param name="Old">Text of the earlier state.</param>
/// <param name="New">Text of the later state.</param>
internal sealed record ComparisonBody(string Old, string New);

/// <summary>What the query of a check may say.</summary>
// The framework would describe the body of the request by the text of a parameter here. Rules stand for the description of the interface only: they are read from the query itself.
internal sealed record CheckQuery(
    [FromQuery(Name = "rules")] string[]? Rules,
    [FromQuery(Name = "stage")] string? Stage,
    [FromQuery(Name = "date")] DateOnly? Date,
    [FromQuery(Name = "quick")] bool? Quick,
    [FromQuery(Name = "remedies")] bool? Remedies,
    [FromQuery(Name = "outlook")] bool? Outlook,
    [FromQuery(Name = "plan")] string? Plan);

/// <summary>What the query of a sheet may say.</summary>
internal sealed record SheetQuery(
    [FromQuery(Name = "rules")] string[]? Rules,
    [FromQuery(Name = "stage")] string? Stage,
    [FromQuery(Name = "date")] DateOnly? Date,
    [FromQuery(Name = "draft")] bool? Draft,
    [FromQuery(Name = "language")] string? Language,
    [FromQuery(Name = "plan")] string? Plan);

/// <summary>Checks that store nothing.</summary>
internal static class ChecksApi
{
    public static void MapChecks(this IEndpointRouteBuilder api)
    {
        api.MapPost("/checks", CheckAsync).RequireAuthorization(AccessSetup.Checkers).WithName("CheckPlan").WithTags("checks")
            .WithSummary("Check a plan")
            .WithDescription("The body is the plan, YAML or JSON, at most 1 MiB; or a plan with the files of parts that it uses, as a ZIP archive or a form with files, at most 4 MiB (`plan` names the file that is the plan, where several are). Findings are no error: a plan that fails is answered with 200 and a report. The header Accept chooses JSON, SARIF 2.1.0, a page that stands alone with plots, or Markdown. With remedies=true the report says what would mend each finding, with outlook=true it judges laying hour by hour. With quick=true spread, simulated shifts, remedies and outlook are left out, and the report says so. Nothing is stored.")
            .TakesPlan()
            .Produces<object>(StatusCodes.Status200OK, Answers.OfReports[0], Answers.OfReports[1..])
            .RefusesPlans().ProducesProblem(StatusCodes.Status406NotAcceptable);
        api.MapPost("/sheets", SheetAsync).RequireAuthorization(AccessSetup.Checkers).WithName("MakeSheet").WithTags("checks")
            .WithSummary("Make the site sheet of a plan")
            .WithDescription("One short card for each role in the language that language names (en or de), as Markdown or, with Accept: text/html, as a page for print. There is none for a plan that fails, unless it is asked for as a draft. Nothing is stored.")
            .TakesPlan()
            .Produces<string>(StatusCodes.Status200OK, Answers.OfSheets[0], Answers.OfSheets[1..])
            .RefusesPlans().ProducesProblem(StatusCodes.Status406NotAcceptable).ProducesProblem(StatusCodes.Status409Conflict);
        api.MapPost("/comparisons", CompareAsync).RequireAuthorization(AccessSetup.Checkers).WithName("ComparePlans").WithTags("checks")
            .WithSummary("Compare two states of a plan")
            .WithDescription("Findings that are new, gone or different, quantities that moved, and the text behind them. Nothing is stored.")
            .Produces<object>(StatusCodes.Status200OK, "application/json").RefusesPlans();
    }

    /// <summary>How a request wants its plan checked.</summary>
    /// <exception cref="BadHttpRequestException">A wish is none that can be met.</exception>
    public static CheckWish Wish(HttpRequest request, string? stage, DateOnly? date, bool? quick)
    {
        Stage? known = stage is null ? null : Words.Find<Stage>(stage) ?? throw new BadHttpRequestException($"There is no such stage. Stages are: {string.Join(", ", Words.Of<Stage>())}.");
        return new CheckWish(Bodies.Texts(request, "rules"), known, date, quick == true);
    }

    private static async Task<IResult> CheckAsync(HttpContext context, CheckDesk desk, CheckPool pool, [AsParameters] CheckQuery query, CancellationToken cancel)
    {
        context.Response.Headers.Vary = "Accept";
        var type = Bodies.Offer(context.Request, Answers.OfReports);
        var wish = Wish(context.Request, query.Stage, query.Date, query.Quick) with { Remedies = query.Remedies == true, Outlook = query.Outlook == true, Page = type is Answers.Html };
        _ = desk.BookOf(wish.Rules);
        var sent = await Sent.ReadAsync(context.Request, name: null, query.Plan, cancel);
        var result = await pool.RunAsync(stop => desk.Open(wish with { Parts = sent.Parts }).Run(sent.Name, sent.Text, stop), cancel);
        return result.Problems.Count > 0 ? Refusals.Unreadable(result.Problems) : Answers.Report(context, type, result);
    }

    private static async Task<IResult> SheetAsync(HttpContext context, CheckDesk desk, CheckPool pool, [AsParameters] SheetQuery query, CancellationToken cancel)
    {
        context.Response.Headers.Vary = "Accept";
        var type = Bodies.Offer(context.Request, Answers.OfSheets);
        var spoken = Answers.Language(query.Language);
        var wish = Wish(context.Request, query.Stage, query.Date, quick: null);
        _ = desk.BookOf(wish.Rules);
        var sent = await Sent.ReadAsync(context.Request, name: null, query.Plan, cancel);
        var result = await pool.RunAsync(stop => desk.Open(wish with { Parts = sent.Parts }).Sheet(sent.Name, sent.Text, query.Draft == true, stop), cancel);
        return result.Problems.Count > 0 ? Refusals.Unreadable(result.Problems)
            : result.Refused.Count > 0 ? Refusals.Failing(result.Refused)
            : Answers.Sheets(context, type, result.Sheets, spoken);
    }

    private static async Task<IResult> CompareAsync(
        HttpContext context, CheckDesk desk, CheckPool pool, ComparisonBody body, [FromQuery] string[]? rules, [FromQuery] DateOnly? date, CancellationToken cancel)
    {
        _ = rules;
        var wish = Wish(context.Request, stage: null, date, quick: null);
        _ = desk.BookOf(wish.Rules);
        var (old, @new) = (Encoding.UTF8.GetBytes(body.Old), Encoding.UTF8.GetBytes(body.New));
        if (old.Length > Bodies.LargestPlan || @new.Length > Bodies.LargestPlan)
        {
            throw new BadHttpRequestException("Too large.", StatusCodes.Status413PayloadTooLarge);
        }

        var result = await pool.RunAsync(stop => new PlanComparer(desk.Open(wish), desk.Open(wish)).Run("old", old, "new", @new, stop), cancel);
        if (result.Problems.Count > 0)
        {
            return Refusals.Unreadable(result.Problems);
        }

        using var bytes = new MemoryStream();
        ComparisonJson.Write(bytes, CheckDesk.Version, [result]);
        return TypedResults.Bytes(bytes.ToArray(), "application/json");
    }

    private static RouteHandlerBuilder RefusesPlans(this RouteHandlerBuilder route) => route
        .ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status403Forbidden)
        .ProducesProblem(StatusCodes.Status413PayloadTooLarge).ProducesProblem(StatusCodes.Status415UnsupportedMediaType)
        .ProducesProblem(StatusCodes.Status422UnprocessableEntity);
}
