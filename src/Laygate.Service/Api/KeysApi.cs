using Laygate.Register;
using Laygate.Service.Access;

namespace Laygate.Service.Api;

/// <summary>A key that is asked for.</summary>
/// <param name="Name">Name of its owner.</param>
/// <param name="Role">What it may do.</param>
/// <param name="ExpiresAt">When it ends; null: never.</param>
internal sealed record KeyBody(string Name, Role Role, DateTimeOffset? ExpiresAt = null);

/// <summary>Keys, for administrators.</summary>
internal static class KeysApi
{
    public static void MapKeys(this IEndpointRouteBuilder api)
    {
        var keys = api.MapGroup("/keys").RequireAuthorization(AccessSetup.Administrators).WithTags("keys")
            .ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status403Forbidden);
        keys.MapGet("", (AccessKeys store, CancellationToken cancel) => store.ListAsync(cancel)).WithName("ListKeys").WithSummary("List keys without their secrets").Produces<IReadOnlyList<AccessKey>>();
        keys.MapPost("", IssueAsync).WithName("IssueKey").WithSummary("Issue a key").WithDescription("The answer is the only place where the secret ever stands. No other key that still works has the same name.")
            .Produces<IssuedKey>(StatusCodes.Status201Created).ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status409Conflict);
        keys.MapDelete("/{id}", (HttpContext context, AccessKeys store, string id, CancellationToken cancel) => store.RevokeAsync(id, Callers.Need(context), cancel)).WithName("RevokeKey").WithSummary("Revoke a key at once and for good")
            .Produces<AccessKey>().ProducesProblem(StatusCodes.Status400BadRequest).ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static async Task<IResult> IssueAsync(HttpContext context, AccessKeys keys, KeyBody body, CancellationToken cancel)
    {
        if (!Enum.IsDefined(body.Role))
        {
            throw new BadHttpRequestException("There is no such role.");
        }

        var issued = await keys.IssueAsync(body.Name, body.Role, body.ExpiresAt, Callers.Need(context), cancel);
        context.Response.Headers.CacheControl = "no-store";
        return TypedResults.Created($"/api/v1/keys/{issued.Key.Id}", issued);
    }
}
