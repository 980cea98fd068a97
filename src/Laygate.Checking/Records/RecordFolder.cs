using Laygate.Reading.Parts;
using Laygate.Reading.Records;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Results;

namespace Laygate.Checking.Records;

/// <summary>A record that was found below a folder, with the plan whose id it names.</summary>
/// <param name="Mapping">Its mapping, as shown to users.</param>
/// <param name="PlanId">Id of the plan.</param>
/// <param name="Shift">Plan and record.</param>
public sealed record FoundRecord(string Mapping, string PlanId, RecordedShift Shift);

/// <summary>All records of shifts below a folder that holds plans and records: each record names its plan by id. Those of trial lengths are none.</summary>
public static class RecordFolder
{
    /// <summary>Finds them, in the order of their names.</summary>
    /// <param name="tools">What reads plans.</param>
    /// <param name="folder">The folder with everything below it.</param>
    /// <param name="open">Opens a folder by its path below it.</param>
    /// <param name="parts">Files that plans use.</param>
    /// <returns>The records, and what is wrong with the others.</returns>
    public static (IReadOnlyList<FoundRecord> Records, IReadOnlyList<Problem> Problems) Find(PlanTools tools, IRuleFolder folder, Func<string, IRuleFolder?> open, IPartFiles parts)
    {
        var plans = Plans(tools, folder, parts);
        var (found, problems) = (new List<FoundRecord>(), new List<Problem>());
        foreach (var mapping in folder.Files.Where(file => Path.GetFileName(file) is RecordReader.MappingFile).Order(StringComparer.Ordinal))
        {
            if (open(Path.GetDirectoryName(mapping)!.Replace('\\', '/')) is not { } own)
            {
                continue;
            }

            var read = RecordReader.Read(own);
            if (read.Record is { IsTrial: true })
            {
                continue;
            }

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

            found.Add(new FoundRecord(folder.Shown(mapping), id, shift));
        }

        return (found, problems);
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
