using Laygate.Checking.Scaffolding;
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
        # Conditions of the site that were not named in the answers are written as `no`: read each of them once more.

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
        new Completion(tools, book, parts).Complete(draft, Turns);
        var isAnswered = answers[StartQuestions.Conditions] is not null && draft.At(["site", "conditions"]) is DraftMap;
        foreach (var blank in isAnswered ? ((DraftMap)draft.At(["site", "conditions"])!).Entries.Where(entry => entry.Key is not StartQuestions.Night).Select(entry => entry.Value).OfType<DraftText>().Where(text => text.Text is null) : [])
        {
            blank.Text = "no";
        }

        var text = new DraftWriter(tools.Reader.Schema, answers.Units).Write(draft);
        var head = (schemaPath is null ? string.Empty : $"# yaml-language-server: $schema={schemaPath}\n") + Head + (isAnswered ? ConditionsHead : string.Empty);
        return new NewFile($"{id}.yaml", head.ReplaceLineEndings("\n") + text);
    }
}
