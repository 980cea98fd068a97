using Laygate.Checking;
using Laygate.Checking.Records;
using Laygate.Cli.Arguments;
using Laygate.Cli.Checking;
using Laygate.Cli.Files;
using Laygate.Reading.Departures;
using Laygate.Reading.Records;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Cli.Verbs;

/// <summary>The plan and the record that commands about a shift read.</summary>
internal static class RecordInputs
{
    /// <summary>Reads the bytes of one plan; null where they cannot be read, which has then been said.</summary>
    public static (PlanInput Input, byte[]? Bytes) Plan(Host host, string name)
    {
        if (new PlanFiles(host.Streams.Input, "standard input").Find([name]) is not [var input])
        {
            throw new ArgumentProblem($"`{name}` names more than one file.");
        }

        var (bytes, problem) = PlanBytes.Read(input);
        if (bytes is null)
        {
            host.Streams.Refuse([problem!]);
        }

        return (input, bytes);
    }

    /// <summary>Opens a plan with the record of its shift; null where one of them cannot be used, which has then been said.</summary>
    /// <param name="host">The host.</param>
    /// <param name="plan">Name of the plan.</param>
    /// <param name="record">The folder of the record, or its mapping; null where there is none yet.</param>
    /// <exception cref="ArgumentProblem">There is no such folder.</exception>
    public static RecordedShift? Open(Host host, string plan, string? record)
    {
        var files = record is null ? null : Folder(plan, record);
        var (input, bytes) = Plan(host, plan);
        if (bytes is null)
        {
            return null;
        }

        var (shift, problems) = RecordedShift.Open(new PlanTools(), input.Name, bytes, new PartFilesOnDisk(), files);
        if (shift is null)
        {
            host.Streams.Refuse(problems);
        }

        return shift;
    }

    /// <summary>All records below a folder with their plans, and what is wrong with the others.</summary>
    /// <param name="name">The folder.</param>
    /// <exception cref="ArgumentProblem">There is no such folder.</exception>
    public static (IReadOnlyList<FoundRecord> Records, IReadOnlyList<Problem> Problems) Below(string name)
    {
        var disk = new RuleFilesOnDisk();
        var folder = disk.Folder(name) ?? throw new ArgumentProblem($"There is no folder `{name}`.");
        return RecordFolder.Find(new PlanTools(), folder, path => disk.Folder(Path.Combine(name, path)), new PartFilesOnDisk());
    }

    /// <summary>
    /// The rule book and the permitted departures of a command. Settings of the repository are laid over the command, as for a check: they add rules and departures, and
    /// take none away.
    /// </summary>
    /// <param name="names">Specifications that the command names.</param>
    /// <param name="departures">Files of departures that it names.</param>
    /// <param name="found">Settings of the repository.</param>
    public static (RuleBook? Book, IReadOnlyList<Departure> Departures, IReadOnlyList<Problem> Problems) Book(IReadOnlyList<string> names, IReadOnlyList<string> departures, FoundSettings? found)
    {
        if (found is { Problems: { Count: > 0 } wrong })
        {
            return (null, [], wrong);
        }

        var (bound, _) = RuleBookOnDisk.Open([.. (found?.Settings?.Rules ?? []).Concat(names).Distinct(StringComparer.Ordinal)]);
        if (bound.Book is not { } book)
        {
            return (null, [], bound.Problems);
        }

        var permitted = DepartureFiles.Load([.. (found?.Settings?.Departures ?? []).Concat(departures).Distinct(StringComparer.Ordinal)], book, new RuleFilesOnDisk());
        return permitted.Problems.Count > 0 ? (null, [], permitted.Problems) : (book, permitted.Departures, []);
    }

    /// <summary>Settings of the repository for a plan.</summary>
    /// <param name="plan">Name of the plan; `-` for standard input.</param>
    public static FoundSettings? Settings(string plan) => new SettingsOnDisk().For(plan is "-" ? Directory.GetCurrentDirectory() : Path.GetDirectoryName(Path.GetFullPath(plan))!);

    private static IRuleFolder Folder(string plan, string record)
    {
        var folder = string.Equals(Path.GetFileName(record), RecordReader.MappingFile, StringComparison.Ordinal) ? Path.GetDirectoryName(record) is { Length: > 0 } above ? above : "." : record;
        return new RuleFilesOnDisk().Folder(folder) ?? throw new ArgumentProblem($"There is no folder `{record}`. `laygate record {plan} --into {record}` lays one out.");
    }

    /// <summary>The exit code: 1 where rows were refused.</summary>
    public static int Code(IReadOnlyList<Problem> refused) => refused.Count > 0 ? ExitCodes.Findings : ExitCodes.Clean;
}
