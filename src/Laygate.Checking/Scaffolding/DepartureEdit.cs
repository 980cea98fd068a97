using System.Globalization;
using System.Text;
using Laygate.Engineering.Quantities;
using Laygate.Reading.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Scaffolding;

/// <summary>Adds a departure with blanks to a file of the approving side. Until they are filled in, a check refuses the file.</summary>
public static class DepartureEdit
{
    private const string Key = "departures";

    /// <summary>Adds a departure.</summary>
    /// <param name="book">The rule book.</param>
    /// <param name="file">The file.</param>
    /// <param name="existing">Its bytes; null when it is new.</param>
    /// <param name="rule">Id of the rule.</param>
    /// <param name="address">Address of the plan element.</param>
    public static EditedFile Add(RuleBook book, string file, byte[]? existing, string rule, string address)
    {
        var found = book.All.FirstOrDefault(merged => string.Equals(merged.Rule.Definition.Id, rule, StringComparison.Ordinal));
        if (found is null)
        {
            var near = NearestNames.Of(rule, book.All.Select(merged => merged.Rule.Definition.Id));
            return Refused(file, $"There is no rule `{rule}`.", near.Count > 0 ? $"Did you mean `{near[0]}`?" : "`laygate rules` lists them.");
        }

        if (found.Rule.Definition.LifeCritical)
        {
            return Refused(file, $"`{rule}` guards lives (severity A): nobody can permit a departure from it.", "Change the plan.");
        }

        var text = existing is null ? Start : Encoding.UTF8.GetString(existing is [0xEF, 0xBB, 0xBF, ..] ? existing.AsSpan(3) : existing);
        var read = YamlReader.Read(Encoding.UTF8.GetBytes(text), "list of departures");
        if (!read.IsSound)
        {
            return new EditedFile(null, string.Empty, ShownProblems.Of(file, read.Problems));
        }

        var root = read.Documents is [{ Root: MapToken map }] ? map : null;
        var id = NextId(root);
        var changed = root is null ? null : ListInsertion.Add(text, root, Key, Entry(id, found.Rule, address), asLines: true);
        return changed is null
            ? Refused(file, "The file is written in a form into which no entry can be inserted safely.", "Write `departures:` as a list with one entry per dash.")
            : new EditedFile(changed, id, []);
    }

    private const string Start = """
        # Departures that the approving side permits: one rule, one place, one end. Findings that they cover no longer count; all are shown.
        # The file belongs to the approving side. Use it with: laygate check PLAN --departures FILE
        departures: []

        """;

    private static NewEntry Entry(string id, Rules.Binding.CheckedRule rule, string address)
    {
        var values = new List<(string, string)>
        {
            ("id", id),
            ("rule", rule.Definition.Id),
            ("address", address),
            ("reason", $"{Blanks.Mark} why the plan may depart"),
            ("compensating_measure", $"{Blanks.Mark} what is done instead"),
            ("asked_by", $"{Blanks.Mark} who asks"),
            ("approved_by", $"{Blanks.Mark} who permits it"),
            ("approved_on", $"{Blanks.Mark} the day of the permission"),
            ("expires_on", $"{Blanks.Mark} the last day"),
        };
        if (rule.Quantity.Kind != ValueKind.Presence)
        {
            values.Add(("accepted", $"{Blanks.Mark} the value that is accepted{(rule.Quantity.MetricUnit.Length > 0 ? $" in {rule.Quantity.MetricUnit}" : string.Empty)}"));
        }

        return new NewEntry([.. values, ("reference", $"{Blanks.Mark} the letter or minute that records it")]);
    }

    private static string NextId(MapToken? root)
    {
        var taken = (root?.Maps(Key) ?? []).Select(map => map.Needed("id")).ToHashSet(StringComparer.Ordinal);
        var number = 1;
        while (taken.Contains(Id(number)))
        {
            number++;
        }

        return Id(number);
    }

    private static string Id(int number) => string.Create(CultureInfo.InvariantCulture, $"dep-{number:000}");

    private static EditedFile Refused(string file, string message, string hint) => new(null, string.Empty, [new Problem(file, message, hint, null)]);
}
