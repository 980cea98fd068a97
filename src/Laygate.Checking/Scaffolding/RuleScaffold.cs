using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;

namespace Laygate.Checking.Scaffolding;

/// <summary>Makes the folder of a rule: <c>rule.yaml</c> and <c>cases.yaml</c>, complete but for what only its author knows.</summary>
public static class RuleScaffold
{
    /// <summary>First number of rules that do not belong to the shipped book, so that the two never meet.</summary>
    public const int FirstOwnNumber = 901;

    /// <summary>Makes the files.</summary>
    /// <param name="folder">Folder of the rule: family and name.</param>
    /// <param name="id">Id.</param>
    /// <param name="quantity">Quantity that it checks.</param>
    /// <param name="source">Id of the publication that its limit stands in.</param>
    /// <returns>The files; or null and why there are none.</returns>
    public static (IReadOnlyList<NewFile>? Files, string? Problem) Make(string folder, string id, string quantity, string source)
    {
        var catalogue = LaygateQuantities.Catalogue();
        if (catalogue.Find(quantity) is not { } known)
        {
            var near = NearestNames.Of(quantity, catalogue.All.Select(one => one.Name)) is [var meant, ..] ? $" Did you mean {meant}?" : string.Empty;
            return (null, $"There is no quantity `{quantity}`.{near}");
        }

        return (
        [
            new NewFile($"{folder}/rule.yaml", Rule(id, known, source).ReplaceLineEndings("\n")),
            new NewFile($"{folder}/cases.yaml", Cases(known).ReplaceLineEndings("\n")),
        ], null);
    }

    /// <summary>The next free id of a family.</summary>
    /// <param name="prefix">Prefix of the family.</param>
    /// <param name="folder">Folder with the rules among which it is to be new; ids of rules that are gone count as taken.</param>
    /// <param name="first">First number.</param>
    public static string NextId(string prefix, IRuleFolder folder, int first)
    {
        var taken = folder.Files.Where(file => file.EndsWith("rule.yaml", StringComparison.Ordinal) || string.Equals(file, "retired.yaml", StringComparison.Ordinal))
            .SelectMany(file => IdsIn(YamlReader.Read(folder.Read(file), "rule"))).ToHashSet(StringComparer.Ordinal);
        var number = first;
        while (taken.Contains(Id(prefix, number)))
        {
            number++;
        }

        return Id(prefix, number);
    }

    private static string Id(string prefix, int number) => string.Create(CultureInfo.InvariantCulture, $"{prefix}-{number:000}");

    private static IEnumerable<string> IdsIn(ReadingResult read) => read.Documents.SelectMany(document => document.Root switch
    {
        MapToken rule => rule.Text("id") is { } id ? [id] : rule.Maps("retired").Select(entry => entry.Needed("id")),
        ListToken list => list.Items.OfType<MapToken>().Select(entry => entry.Needed("id")),
        _ => [],
    });

    private static string Rule(string id, QuantityDefinition quantity, string source) => $$"""
        # The folder is named after the bad situation, never after its remedy. rules/README.md explains every key.
        id: {{id}}
        title: {{Blanks.Mark}} the bad situation in one line
        why: {{Blanks.Mark}} what goes wrong on site
        remedy: {{Blanks.Mark}} what to change
        local: {{Blanks.Mark}} what the local code usually governs here and whom to ask
        applies_to: {{Words.Of(quantity.Element)}}
        check: {{Words.Of(CheckOf(quantity))}}
        quantity: {{quantity.Name}}
        from_stage: submission
        life: { state: on-trial, since: 0.1.0 }
        bounds:
          - strength: required
            basis: requirement
        {{Limit(quantity)}}    source: { id: {{source}}, clause: {{Blanks.Mark}} the clause, evidence: read }

        """;

    private static string Limit(QuantityDefinition quantity) => quantity.Kind switch
    {
        ValueKind.Presence when quantity.EntryNeeds.Count > 0 => $"    entries:\n      - {{ any_of: [{Blanks.Mark} the kind that must be there] }}\n",
        ValueKind.Presence => string.Empty,
        ValueKind.Moment => $"    quantity: {Blanks.Mark} the other moment\n",
        ValueKind.Number => $"    at_least: {Blanks.Mark} the limit{(quantity.MetricUnit.Length > 0 ? $" in {quantity.MetricUnit}" : string.Empty)}\n",
        ValueKind.Flag => "    words: [yes]\n",
        _ => $"    words: [{Blanks.Mark} the words that are right]\n",
    };

    private static CheckKind CheckOf(QuantityDefinition quantity) => quantity.Kind switch
    {
        ValueKind.Number => CheckKind.AtLeast,
        ValueKind.Presence => CheckKind.Present,
        ValueKind.Moment => CheckKind.NotBefore,
        _ => CheckKind.Agrees,
    };

    // A flag or a presence has two values and leaves nothing to fill in; a presence is never unknown.
    private static string Cases(QuantityDefinition quantity)
    {
        var (plan, address) = BaseElements.Of(quantity.Element);
        var (right, wrong) = quantity.Kind switch
        {
            ValueKind.Presence => ("stated", "absent"),
            ValueKind.Flag => ("yes", "no"),
            _ => ($"{Blanks.Mark} a value just inside the limit", $"{Blanks.Mark} a value just outside it"),
        };
        var unknown = quantity.Kind == ValueKind.Presence ? string.Empty : $$"""
              - case: Nothing is said about it
                give: { "{{address}}": { {{quantity.Name}}: not-stated } }
                finding: { address: "{{address}}", outcome: not-assessed, status: warn }

            """;
        return $$"""
            # Each case changes a base plan a little and names the finding it must give: what meets the limit, what misses it,
            # what cannot be judged and, where the rule has a condition, where it does not apply.
            base: {{plan}}
            cases:
              - case: {{Blanks.Mark}} what meets the limit
                give: { "{{address}}": { {{quantity.Name}}: {{right}} } }
                finding: { address: "{{address}}", outcome: met, status: pass }
              - case: {{Blanks.Mark}} what misses it
                give: { "{{address}}": { {{quantity.Name}}: {{wrong}} } }
                finding: { address: "{{address}}", outcome: missed, status: fail }

            """ + unknown;
    }
}

/// <summary>An element of each kind in the shipped base plans, for the cases of new rules.</summary>
public static class BaseElements
{
    /// <summary>Base plan and address of an element of a kind.</summary>
    public static (string Plan, string Address) Of(ElementKind kind) => kind switch
    {
        ElementKind.Job => ("job", "job"),
        ElementKind.JobShift => ("job", "job-shift:night-1"),
        ElementKind.Interval => ("job", "interval:night-1+night-2"),
        ElementKind.JobCourse => ("job", "job-course:binder"),
        ElementKind.JobRun => ("job", "job-run:surface-left"),
        ElementKind.JobPlant => ("job", "job-plant:hill"),
        ElementKind.JobJoint => ("job", "job-joint:middle"),
        ElementKind.JobLot => ("job", "job-lot:surface-lot"),
        _ when PlanElements.IsSingle(kind) => ("single", Words.Of(kind)),
        ElementKind.Pair => ("pair", "pair:lower+upper"),
        ElementKind.Feeder => ("pair", "feeder:feeder"),
        ElementKind.Value => ("single", "course:wearing/thickness"),
        _ => ("single", $"{Words.Of(kind)}:{Id(kind)}"),
    };

    private static string Id(ElementKind kind) => kind switch
    {
        ElementKind.Mix => "ac11",
        ElementKind.Course => "wearing",
        ElementKind.Run => "north",
        ElementKind.Plant => "quarry",
        ElementKind.Trucks => "tippers",
        ElementKind.Paver => "p1",
        ElementKind.Phase => "main",
        ElementKind.Roller => "r1",
        ElementKind.BondCoat => "tack",
        ElementKind.Joint => "centre",
        ElementKind.Test => "density",
        ElementKind.HoldPoint => "base-ready",
        ElementKind.Contingency => "rain",
        ElementKind.OverheadLine => "line-north",
        ElementKind.Light => "mat",
        ElementKind.Exposure => "screed",
        ElementKind.Condition => "night",
        _ => "m1",
    };
}
