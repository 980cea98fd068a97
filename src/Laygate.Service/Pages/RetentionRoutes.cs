using Laygate.Register;
using Laygate.Service.Access;
using Laygate.Service.Settings;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Pages;

/// <summary>Which names are due to be replaced, for administrators.</summary>
internal static class RetentionRoutes
{
    public static void MapRetentionPages(this IEndpointRouteBuilder app) =>
        app.MapGet("/administration/retention", ShowAsync).RequireAuthorization(AccessSetup.Administrators);

    private static async Task<IResult> ShowAsync(HttpContext context, Retention retention, IOptions<ServiceSettings> options, CancellationToken cancel)
    {
        var rule = options.Value.Retention.Rule;
        return PageResults.Page<RetentionPage>(context, PageRoutes.Values(("Rule", rule), ("Due", await retention.DueAsync(rule, cancel))));
    }
}
