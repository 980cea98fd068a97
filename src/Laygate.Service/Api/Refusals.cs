using System.Text;
using Laygate.Register;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;
using Laygate.Service.Checking;
using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Mvc;

namespace Laygate.Service.Api;

/// <summary>Refusals as RFC 9457 asks for them. None carries the text of an exception that is not ours.</summary>
internal static class Refusals
{
    /// <summary>A refusal.</summary>
    public static IResult Problem(int status, string title, string detail) => TypedResults.Problem(new ProblemDetails { Status = status, Title = title, Detail = detail });

    /// <summary>A plan that cannot be read: each problem with its place.</summary>
    public static IResult Unreadable(IReadOnlyList<Problem> problems) => TypedResults.Problem(new ProblemDetails
    {
        Status = StatusCodes.Status422UnprocessableEntity,
        Title = "The plan cannot be read",
        Detail = "Nothing was checked. Mend what `errors` lists and send it again.",
        Extensions = { ["errors"] = problems.Select(Error).ToList() },
    });

    /// <summary>Files that are no set that can be used: each reason by itself.</summary>
    public static IResult Unusable(HttpContext context, UnusableSetException unusable)
    {
        const string title = "The set of files cannot be used";
        return IsForPrograms(context)
            ? TypedResults.Problem(new ProblemDetails
            {
                Status = StatusCodes.Status422UnprocessableEntity,
                Title = title,
                Detail = "Nothing was kept or checked. Mend what `errors` lists and send it again.",
                Extensions = { ["errors"] = unusable.Problems.Select(Error).ToList() },
            })
            : Answer(context, StatusCodes.Status422UnprocessableEntity, title, string.Join('\n', unusable.Problems.Select(problem => $"{problem.Message} {problem.Hint}")));
    }

    /// <summary>A plan that fails has no site sheet.</summary>
    public static IResult Failing(IReadOnlyList<Report> refused) => TypedResults.Problem(new ProblemDetails
    {
        Status = StatusCodes.Status409Conflict,
        Title = "No site sheet: the plan fails",
        Detail = "Mend what `errors` lists, or ask for a draft with draft=true: every card of it is marked DRAFT.",
        Extensions =
        {
            ["errors"] = refused.SelectMany(report => report.Findings).Where(finding => finding.Status == Status.Fail)
                .Select(finding => new { Detail = Wording.Message(finding), finding.Rule, finding.Address, finding.Position?.Line, finding.Position?.Column }).ToList(),
        },
    });

    /// <summary>What an exception becomes.</summary>
    public static async Task WriteAsync(HttpContext context)
    {
        var error = context.Features.Get<IExceptionHandlerFeature>()?.Error;
        if (error is UnusableSetException unusable)
        {
            context.Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
            await Unusable(context, unusable).ExecuteAsync(context);
            return;
        }

        var (status, title, detail) = Of(error);
        if (status == StatusCodes.Status401Unauthorized && !IsForPrograms(context))
        {
            context.Response.StatusCode = status;
            await (await Pages.SignInPages.NeededAsync(context)).ExecuteAsync(context);
            return;
        }

        if (error is Pages.EarlierFormException)
        {
            await (await Pages.SignInPages.EarlierAsync(context)).ExecuteAsync(context);
            return;
        }

        if (status is StatusCodes.Status503ServiceUnavailable or StatusCodes.Status429TooManyRequests)
        {
            context.Response.Headers.RetryAfter = "2";
        }

        Note(context.RequestServices.GetRequiredService<ILogger<Telemetry>>(), status, error);

        context.Response.StatusCode = status;
        await Answer(context, status, title, detail).ExecuteAsync(context);
    }

    /// <summary>A refusal as a page for a browser, and as problem details for everybody else.</summary>
    public static IResult Answer(HttpContext context, int status, string title, string detail) =>
        IsForPrograms(context) ? Problem(status, title, detail) : Pages.PageResults.Refusal(context, status, title, detail);

    /// <summary>Whether an answer is for a program; otherwise it is for a browser.</summary>
    public static bool IsForPrograms(HttpContext context) =>
        context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase) || !context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.OrdinalIgnoreCase);

    private static (int Status, string Title, string Detail) Of(Exception? error) => error switch
    {
        RefusedException refused => Of(refused),
        UnreadableReportException unreadable => (StatusCodes.Status409Conflict, "Not in this form", unreadable.Message),
        BusyException => (StatusCodes.Status429TooManyRequests, "Busy", "All places for checks are taken. Try again in a few seconds."),
        SlowSheetException slow => (StatusCodes.Status503ServiceUnavailable, "The check takes too long", slow.Message),
        TooLongException tooLong => (StatusCodes.Status503ServiceUnavailable, "The check takes too long", tooLong.Message),
        Pages.EarlierFormException => (StatusCodes.Status400BadRequest, "From another session", "Open the page again and send the form from there."),
        BadHttpRequestException { StatusCode: StatusCodes.Status413PayloadTooLarge } => (StatusCodes.Status413PayloadTooLarge, "Too large", "A plan has at most 1 MiB, a set of files 4 MiB. Split it, or remove what does not belong in it."),
        BadHttpRequestException { StatusCode: StatusCodes.Status408RequestTimeout } => (StatusCodes.Status408RequestTimeout, "Too slow", "The body came too slowly. Send it again."),
        BadHttpRequestException { InnerException: null } bad => (bad.StatusCode, Title(bad.StatusCode), bad.Message),
        BadHttpRequestException bad => (bad.StatusCode, Title(bad.StatusCode), "The request is not formed as it should be."),
        InvalidDataException or DecoderFallbackException => (StatusCodes.Status400BadRequest, "Bad request", "The request is not formed as it should be."),
        OperationCanceledException => (StatusCodes.Status503ServiceUnavailable, "Interrupted", "The request was interrupted. Try again."),
        { } away when RegisterDatabase.IsAway(away) =>
            (StatusCodes.Status503ServiceUnavailable, "The register does not answer", "Nothing is lost that was acknowledged. Try again in a few seconds, with the same idempotency key."),
        _ => (StatusCodes.Status500InternalServerError, "An error of the service", "Please report it, with the trace id."),
    };

    /// <summary>The status of a refusal of the register.</summary>
    public static int StatusOf(RefusedException refused) => refused.Refusal switch
    {
        Refusal.NotFound => StatusCodes.Status404NotFound,
        Refusal.NotAllowed => StatusCodes.Status403Forbidden,
        Refusal.KeyUsedOtherwise => StatusCodes.Status422UnprocessableEntity,
        Refusal.Changed => StatusCodes.Status412PreconditionFailed,
        Refusal.WrongState => StatusCodes.Status409Conflict,
        _ => StatusCodes.Status400BadRequest,
    };

    private static (int Status, string Title, string Detail) Of(RefusedException refused) => (StatusOf(refused), Title(StatusOf(refused)), refused.Message);

    private static string Title(int status) => status switch
    {
        StatusCodes.Status401Unauthorized => "Who are you?",
        StatusCodes.Status403Forbidden => "Not allowed",
        StatusCodes.Status404NotFound => "Not found",
        StatusCodes.Status406NotAcceptable => "No such form",
        StatusCodes.Status409Conflict => "Not now",
        StatusCodes.Status412PreconditionFailed => "It has changed",
        StatusCodes.Status415UnsupportedMediaType => "No plan",
        StatusCodes.Status422UnprocessableEntity => "Cannot be used",
        StatusCodes.Status428PreconditionRequired => "Say what you have seen",
        _ => "Bad request",
    };

    // Where an error of our own happened, though not what it says: that may quote the plan.
    private static void Note(ILogger log, int status, Exception? error)
    {
        var kind = error?.GetType().Name ?? "unknown";
        if (status is StatusCodes.Status500InternalServerError)
        {
            Log.RequestBroke(log, kind, error?.StackTrace ?? "an unknown place");
        }
        else if (status is StatusCodes.Status503ServiceUnavailable)
        {
            Log.RequestFailed(log, kind);
        }
    }

    private static object Error(Problem problem) => new
    {
        Detail = problem.Message,
        problem.Hint,
        problem.File,
        problem.Position?.Line,
        problem.Position?.Column,
        problem.Position?.EndLine,
        problem.Position?.EndColumn,
    };
}
