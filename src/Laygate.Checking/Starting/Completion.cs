using System.Text;
using Laygate.Engineering.Assumptions;
using Laygate.Engineering.Quantities;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Evaluation;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Starting;

/// <summary>
/// Adds to a draft what its stage asks for. No list says what that is: the blanks are filled with examples, the plan is judged, and what findings
/// miss gets a place, until nothing is missing.
/// </summary>
internal sealed class Completion(PlanTools tools, RuleBook book, FirmParts parts)
{
    /// <summary>Rounds after which it ends: each adds at least one key, and what asks for what is a few steps deep.</summary>
    private const int MostRounds = 20;

    private readonly DraftPlaces places = new(tools.Reader.Schema);
    private readonly DraftEntries entries = new(tools.Reader.Schema, parts);
    private readonly AssumptionSet assumptions = new([.. LaygateAssumptions.All, .. book.Assumptions]);
    private readonly PartTools partTools = new();

    /// <summary>Adds what is missing, whichever of the words of its blanks are taken.</summary>
    /// <param name="plan">The draft.</param>
    /// <param name="turns">How many of the words of each blank are tried.</param>
    /// <param name="only">The list to which entries are added, and nothing else; null: everything.</param>
    public void Complete(DraftMap plan, int turns, string? only = null)
    {
        var there = only is not null && plan[only] is DraftList list ? list.EntryNames.ToHashSet(StringComparer.Ordinal) : [];
        bool IsWanted(InputReference at) => only is null || (plan[only] is DraftList now && at.Address.Split(':') is [_, var id] && now.IndexOf(id) >= 0 && !there.Contains(id) && places.Way(at) is [var first, ..] && string.Equals(first, only, StringComparison.Ordinal));
        for (var turn = 0; turn < turns; turn++)
        {
            for (var round = 0; round < MostRounds; round++)
            {
                var judged = Judge(plan, turn);
                var added = judged.Missing.Count(finding => Add(plan, finding, judged, only, IsWanted));
                DraftReferences.Fill(plan);
                if (added == 0)
                {
                    break;
                }
            }
        }
    }

    /// <summary>A draft whose blanks are filled with examples, as it is judged.</summary>
    /// <param name="Context">Its quantities.</param>
    /// <param name="Missing">Findings of its stage that miss something.</param>
    /// <param name="Turn">Which of the words of each blank was taken; the usual ones at 0.</param>
    internal sealed record Judged(QuantityContext Context, IReadOnlyList<Finding> Missing, int Turn);

    /// <summary>What findings of the stage miss when every blank is filled with an example.</summary>
    public Judged Judge(DraftMap plan, int turn)
    {
        var examples = new ExampleValues(plan, turn);
        var mapped = Mapped(new DraftWriter(tools.Reader.Schema, UnitSystem.Metric).Write(plan, examples.Of));
        var context = new QuantityContext(mapped, tools.Catalogue, assumptions, seed: 1) { IsQuick = true };
        var report = Evaluator.Evaluate(book, context, new EvaluationSettings { File = parts.Plan, CheckedOn = mapped.Shift?.Date ?? default });
        var due = book.InForce.Where(rule => rule.Definition.FromStage <= report.Stage).Select(rule => rule.Definition.Id).ToHashSet(StringComparer.Ordinal);
        return new Judged(context, [.. report.Findings.Where(finding => finding.Missing.Count > 0 && finding.Outcome is Outcome.NotAssessed or Outcome.Open or Outcome.Missed && due.Contains(finding.Rule))], turn);
    }

    private Plan Mapped(string text)
    {
        var root = (MapToken)YamlReader.Read(Encoding.UTF8.GetBytes(text)).Documents[0].Root;
        var (whole, _, problems) = PlanComposer.Compose(root, parts.Plan, parts.Files, partTools);
        var mapping = PlanMapper.Map(new YamlDocument(whole, 1));
        return mapping.Plan ?? throw new InvalidOperationException($"A draft makes no plan: {string.Join(" ", problems.Concat(mapping.Problems).Select(problem => problem.Message))}\n{text}");
    }

    private bool Add(DraftMap plan, Finding finding, Judged judged, string? only, Func<InputReference, bool> isWanted)
    {
        var before = Blanks(plan).ToHashSet();
        var added = false;
        foreach (var note in finding.Notes.Where(note => note.Id is NoteIds.EntryMissing && (only is null || string.Equals(Argument(note, "list"), only, StringComparison.Ordinal))))
        {
            added |= entries.Add(plan, ListOf(finding, Argument(note, "list")), Argument(note, "kind"), Argument(note, "fields"), finding.Address);
        }

        foreach (var at in finding.Missing.Where(isWanted))
        {
            added |= Feeder(plan, at) || places.Ensure(plan, at);
        }

        if (added && OnlyWhere(plan, finding, judged) is { } where)
        {
            foreach (var blank in Blanks(plan).Where(blank => !before.Contains(blank) && !ReferenceEquals(blank, where.Asked)))
            {
                blank.OnlyWhere = where.Words;
            }
        }

        return added;
    }

    // The only feeder that the firm has is the one that the job asks for.
    private bool Feeder(DraftMap plan, InputReference at)
    {
        if (places.Way(at) is not ["supply", "feeder", ..] || parts.Only("feeders") is not { } only || plan.At(["supply", "feeder"]) is not null)
        {
            return false;
        }

        plan.Group("supply").Set("feeder", new DraftText(only));
        return true;
    }

    // The conditions of the rule that asks: where one reads a blank of the draft, what is filled in there decides whether the rest is wanted.
    private (string Words, DraftText? Asked)? OnlyWhere(DraftMap plan, Finding finding, Judged judged)
    {
        if (judged.Context.Elements.Find(finding.Address) is not { } element || book.InForce.FirstOrDefault(rule => string.Equals(rule.Definition.Id, finding.Rule, StringComparison.Ordinal)) is not { } rule)
        {
            return null;
        }

        foreach (var answer in rule.When.Select(match => judged.Context.Get(match.Quantity.Name, element)))
        {
            if (answer.Input is { } input && places.Way(input) is var way && plan.At(way) is DraftText { Text: null } asked)
            {
                return answer.Value is FlagValue flag && places.IsFlag(way) ? ($"only where {input.Key} is {(flag.Yes ? "yes" : "no")}", asked)
                    : judged.Turn > 0 ? ($"where {input.Key} makes it apply", asked) : null;
            }
        }

        return judged.Turn > 0 ? ("where it applies", null) : null;
    }

    private static IEnumerable<DraftText> Blanks(DraftNode node) => node switch
    {
        DraftText { Text: null } blank => [blank],
        DraftMap map => map.Entries.SelectMany(entry => Blanks(entry.Value)),
        DraftList list => list.Items.SelectMany(Blanks),
        _ => [],
    };

    // The remark names the list within its element.
    private string ListOf(Finding finding, string list) => finding.Input is { } input && string.Equals(input.Key, list, StringComparison.Ordinal) ? string.Join('.', places.Way(input)) : list;

    private static string Argument(Note note, string name) => note.Arguments.First(argument => string.Equals(argument.Name, name, StringComparison.Ordinal)).Text ?? string.Empty;
}
