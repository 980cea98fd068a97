using System.Globalization;
using Laygate.Checking.Starting;
using Laygate.Cli.Output;
using Laygate.Reporting.Text;

namespace Laygate.Cli.Verbs;

/// <summary>Asks in a terminal what options have not answered. Questions go to the messages, so that standard output holds the result alone.</summary>
internal sealed class Asking(Streams streams, FirmParts parts)
{
    /// <summary>Asks every question that is open and due at the stage that was answered.</summary>
    /// <param name="given">The answers; those asked for are added.</param>
    /// <param name="questions">The questions in order.</param>
    public void Complete(Dictionary<string, string> given, IReadOnlyList<StartQuestion> questions)
    {
        using var input = new StreamReader(streams.Input(), Streams.Utf8);
        streams.Error.WriteLine("Enter alone leaves a question open: it becomes a blank of the plan.");
        foreach (var question in questions)
        {
            if (given.ContainsKey(question.Id) || question.FromStage > new StartAnswers(given).Stage || IsKnown(question, given))
            {
                continue;
            }

            if (!Ask(question, input, out var answer))
            {
                return;
            }

            if (answer.Length > 0)
            {
                given[question.Id] = answer;
            }
        }
    }

    /// <summary>Whether other answers say it already: the times of a shift say whether it is night.</summary>
    public static bool IsKnown(StartQuestion question, Dictionary<string, string> given) =>
        question.Id is StartQuestions.Night && given.ContainsKey(StartQuestions.Start) && given.ContainsKey(StartQuestions.End);

    private bool Ask(StartQuestion question, StreamReader input, out string answer)
    {
        Show(question);
        while (true)
        {
            streams.Error.Write("> ");
            if (input.ReadLine() is not { } line)
            {
                streams.Error.WriteLine();
                answer = string.Empty;
                return false;
            }

            answer = Chosen(question, line.Trim());
            if (answer.Length == 0 || question.Problem(answer) is not { } problem)
            {
                return true;
            }

            streams.Error.WriteLine(PlainText.Show(problem));
        }
    }

    private void Show(StartQuestion question)
    {
        streams.Error.WriteLine();
        streams.Error.WriteLine(question.Text);
        for (var index = 0; index < question.Choices.Count; index++)
        {
            var (word, meaning) = question.Choices[index];
            streams.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {index + 1,2}  {word.PadRight(question.Choices.Max(choice => choice.Word.Length))}  {meaning}").TrimEnd());
        }

        if (question.Choices.Count == 0)
        {
            streams.Error.WriteLine($"  {question.Form}");
        }
        else
        {
            streams.Error.WriteLine(question.IsList ? "  words or numbers, divided by commas" : "  the word or its number");
        }

        if (question.Parts is { } list && parts.Ids(list) is { Count: > 0 } ids)
        {
            streams.Error.WriteLine($"  in the files: {PlainText.Show(string.Join(", ", ids))}");
        }
    }

    private static string Chosen(StartQuestion question, string line) => question.Choices.Count == 0 ? line
        : string.Join(", ", line.Split(',', StringSplitOptions.TrimEntries).Select(one =>
            int.TryParse(one, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= question.Choices.Count ? question.Choices[number - 1].Word : one));
}
