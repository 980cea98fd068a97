using Laygate.Checking.Scaffolding;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Merging;

namespace Laygate.Checking.Starting;

/// <summary>Begins plans.</summary>
public static class PlanStarter
{
    /// <summary>How many of the words of each blank are tried; lists of words on which keys depend have few that differ.</summary>
    internal const int Turns = 3;

    private const string Head = """
        # Fill in what is marked TO FILL IN; the remark beside it says what belongs there. Remove a line that nobody can know yet.
        # What is left out is unknown; it is never taken as "no" or as zero. `laygate explain KEY` says more of a key.

        """;

    private const string ConditionsHead = """
        # Conditions of the site that were not named in the answers are written as `no`: read each of them once more. One that follows from the plan itself is left out; one that depends on what you fill in is a blank.

        """;

    /// <summary>A plan with all keys that its stage asks for.</summary>
    /// <param name="tools">The tools of checks.</param>
    /// <param name="book">The rules by which the plan will be judged.</param>
    /// <param name="id">Id of the plan.</param>
    /// <param name="answers">What was answered.</param>
    /// <param name="parts">The firm's parts.</param>
    /// <param name="schemaPath">Path from the plan to the schema for editors; null where there is none.</param>
    public static NewFile Make(PlanTools tools, RuleBook book, string id, StartAnswers answers, FirmParts parts, string? schemaPath = null)
    {
        var draft = new JobSkeleton(answers, parts).Make(id);
        var completion = new Completion(tools, book, parts);
        completion.Complete(draft, Turns);
        var isAnswered = answers[StartQuestions.Conditions] is not null && draft.At(["site", "conditions"]) is DraftMap;
        if (isAnswered)
        {
            // What is left out holds, and what it asks for gets its place, too.
            Deny(draft, completion);
            completion.Complete(draft, turns: 1);
            Deny(draft, completion);
        }

        var text = new DraftWriter(tools.Reader.Schema, answers.Units).Write(draft);
        var head = (schemaPath is null ? string.Empty : $"# yaml-language-server: $schema={schemaPath}\n") + Head + (isAnswered ? ConditionsHead : string.Empty);
        return new NewFile($"{id}.yaml", head.ReplaceLineEndings("\n") + text);
    }

    // What nobody named does not hold; but what follows from the rest of the plan, however its blanks are filled in, is left out, and what depends on them stays a blank.
    private static void Deny(DraftMap draft, Completion completion)
    {
        var conditions = (DraftMap)draft.At(["site", "conditions"])!;
        List<QuantityContext> turns = [.. Enumerable.Range(0, Turns).Select(turn => completion.Judge(draft, turn).Context)];
        foreach (var (key, value) in conditions.Entries.ToList())
        {
            if (value is not DraftText { Text: null } blank || key is StartQuestions.Night)
            {
                continue;
            }

            var shown = turns.Count(context => context.Get($"site.{key}", context.Elements.Find("site")!).Value is FlagValue { Yes: true });
            if (shown == Turns)
            {
                conditions.Remove(key);
            }
            else if (shown == 0)
            {
                blank.Text = "no";
            }
        }
    }
}
