using Laygate.Reading.Records;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Results;

namespace Laygate.Reading.Sets;

/// <summary>The record of a shift as a set of files that was sent: the mapping and the raw files beside it.</summary>
public static class RecordSet
{
    /// <summary>The folder of a record in a set; other files of the set are kept and not read.</summary>
    /// <param name="set">The set, as it is shown.</param>
    /// <param name="files">The files.</param>
    /// <returns>The folder, or all reasons why the files are no record that can be read.</returns>
    public static (IRuleFolder? Folder, IReadOnlyList<Problem> Problems) Of(string set, IReadOnlyList<SetFile> files)
    {
        var problems = PlanSet.Sizes(set, files).Concat(SetNames.Check(set, [.. files.Select(file => file.Name)])).ToList();
        if (problems.Count > 0)
        {
            return (null, problems);
        }

        var mappings = files.Where(file => string.Equals(file.Name.Split('/')[^1], RecordReader.MappingFile, StringComparison.Ordinal)).ToList();
        if (mappings is not [var mapping])
        {
            return (null, [SetNames.Of(set, mappings.Count == 0 ? $"There is no {RecordReader.MappingFile} among the files." : $"There are several files {RecordReader.MappingFile}.", "Send the folder of one record: its record.yaml and the files that it names.")]);
        }

        var root = mapping.Name[..^RecordReader.MappingFile.Length];
        var folder = new RuleFolderInMemory(set, files.Where(file => file.Name.StartsWith(root, StringComparison.Ordinal)).ToDictionary(file => file.Name[root.Length..], file => file.Bytes, StringComparer.Ordinal));
        var read = RecordReader.Read(folder);
        return read.Record is null ? (null, read.Refused) : (folder, []);
    }
}
