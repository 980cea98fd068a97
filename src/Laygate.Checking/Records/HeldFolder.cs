using Laygate.Reading.Parts;
using Laygate.Reading.Records;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Definitions;
using Laygate.Rules.Held;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;

namespace Laygate.Checking.Records;

/// <summary>Counts what came of the findings of plans over a folder that holds plans and records: each record names its plan by id.</summary>
public static class HeldFolder
{
    /// <summary>Counts.</summary>
    /// <param name="tools">What reads plans.</param>
    /// <param name="folder">The folder with everything below it.</param>
    /// <param name="open">Opens a folder by its path below it.</param>
    /// <param name="parts">Files that plans use.</param>
    /// <param name="book">The merged rule book.</param>
    /// <param name="departures">Departures, checked against the book.</param>
    /// <param name="today">Day of checking.</param>
    /// <param name="version">Version of the program.</param>
    public static FeedbackReport Count(
        PlanTools tools, IRuleFolder folder, Func<string, IRuleFolder?> open, IPartFiles parts, RuleBook book, IReadOnlyList<Departure> departures, DateOnly today, string version)
    {
        var plans = Plans(tools, folder, parts);
        var (reports, records, problems) = (new List<HeldReport>(), new List<CountedRecord>(), new List<Problem>());
        foreach (var mapping in folder.Files.Where(file => Path.GetFileName(file) is RecordReader.MappingFile).Order(StringComparer.Ordinal))
        {
            var path = Path.GetDirectoryName(mapping)!.Replace('\\', '/');
            if (open(path) is not { } own)
            {
                continue;
            }

            var read = RecordReader.Read(own);
            if (read.Record?.Plan is not { } id || !plans.TryGetValue(id, out var file))
            {
                problems.Add(new Problem(folder.Shown(mapping), read.Record is null ? "The record cannot be read." : "The folder has no plan with the id that the record names, or the record names none.", "Put the plan into the folder, and its id under `plan` in the mapping.", null));
                continue;
            }

            var (shift, wrong) = RecordedShift.Open(tools, folder.Shown(file), folder.Read(file), parts, own);
            if (shift is null)
            {
                problems.AddRange(wrong);
                continue;
            }

            reports.Add(shift.Held(book, departures, today, simpleBy: null, version));
            records.Add(new CountedRecord(folder.Shown(mapping), id, read.Record.About));
        }

        return new FeedbackReport(records, RuleFeedbacks.Of(reports), problems);
    }

    // The first file in the order of names that holds a plan of an id; a file that is no plan is none of ours to judge.
    private static Dictionary<string, string> Plans(PlanTools tools, IRuleFolder folder, IPartFiles parts)
    {
        var found = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in folder.Files.Where(file => file.EndsWith(".yaml", StringComparison.Ordinal) && Path.GetFileName(file) is not RecordReader.MappingFile).Order(StringComparer.Ordinal))
        {
            foreach (var plan in tools.Reader.Read(folder.Shown(file), folder.Read(file), parts).Plans)
            {
                found.TryAdd(plan.Plan.Identity.Id, file);
            }
        }

        return found;
    }
}
