using System.Globalization;
using Laygate.Checking.Starting;
using Laygate.Cli.Arguments;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Cli.Files;

/// <summary>Answers with which a plan begins, from a file in YAML: the id of each question with a text or a list.</summary>
internal static class AnswersFile
{
    private const string Uses = "uses";

    /// <summary>Reads the file.</summary>
    /// <param name="file">Its path; null: no file.</param>
    /// <param name="questions">The questions.</param>
    /// <returns>The answers by question, and the files of parts, from the current folder.</returns>
    /// <exception cref="ArgumentProblem">It cannot be read, or an answer in it cannot be used.</exception>
    public static (Dictionary<string, string> Answers, IReadOnlyList<string> Uses) Read(string? file, IReadOnlyList<StartQuestion> questions)
    {
        var answers = new Dictionary<string, string>(StringComparer.Ordinal);
        if (file is null)
        {
            return (answers, []);
        }

        IReadOnlyList<string> uses = [];
        foreach (var (key, value) in Map(file).Entries)
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"{file}:{key.Span.Line}: `{key.Text}`");
            IReadOnlyList<string> texts = value switch
            {
                ScalarToken scalar => [scalar.Text],
                ListToken list when list.Items.All(item => item is ScalarToken) => [.. list.Items.Select(item => ((ScalarToken)item).Text)],
                _ => throw new ArgumentProblem($"{place} needs a text or a list of texts."),
            };
            if (key.Text is Uses)
            {
                var folder = Path.GetDirectoryName(file) ?? string.Empty;
                uses = [.. texts.Select(text => Path.Combine(folder, text))];
                continue;
            }

            var question = questions.FirstOrDefault(one => string.Equals(one.Id, key.Text, StringComparison.Ordinal))
                ?? throw new ArgumentProblem($"{place} is no question.{(NearestNames.Of(key.Text, questions.Select(one => one.Id)) is [var near, ..] ? $" Did you mean `{near}`?" : string.Empty)}");
            answers[question.Id] = Accepted(place, question, string.Join(", ", texts));
        }

        return (answers, uses);
    }

    /// <summary>An answer that its question accepts.</summary>
    /// <param name="place">Where it stands, for the message.</param>
    /// <param name="question">The question.</param>
    /// <param name="answer">The answer.</param>
    /// <exception cref="ArgumentProblem">It does not.</exception>
    public static string Accepted(string place, StartQuestion question, string answer) =>
        question.Problem(answer.Trim()) is { } problem ? throw new ArgumentProblem($"{place}: {problem}") : answer.Trim();

    private static MapToken Map(string file)
    {
        var read = YamlReader.Read(PlanBytes.Needed(file), "file of answers");
        var problem = read.Problems.Count > 0 ? read.Problems[0] : null;
        return problem is null && read.Documents[0].AsMap("file of answers", "kind", out problem) is { } map ? map
            : throw new ArgumentProblem(string.Create(CultureInfo.InvariantCulture, $"{file}:{problem!.Position.Line}: {problem.Message}"));
    }
}
