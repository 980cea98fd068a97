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
    private Task<RulePack?>? pack;
    private Task<PlanTools>? tools;

    /// <summary>Begins to read what every check needs, while the program still reads what it is asked for.</summary>
    public void Begin()
    {
        pack = Task.Run(RuleBookOnDisk.Pack);
        tools = Task.Run(() => new PlanTools());
    }

    /// <inheritdoc/>
    public CheckSession Open(CheckRequest request)
    {
        // Schema and catalogue are made while the rules are read: a single check waits for neither.
        tools ??= Task.Run(() => new PlanTools());
        var only = request.Only is { } input ? Task.Run(async () => Read(await tools.ConfigureAwait(false), input)) : null;
        var (bound, _) = RuleBookOnDisk.Open(request.Rules, Interlocked.Exchange(ref pack, null));
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
    /// <param name="rules">Specifications beside the general book.</param>
    /// <param name="ahead">The pack, where reading it has begun.</param>
    /// <returns>The book or its problems, and the pack where there is one.</returns>
    public static (BoundBook Bound, RulePack? Pack) Open(IReadOnlyList<string> rules, Task<RulePack?>? ahead = null) =>
        (ahead is null ? Pack() : ahead.GetAwaiter().GetResult()) is { } pack
            ? (RuleBooks.Load(pack, rules, new RuleFilesOnDisk()), pack)
            : (new BoundBook(null, [new Problem(Place, "The rule pack that belongs beside the program is missing.", "Install the program again.", null)]), null);

    /// <summary>Reads the shipped pack; null where it is missing.</summary>
    public static RulePack? Pack() => File.Exists(Place) ? RulePack.Read(File.ReadAllBytes(Place)) : null;

    private static string Place => Path.Combine(AppContext.BaseDirectory, RulePack.FileName);
}
