using Laygate.Checking;
using Laygate.Checking.Starting;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;

namespace Laygate.Cli.Verbs;

/// <summary>A plan that is to be begun.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Folder">Folder to write to.</param>
/// <param name="Answers">Answers given as options, by the id of their question.</param>
/// <param name="AnswersFile">File with further answers; null when there is none.</param>
/// <param name="Uses">Files of parts, from the current folder.</param>
/// <param name="Rules">Specifications in force.</param>
internal sealed record NewPlanRequest(string Id, string Folder, IReadOnlyDictionary<string, string> Answers, string? AnswersFile, IReadOnlyList<string> Uses, IReadOnlyList<string> Rules);

/// <summary>Begins a plan: takes answers from options and a file, asks for the rest in a terminal, and writes it.</summary>
internal sealed class NewPlan(Host host, NewPlanRequest request)
{
    private readonly PlanTools tools = new();

    /// <summary>Begins it.</summary>
    /// <returns>The exit code.</returns>
    public int Run()
    {
        var id = NewThings.Name(request.Id);
        var (bound, _) = RuleBookOnDisk.Open(request.Rules);
        if (bound.Book is not { } book)
        {
            return host.Streams.Refuse(bound.Problems);
        }

        var path = request.Folder is "." ? $"{id}.yaml" : Path.Combine(request.Folder, $"{id}.yaml").Replace('\\', '/');
        if (Path.Exists(path))
        {
            throw new ArgumentProblem($"`{path}` is there already; nothing is overwritten.");
        }

        var questions = StartQuestions.All(tools.Reader);
        var (given, fileUses) = AnswersFile.Read(request.AnswersFile, questions);
        var parts = Parts(path, [.. request.Uses, .. fileUses]);
        foreach (var (question, answer) in request.Answers)
        {
            given[question] = AnswersFile.Accepted($"--{question}", questions.First(one => string.Equals(one.Id, question, StringComparison.Ordinal)), answer);
        }

        if (host.Streams.InputTerminal && request.AnswersFile is null)
        {
            new Asking(host.Streams, parts).Complete(given, questions);
        }

        Directory.CreateDirectory(request.Folder);
        var answers = new StartAnswers(given);
        var (schema, written) = SchemaFile.For(path, parts.Uses.Count > 0);
        if (written is not null)
        {
            host.Streams.Text($"Made {written}, which editors read beside plans.\n");
        }

        var made = PlanStarter.Make(tools, book, id, answers, parts, schema);
        var open = questions.Where(question => question.FromStage <= answers.Stage && !given.ContainsKey(question.Id) && !Asking.IsKnown(question, given)).Select(question => question.Id).ToList();
        var left = open.Count == 0 ? string.Empty : $"Not answered, so the usual or a blank: {string.Join(", ", open)}.\n";
        return NewThings.Make(host, request.Folder, [made], $"{left}Then: laygate new measures --for {path}, and laygate check {path}");
    }

    // Named from the folder of the plan, as the plan names them.
    private static FirmParts Parts(string plan, IReadOnlyList<string> files)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(plan))!;
        var names = files.Select(file => Path.GetRelativePath(folder, Path.GetFullPath(file)).Replace('\\', '/')).ToList();
        var parts = FirmParts.Of(plan, names, new PartFilesOnDisk());
        return parts.Problem is { } problem ? throw new ArgumentProblem(problem) : parts;
    }
}
