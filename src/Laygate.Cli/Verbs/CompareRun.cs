using Laygate.Checking.Comparing;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Cli.Output;
using Laygate.Reporting.Comparing;
using Laygate.Reporting.Terminal;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>One run of <c>laygate compare</c>.</summary>
internal sealed class CompareRun(Host host, CompareRequest request)
{
    private sealed record Side(string Name, PlanInput Input, byte[]? Bytes, Problem? Problem);

    /// <summary>Compares and writes what changed.</summary>
    /// <returns>The exit code.</returns>
    public int Run()
    {
        ResultOutput.KeepApart(request.Output, request.Files);
        var pairs = Pairs();
        var books = new ComparedBooks(request, host.Version);
        var opened = pairs.ConvertAll(pair => (pair.Old, pair.New, OldBook: books.Of(pair.Old.Input, isOld: true), NewBook: books.Of(pair.New.Input, isOld: false)));
        List<Problem> unread = [.. opened.SelectMany(pair => pair.OldBook.Problems.Concat(pair.NewBook.Problems)).Distinct()];
        if (unread.Count > 0)
        {
            return host.Streams.Refuse(unread);
        }

        var results = opened.ConvertAll(pair => Compare(new PlanComparer(pair.OldBook.Check!, pair.NewBook.Check!), pair.Old, pair.New));
        Write(results);
        var problems = results.SelectMany(result => result.Problems).ToList();
        return problems.Count > 0 ? host.Streams.Refuse(problems) : results.Exists(result => IsWorse(result, books.FailOn)) ? ExitCodes.Findings : ExitCodes.Clean;
    }

    private List<(Side Old, Side New)> Pairs()
    {
        var twoBooks = !request.OldRules.SequenceEqual(request.NewRules, StringComparer.Ordinal);
        // One job named once holds both of its shifts.
        var twoShifts = !string.Equals(request.OldShift, request.NewShift, StringComparison.Ordinal) && request.Files.Count == 1;
        if (request.Since is null && !twoBooks && !twoShifts)
        {
            return request.Files is [{ } old, { } @new]
                ? [(Read(old), Read(@new))]
                : throw new ArgumentProblem("Name two files. Write for example: laygate compare old.yaml new.yaml");
        }

        var inputs = new PlanFiles(host.Streams.Input, "standard input").Find(request.Files);
        if (inputs.Count == 0)
        {
            throw new ArgumentProblem("No file is named. `laygate compare --help` shows examples.");
        }

        var revisions = request.Since is null ? null : new Revisions();
        return [.. inputs.Select(input => (Earlier(input, revisions), Read(input)))];
    }

    private Side Earlier(PlanInput input, Revisions? revisions) => revisions is null || input.Problem is not null
        ? Read(input)
        : new Side($"{input.Name} at {request.Since}", input, revisions.Show(request.Since!, input.Identity), null);

    private Side Read(string name)
    {
        var inputs = new PlanFiles(host.Streams.Input, "standard input").Find([name]);
        return inputs is [{ } one] ? Read(one) : throw new ArgumentProblem($"`{name}` names more than one file.");
    }

    private static Side Read(PlanInput input)
    {
        var (bytes, problem) = PlanBytes.Read(input);
        return new Side(input.Name, input, bytes, problem);
    }

    private ComparisonResult Compare(PlanComparer comparer, Side old, Side @new)
    {
        List<Problem> problems = [.. new[] { old.Problem, @new.Problem }.OfType<Problem>().Distinct()];
        return problems.Count > 0
            ? new ComparisonResult(old.Name, @new.Name, [], problems)
            : Named(comparer.Run(old.Name, old.Bytes, @new.Name, @new.Bytes, (request.OldShift, request.NewShift)));
    }

    // Which shift is meant is said where it is not the same on both sides; a problem names the file alone.
    private ComparisonResult Named(ComparisonResult result) => string.Equals(request.OldShift, request.NewShift, StringComparison.Ordinal) ? result : result with
    {
        OldFile = request.OldShift is { } was ? $"{result.OldFile}, shift {was}" : result.OldFile,
        NewFile = request.NewShift is { } now ? $"{result.NewFile}, shift {now}" : result.NewFile,
    };

    private static bool IsWorse(ComparisonResult result, FailOn failOn) => result.Plans.SelectMany(plan => plan.Findings).Any(change =>
        change.Direction == ChangeDirection.Worse
        && change.New is { } finding
        && (failOn, finding.Status) is (FailOn.Fail or FailOn.Warn, Status.Fail) or (FailOn.Warn, Status.Warn));

    private void Write(List<ComparisonResult> results)
    {
        var output = new ResultOutput(host.Streams);
        switch (request.Format)
        {
            case CompareFormat.Json:
                using (var bytes = new MemoryStream())
                {
                    ComparisonJson.Write(bytes, host.Version, results);
                    output.Write(request.Output, Streams.Utf8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length));
                }

                break;
            case CompareFormat.Markdown:
                output.Write(request.Output, ComparisonMarkdown.Of(results));
                break;
            default:
                WriteLines(output, results);
                break;
        }
    }

    private void WriteLines(ResultOutput output, List<ComparisonResult> results)
    {
        if (request.Output is null)
        {
            host.Streams.Lines(ComparisonLines.Lines(results, new TerminalSettings(host.Streams.Width)));
            return;
        }

        var lines = ComparisonLines.Lines(results, new TerminalSettings(Streams.UsualWidth));
        output.Write(request.Output, string.Concat(lines.Select(line => line.Text + "\n")));
    }
}
