using Laygate.Checking;
using Laygate.Checking.Comparing;
using Laygate.Cli.Files;
using Laygate.Reading;
using Laygate.Reading.Baselines;
using Laygate.Reading.Departures;
using Laygate.Reading.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reporting.Runs;
using Laygate.Rules.Baselines;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Cli.Checking;

/// <summary>The only place that knows the entry points of reading and checking.</summary>
internal sealed class PlanPipeline : ICheckPipeline
{
    /// <inheritdoc/>
    public CheckSession Open(CheckRequest request)
    {
        // Schema and catalogue are made while the rules are read: a single check waits for neither.
        var tools = Task.Run(() => new PlanTools());
        var only = request.Only is { } input ? Task.Run(async () => Read(await tools.ConfigureAwait(false), input)) : null;
        var (bound, _) = RuleBookOnDisk.Open(request.Rules);
        if (bound.Book is null)
        {
            return new CheckSession(null, bound.Problems);
        }

        var departures = DepartureFiles.Load(request.Departures, bound.Book, new RuleFilesOnDisk());
        var (known, problems) = departures.Problems.Count > 0 ? (null, departures.Problems) : Known(request.Baseline, bound.Book);
        if (problems.Count > 0)
        {
            return new CheckSession(null, problems);
        }

        var settings = Settings(request);
        var made = tools.GetAwaiter().GetResult();
        var check = new PlanCheck(bound.Book, settings, departures.Departures, made);
        PlanCheck Plain(string? since) => new(bound.Book, settings with { Remedies = false, Outlook = false, Page = false, Parts = new PartFilesOnDisk(since) }, departures.Departures, made);
        var comparer = new Lazy<PlanComparer>(() => new PlanComparer(Plain(request.Since), Plain(null)));
        FileResult Run(string file, byte[] bytes) => only?.GetAwaiter().GetResult() is { } read && ReferenceEquals(read.Bytes, bytes) ? check.Run(file, bytes, read.Plans) : check.Run(file, bytes);
        return new CheckSession(known is null ? Run : (file, bytes) => Apply(Run(file, bytes), bound.Book, known), [], (file, bytes, draft, shift) => check.Sheet(file, bytes, draft, shift, CancellationToken.None))
        {
            Rules = () => RuleInForce.Of(bound.Book),
            Compare = (old, oldBytes, @new, newBytes) => comparer.Value.Run(old, oldBytes, @new, newBytes),
        };
    }

    private static CheckSettings Settings(CheckRequest request) => new(request.AtLeastStage, request.Date, request.ProgramVersion)
    {
        Remedies = request.Remedies,
        Outlook = request.Outlook,
        Page = request.Page,
        Quick = request.Quick,
        SettingsFile = request.Settings,
        Parts = new PartFilesOnDisk(),
    };

    private static ReadAhead? Read(PlanTools tools, PlanInput input) =>
        PlanBytes.Read(input).Bytes is { } bytes ? new ReadAhead(bytes, tools.Reader.Read(input.Name, bytes, new PartFilesOnDisk())) : null;

    private sealed record ReadAhead(byte[] Bytes, PlanFile Plans);

    private static (Baseline? Baseline, IReadOnlyList<Problem> Problems) Known(string? path, RuleBook book)
    {
        if (path is null)
        {
            return (null, []);
        }

        try
        {
            return BaselineFile.Read(path, File.ReadAllBytes(path), book);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return (null, [new Problem(path, "The baseline cannot be read.", "Check its name, or write one with `laygate baseline`.", null)]);
        }
    }

    private static FileResult Apply(FileResult result, RuleBook book, Baseline baseline) => result with
    {
        Reports = [.. result.Reports.Select(report => BaselineJudge.Apply(report, book, baseline, BaselinePaths.Of(baseline.File, report.File)))],
    };
}

/// <summary>Opens the shipped pack beside the program, with the specifications that a command names.</summary>
internal static class RuleBookOnDisk
{
    /// <summary>Opens a rule book.</summary>
    /// <returns>The book or its problems, and the pack where there is one.</returns>
    public static (BoundBook Bound, RulePack? Pack) Open(IReadOnlyList<string> rules)
    {
        var path = Path.Combine(AppContext.BaseDirectory, RulePack.FileName);
        if (!File.Exists(path))
        {
            return (new BoundBook(null, [new Problem(path, "The rule pack that belongs beside the program is missing.", "Install the program again.", null)]), null);
        }

        var pack = RulePack.Read(File.ReadAllBytes(path));
        return (RuleBooks.Load(pack, rules, new RuleFilesOnDisk()), pack);
    }
}
