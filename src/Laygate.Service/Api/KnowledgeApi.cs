using System.Text;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reporting.Rules;
using Laygate.Rules.Merging;
using Laygate.Service.Access;
using Laygate.Service.Checking;
using Microsoft.AspNetCore.Mvc;

namespace Laygate.Service.Api;

/// <summary>A quantity as it is listed.</summary>
/// <param name="Name">Name.</param>
/// <param name="Element">Kind of element it belongs to.</param>
/// <param name="Kind">Kind of value.</param>
/// <param name="MetricUnit">Unit in metric plans; empty for ratios, counts and words.</param>
/// <param name="UsUnit">Unit in plans in US units.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Formula">How it is found; empty where it is stated.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="Range">Where it holds.</param>
internal sealed record QuantityLine(string Name, string Element, string Kind, string MetricUnit, string UsUnit, string Meaning, string Formula, string Source, string Range);

/// <summary>What the program knows: rules, quantities, schemas.</summary>
internal static class KnowledgeApi
{
    public static void MapKnowledge(this IEndpointRouteBuilder api)
    {
        var open = api.MapGroup("").RequireAuthorization(AccessSetup.Checkers).WithTags("knowledge").ProducesProblem(StatusCodes.Status401Unauthorized).ProducesProblem(StatusCodes.Status400BadRequest);
        open.MapGet("/rules", Rules).WithName("ListRules").WithSummary("List the rules").Produces<object>(StatusCodes.Status200OK, "application/json");
        open.MapGet("/rules/{id}", Rule).WithName("ExplainRule").WithSummary("One rule in full, with its cases").Produces<object>(StatusCodes.Status200OK, "application/json").ProducesProblem(StatusCodes.Status404NotFound);
        open.MapGet("/specifications", (CheckDesk desk) => desk.Pack.Specifications.Where(one => !one.IsUnread).Select(one => new { one.Name, one.Title, one.Edition, one.Jurisdiction })).WithName("ListSpecifications").WithSummary("List the shipped specifications");
        open.MapGet("/quantities", () => LaygateQuantities.Catalogue().All.Select(Line)).WithName("ListQuantities").WithSummary("List the quantities that rules may refer to").Produces<IReadOnlyList<QuantityLine>>();
        open.MapGet("/schemas", () => EmbeddedSchemas.Names.Select(name => $"{name}.schema.json")).WithName("ListSchemas").WithSummary("List the schemas").Produces<IReadOnlyList<string>>();
        open.MapGet("/schemas/{name}", (string name) => EmbeddedSchemas.Find(name) is { } schema
            ? TypedResults.Bytes(Encoding.UTF8.GetBytes(schema), "application/schema+json")
            : Refusals.Problem(StatusCodes.Status404NotFound, "Not found", "There is no schema of that name. /api/v1/schemas lists them."))
            .WithName("GetSchema").WithSummary("One schema").Produces<object>(StatusCodes.Status200OK, "application/schema+json").ProducesProblem(StatusCodes.Status404NotFound);
    }

    /// <summary>Finds a rule by id, letter case aside.</summary>
    public static MergedRule? Find(RuleBook book, string id) =>
        book.All.FirstOrDefault(merged => string.Equals(merged.Rule.Definition.Id, id, StringComparison.OrdinalIgnoreCase));

    private static IResult Rules(HttpContext context, CheckDesk desk, [FromQuery] string[]? rules, [FromQuery] string? family, [FromQuery] string? jurisdiction, [FromQuery] string? evidence)
    {
        _ = rules;
        var book = desk.BookOf(Bodies.Texts(context.Request, "rules"));
        using var bytes = new MemoryStream();
        RuleJson.Write(bytes, book, new RuleFilter(family, jurisdiction, evidence, InForceOnly: false));
        return TypedResults.Bytes(bytes.ToArray(), "application/json");
    }

    private static IResult Rule(HttpContext context, CheckDesk desk, string id, [FromQuery] string[]? rules)
    {
        _ = rules;
        var book = desk.BookOf(Bodies.Texts(context.Request, "rules"));
        if (Find(book, id) is not { } rule)
        {
            return Refusals.Problem(StatusCodes.Status404NotFound, "Not found", "There is no rule of that id. /api/v1/rules lists them.");
        }

        using var bytes = new MemoryStream();
        RuleJson.Write(bytes, book, rule, desk.Cases(rule.Rule.Definition.Id));
        return TypedResults.Bytes(bytes.ToArray(), "application/json");
    }

    private static QuantityLine Line(QuantityDefinition quantity) => new(
        quantity.Name, Words.Of(quantity.Element), Words.Of(quantity.Kind), quantity.MetricUnit, quantity.UsUnit, quantity.Meaning, quantity.Formula, quantity.Source, quantity.Range);
}
