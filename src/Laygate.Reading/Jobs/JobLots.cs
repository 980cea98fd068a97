using System.Globalization;
using System.Text.Json.Nodes;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Jobs;

/// <summary>The lots of acceptance of a job: their keys, and what is read from them.</summary>
internal sealed class JobLots
{
    private readonly List<ReadingProblem> problems = [];

    private JobLots()
    {
    }

    /// <summary>Reads the lots of a job that its schema accepts.</summary>
    /// <param name="job">The job.</param>
    /// <param name="whole">What its shifts have in common.</param>
    /// <param name="shifts">Ids of its shifts in their order.</param>
    /// <returns>The lots; where something is wrong with one, what it is.</returns>
    public static (IReadOnlyList<Lot> Lots, IReadOnlyList<ReadingProblem> Problems) Read(MapToken job, Plan whole, IReadOnlyList<string> shifts)
    {
        var (reader, context) = (new JobLots(), new MappingContext());
        var lots = new Fields(job, string.Empty, context).List(JobKeys.Lots, Lot);
        foreach (var (lot, token) in lots.Zip((job[JobKeys.Lots] as ListToken)?.Items.OfType<MapToken>() ?? []))
        {
            reader.Names(token, "course", lot.Course, [.. whole.Courses.Select(course => course.Id)], "course among the `courses` of the job");
            reader.Names(token, "test", lot.Test, [.. whole.Tests.Select(test => test.Id)], "test among the `tests` of the job");
            reader.Names(token, "begins_in", lot.BeginsIn, shifts, "shift in the job");
            reader.Names(token, "ends_in", lot.EndsIn, shifts, "shift in the job");
            reader.Sizes(token, lot);
        }

        reader.Twice(job, lots);
        return (lots, [.. context.Problems.Concat(reader.problems).OrderBy(problem => problem.Position)]);
    }

    /// <summary>The schema of the list.</summary>
    public static JsonObject Schema() => new()
    {
        ["description"] = "Lots of acceptance, where a lot goes on from one shift into the next: in which shift each begins, and when it ends.",
        ["type"] = "array",
        ["minItems"] = 1,
        ["maxItems"] = 200,
        ["items"] = new JsonObject
        {
            ["description"] = "A lot: so much of one course as is accepted together.",
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["required"] = new JsonArray("id", "course", "begins_in"),
            ["properties"] = new JsonObject
            {
                ["id"] = Named("id", "Id of the lot.", "upper-1"),
                ["course"] = Named("id", "Id of its course.", "upper"),
                ["test"] = Named("id", "Id of the test for which the course is divided so; left out where it is for all of them.", "cores"),
                ["begins_in"] = Named("id", "Id of the shift in which it begins.", "night-1"),
                ["ends_in"] = Named("id", "Id of the shift with which it ends at the latest; left out where it ends when it is full.", "night-2"),
                ["size"] = Amount("Mass or length at which the lot is full.", "1500 t", "900 m"),
                ["sublot"] = Amount("Mass or length of the parts from each of which one sample is taken.", "300 t", "150 m"),
                ["tests"] = new JsonObject { ["description"] = "Tests that the lot needs, one from each sublot.", ["type"] = "integer", ["minimum"] = 1, ["maximum"] = 1000, ["examples"] = new JsonArray(5) },
            },
            ["examples"] = new JsonArray(new JsonObject { ["id"] = "upper-1", ["course"] = "upper", ["begins_in"] = "night-1", ["size"] = "1500 t", ["sublot"] = "300 t", ["tests"] = 5 }),
        },
        ["examples"] = new JsonArray(new JsonArray(new JsonObject { ["id"] = "upper-1", ["course"] = "upper", ["begins_in"] = "night-1", ["size"] = "1500 t" })),
    };

    private static JsonObject Named(string definition, string description, string example) => new()
    {
        ["description"] = description,
        ["allOf"] = new JsonArray(new JsonObject { ["$ref"] = $"#/definitions/{definition}" }),
        ["examples"] = new JsonArray(example),
    };

    private static JsonObject Amount(string description, params string[] examples) => new()
    {
        ["description"] = description,
        ["anyOf"] = new JsonArray(new JsonObject { ["$ref"] = "#/definitions/mass" }, new JsonObject { ["$ref"] = "#/definitions/length" }),
        ["examples"] = new JsonArray([.. examples.Select(example => (JsonNode)example)]),
    };

    private static Lot Lot(Fields keys) => new()
    {
        Id = keys.RequiredId("id"),
        Course = keys.RequiredId("course"),
        Test = keys.Id("test"),
        BeginsIn = keys.RequiredId("begins_in"),
        EndsIn = keys.Id("ends_in"),
        Size = keys.Either<Mass, Length>("size"),
        Sublot = keys.Either<Mass, Length>("sublot"),
        Tests = keys.Count("tests"),
    };

    private void Names(MapToken lot, string key, string? id, IReadOnlyList<string> known, string what)
    {
        if (id is not null && !known.Contains(id, StringComparer.Ordinal))
        {
            var near = NearestNames.Of(id, known);
            Wrong(lot[key]!, $"There is no {what} with the id {TokenNames.Quote(id)}.", near.Count > 0 ? NearestNames.Asked(near) : known.Count > 0 ? $"Known: {string.Join(", ", known.Take(20).Select(name => $"`{name}`"))}." : "State it first.");
        }
    }

    private void Sizes(MapToken lot, Lot read)
    {
        foreach (var (key, measure) in new[] { ("size", read.Size), ("sublot", read.Sublot) })
        {
            if (measure is { Si: <= 0 })
            {
                Wrong(lot[key]!, $"`{key}` of a lot is more than nothing.", "Write for example `1500 t` or `900 m`.");
            }
        }

        if (read is { Size: { } size, Sublot: { } part } && size.Unit.Dimension != part.Unit.Dimension)
        {
            Wrong(lot["sublot"]!, "`size` and `sublot` of a lot are both masses or both lengths.", "Write both in tonnes, or both in metres.");
        }
    }

    private void Twice(MapToken job, IReadOnlyList<Lot> lots)
    {
        var tokens = (job[JobKeys.Lots] as ListToken)?.Items.OfType<MapToken>().ToList() ?? [];
        foreach (var same in tokens.Zip(lots).GroupBy(one => one.Second.Id, StringComparer.Ordinal).Where(same => same.Count() > 1))
        {
            Wrong(same.Last().First["id"]!, $"There is another lot {TokenNames.Quote(same.Key)} in line {same.First().First["id"]!.Span.Line.ToString(CultureInfo.InvariantCulture)}.", "Give one of the two another id.");
        }
    }

    private void Wrong(YamlToken at, string message, string hint) => problems.Add(new ReadingProblem(message, at.Span, hint));
}
