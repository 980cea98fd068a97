using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Reading.Departures;

/// <summary>Departures of a run, or the positioned problems that keep them from being used.</summary>
/// <param name="Departures">The departures, in the order of their files; empty when there are problems.</param>
/// <param name="Problems">The problems.</param>
public sealed record DepartureSet(IReadOnlyList<Departure> Departures, IReadOnlyList<Problem> Problems);

/// <summary>Reads files of departures and checks them against the rule book of the run.</summary>
public static class DepartureFiles
{
    /// <summary>Reads all files of a run; departures are never read in part.</summary>
    /// <param name="paths">Files, in any number.</param>
    /// <param name="book">The merged rule book.</param>
    /// <param name="files">The host's files.</param>
    public static DepartureSet Load(IReadOnlyList<string> paths, RuleBook book, IRuleFiles files)
    {
        if (paths.Count == 0)
        {
            return new DepartureSet([], []);
        }

        var schema = SchemaLoader.Load(EmbeddedSchemas.Text("departures.schema.json"));
        var checks = new DepartureChecks(book);
        var departures = new List<Departure>();
        var problems = new List<Problem>();
        foreach (var path in paths.Distinct(StringComparer.Ordinal))
        {
            if (files.File(path) is not { } bytes)
            {
                problems.Add(new Problem(path, "There is no such file of departures.", "Check the name and the folder you are in.", null));
                continue;
            }

            var found = new List<ReadingProblem>();
            departures.AddRange(Read(path, bytes, schema, checks, found));
            problems.AddRange(ShownProblems.Of(path, found));
        }

        return problems.Count > 0 ? new DepartureSet([], problems) : new DepartureSet(departures, []);
    }

    private static List<Departure> Read(string path, byte[] bytes, LoadedSchema schema, DepartureChecks checks, List<ReadingProblem> problems)
    {
        var read = YamlReader.Read(bytes, "list of departures");
        problems.AddRange(read.Problems);
        if (!read.IsSound)
        {
            return [];
        }

        var departures = new List<Departure>();
        foreach (var document in read.Documents)
        {
            var shape = SchemaChecker.Check(document, schema);
            problems.AddRange(shape);
            if (shape.Count == 0)
            {
                departures.AddRange(((MapToken)document.Root).Maps("departures").Select(map => One(map, path, checks, problems)).OfType<Departure>());
            }
        }

        return departures;
    }

    private static Departure? One(MapToken map, string path, DepartureChecks checks, List<ReadingProblem> problems)
    {
        var before = problems.Count;
        var approved = map.Date("approved_on", problems);
        var expires = map.Date("expires_on", problems);
        var rule = checks.Check(map, approved, expires, problems);
        var accepted = rule is null ? null : DepartureChecks.Accepted(map, rule, problems);
        return problems.Count > before || rule is null ? null : new Departure
        {
            Id = map.Needed("id"),
            Rule = map.Needed("rule"),
            Address = map.Needed("address"),
            Plan = map.Text("plan"),
            Reason = map.Needed("reason"),
            CompensatingMeasure = map.Needed("compensating_measure"),
            AskedBy = map.Needed("asked_by"),
            ApprovedBy = map.Needed("approved_by"),
            ApprovedOn = approved!.Value,
            ExpiresOn = expires!.Value,
            Accepted = accepted,
            Reference = map.Text("reference"),
            File = path,
        };
    }
}
