using System.Security.Cryptography;
using Laygate.Model.Records;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.Records;

/// <summary>A record that was read, and what of it was not.</summary>
/// <param name="Record">The record; null where its mapping cannot be used.</param>
/// <param name="Refused">Rows and files that were refused, or what is wrong with the mapping.</param>
/// <param name="Notes">What was seen on the way: rows that count once, clocks that differ, numbers that are missing.</param>
public sealed record RecordFile(ShiftRecord? Record, IReadOnlyList<Problem> Refused, IReadOnlyList<Problem> Notes);

/// <summary>Reads the record of a shift: a folder with raw files and one mapping. Raw files are read and hashed, never changed.</summary>
public static class RecordReader
{
    /// <summary>Name of the mapping in the folder.</summary>
    public const string MappingFile = MappingReader.FileName;

    /// <summary>Reads a record.</summary>
    /// <param name="folder">The folder.</param>
    public static RecordFile Read(IRuleFolder folder)
    {
        if (!folder.Files.Contains(MappingFile, StringComparer.Ordinal))
        {
            return new RecordFile(null, [new Problem(folder.Name, $"The folder has no {MappingFile}, which says what its files hold.", "`laygate record PLAN --into FOLDER` lays one out.", null)], []);
        }

        var (mapping, problems) = MappingReader.Read(folder.Read(MappingFile));
        return mapping is null
            ? new RecordFile(null, ShownProblems.Of(folder.Shown(MappingFile), problems), [])
            : new Reading(folder, mapping).Read();
    }

    private sealed class Reading(IRuleFolder folder, RecordMapping mapping)
    {
        private readonly List<(string File, ReadingProblem Problem)> refused = [];
        private readonly List<(string File, ReadingProblem Problem)> notes = [];
        private readonly List<RawFile> files = [];
        private readonly Dictionary<string, List<(RecordRow Row, FileMapping File)>> rows = new(StringComparer.Ordinal);

        public RecordFile Read()
        {
            mapping.Files.ToList().ForEach(Read);
            var loads = new TicketBook((at, message, hint) => refused.Add(Problem(at, message, hint)), (at, message) => notes.Add(Problem(at, message, null)))
                .Loads(rows.GetValueOrDefault(RecordKinds.Tickets) ?? [], Of(RecordKinds.Deliveries));
            var record = RecordMapper.Map(mapping, loads, Once, (at, message, hint) => refused.Add(Problem(at, message, hint)), (at, message) => notes.Add(Problem(at, message, null))) with { Files = files, Last = Last() };
            return new RecordFile(record, Shown(refused), Shown(notes));
        }

        private void Read(FileMapping file)
        {
            if (!folder.Files.Contains(file.File, StringComparer.Ordinal))
            {
                refused.Add((MappingFile, new ReadingProblem($"The folder has no file {TokenNames.Quote(file.File)}.", file.At, "Put it there, or take it out of the mapping.")));
                return;
            }

            var bytes = folder.Read(file.File);
            var read = RowReader.Read(file, bytes);
            refused.AddRange(read.Refused.Select(problem => (file.File, problem)));
            notes.AddRange(read.Notes.Select(problem => (file.File, problem)));
            files.Add(new RawFile(file.File, file.Kind.Name, Convert.ToHexStringLower(SHA256.HashData(bytes)), read.Rows.Count, read.Refused.Count));
            if (!rows.TryGetValue(file.Kind.Name, out var all))
            {
                rows[file.Kind.Name] = all = [];
            }

            all.AddRange(read.Rows.Select(row => (row, file)));
        }

        private List<RecordRow> Of(string kind) => rows.TryGetValue(kind, out var found) ? [.. found.Select(one => one.Row)] : [];

        // A file that was copied in twice, or a row that was: it happened once. Tickets and deliveries have rules of their own; passes without a number may be two of one minute.
        private List<RecordRow> Once(string kind)
        {
            var (known, kept) = (new Dictionary<RecordRow, RecordRow>(RecordRow.SameContent), new List<RecordRow>());
            foreach (var row in Of(kind))
            {
                if ((kind is RecordKinds.Passes && row.Count("pass") is null) || known.TryAdd(row, row))
                {
                    kept.Add(row);
                }
                else
                {
                    notes.Add(Problem(row.Place, FormattableString.Invariant($"This row stands here again, as in {known[row].Place.File}, line {known[row].Place.Line}. It counts once."), null));
                }
            }

            return kept;
        }

        private DateTimeOffset? Last() => rows.Values.SelectMany(all => all)
            .SelectMany(one => one.Row.Kind.Quantities.Select((_, index) => one.Row[index] as DateTimeOffset?)).Max();

        private static (string, ReadingProblem) Problem(RowPlace at, string message, string? hint) => (at.File, new ReadingProblem(message, new TextSpan(at.Line, 1, at.Line, 2), hint));

        private List<Problem> Shown(List<(string File, ReadingProblem Problem)> found) =>
            [.. found.GroupBy(one => one.File, StringComparer.Ordinal).SelectMany(group => ShownProblems.Of(folder.Shown(group.Key), group.Select(one => one.Problem)))];
    }
}
