using Laygate.Reading.Departures;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Reading.Baselines;

/// <summary>Reads files of known findings.</summary>
public static class BaselineFile
{
    /// <summary>Reads a baseline.</summary>
    /// <param name="file">Name as it is to be shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="book">The rule book of the run; an entry whose rule or value it does not know covers nothing.</param>
    public static (Baseline? Baseline, IReadOnlyList<Problem> Problems) Read(string file, byte[] bytes, RuleBook book)
    {
        var read = YamlReader.Read(bytes, "baseline");
        var problems = read.Problems.ToList();
        if (read.IsSound)
        {
            problems.AddRange(SchemaChecker.Check(read.Documents[0], SchemaLoader.Load(EmbeddedSchemas.Text("baseline.schema.json"))));
        }

        if (problems.Count == 0)
        {
            var map = (MapToken)read.Documents[0].Root;
            var written = map.Date("written", problems);
            if (written is { } day)
            {
                return (new Baseline(file, day, Entries(map, book)), []);
            }
        }

        return (null, ShownProblems.Of(file, problems));
    }

    private static List<BaselineEntry> Entries(MapToken map, RuleBook book)
    {
        var rules = book.All.ToDictionary(merged => merged.Rule.Definition.Id, merged => merged.Rule, StringComparer.Ordinal);
        return [.. map.Maps("findings").Select(entry => new BaselineEntry(
            entry.Needed("plan"),
            entry.Needed("id"),
            entry.Needed("rule"),
            entry.Needed("address"),
            entry.NeededWord<Status>("status"),
            rules.TryGetValue(entry.Needed("rule"), out var rule) && entry.Text("value") is not null ? DepartureChecks.Accepted(entry, rule, [], "value") : null))];
    }
}
