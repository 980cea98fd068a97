using System.Globalization;
using System.Security.Cryptography;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans;
using Laygate.Reading.Records;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.Imports;

/// <summary>Imports a list from a spreadsheet as its mapping declares it.</summary>
public static class TableImport
{
    /// <summary>Largest list that is read, bytes.</summary>
    public const int LargestFile = CsvText.LargestFile;

    private const string NothingWritten = "Mend it in the list, or in the mapping; nothing was written.";

    /// <summary>The kinds of lists.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["weather", "trucks", "plants", ImportKinds.Loads];

    /// <summary>Imports a list.</summary>
    /// <param name="kind">What its rows are.</param>
    /// <param name="file">The list, as it is shown.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="mappingFile">The mapping, as it is shown.</param>
    /// <param name="mapping">Its bytes.</param>
    /// <param name="reader">Reads plans.</param>
    public static Import Read(string kind, string file, byte[] bytes, string mappingFile, byte[] mapping, PlanReader reader)
    {
        var known = ImportKinds.All(reader.Schema).First(one => string.Equals(one.Kind.Name, kind, StringComparison.Ordinal));
        Import Result(IReadOnlyList<ImportedEntry> entries, IReadOnlyList<Problem> problems, IReadOnlyList<Problem> notes) =>
            new(kind, file, Convert.ToHexStringLower(SHA256.HashData(bytes)), problems.Count > 0 ? [] : entries, problems, notes);
        var (declared, wrong) = Mapping(mapping, known.Kind, file);
        if (declared is null)
        {
            return Result([], ShownProblems.Of(mappingFile, wrong), []);
        }

        var rows = RowReader.Read(declared, bytes);
        var notes = ShownProblems.Of(file, rows.Notes);
        if (rows.Refused.Count > 0 || rows.Rows.Count == 0)
        {
            return Result([], ShownProblems.Of(file, rows.Refused.Count > 0 ? rows.Refused.Select(problem => problem with { Hint = Own(problem.Hint) }) : [new ReadingProblem("The list has no rows.", TextSpan.FileStart)]), notes);
        }

        var (entries, problems) = Entries(rows.Rows, declared, new CellPlaces(declared, bytes));
        problems.AddRange(problems.Count > 0 || kind is ImportKinds.Loads ? [] : ImportCheck.Of(entries, known.Path, reader));
        return Result(entries, ShownProblems.Of(file, problems), notes);
    }

    // A row that cannot be read keeps all from being written, whatever the reader of records does with it.
    private static string? Own(string? hint) => hint is "The row is left out; the others are kept." ? NothingWritten : hint;

    private static (FileMapping? File, IReadOnlyList<ReadingProblem> Problems) Mapping(byte[] bytes, RecordKind kind, string file)
    {
        var text = YamlReader.Read(bytes, "mapping");
        if (!text.IsSound)
        {
            return (null, text.Problems);
        }

        List<ReadingProblem> problems = [.. SchemaChecker.Check(text.Documents[0], SchemaLoader.Load(EmbeddedSchemas.Find("import")!))];
        problems.AddRange(text.Documents.Skip(1).Take(1).Select(document => new ReadingProblem("A file holds one mapping.", document.Root.Span, "Remove what follows the `---` line.")));
        if (problems.Count > 0)
        {
            return (null, problems);
        }

        var root = (MapToken)text.Documents[0].Root;
        var mapping = MappingReader.File(root, kind, file, TokenNames.Head(root).Span, problems);
        return problems.Count > 0 ? (null, problems) : (mapping, []);
    }

    private static (IReadOnlyList<ImportedEntry> Entries, List<ReadingProblem> Problems) Entries(IReadOnlyList<RecordRow> rows, FileMapping file, CellPlaces places)
    {
        var problems = new List<ReadingProblem>();
        List<ImportedEntry> entries = [];
        foreach (var row in rows)
        {
            var values = new List<ImportedValue>();
            foreach (var column in file.Columns.Where(column => row[column.Index] is not null).OrderBy(column => column.Index))
            {
                var span = places.Of(row.Place.Line, column);
                if (row[column.Index] is DateTimeOffset { Second: not 0 })
                {
                    problems.Add(new ReadingProblem($"`{column.Quantity.Name}` has seconds; a plan states whole minutes.", span, NothingWritten));
                }

                values.Add(Value(column, row[column.Index]!) with { Span = span });
            }

            entries.Add(new ImportedEntry(values));
        }

        return (entries, problems);
    }

    private static ImportedValue Value(ColumnMapping column, object value) => column.Quantity switch
    {
        { Name: ImportKind.CloudCover } => new ImportedValue("cloud_eighths", ImportTexts.Eighths((double)value * 100)),
        { Form: CellForm.Number } quantity => new ImportedValue(quantity.Name, $"{MeasureReader.WriteNumber(column.Unit!.FromSi((double)value))} {column.Unit.Spelling}"),
        { Form: CellForm.Moment } quantity => new ImportedValue(quantity.Name, ImportTexts.Moment((DateTimeOffset)value)),
        var quantity when ImportKinds.IsList(quantity) => new ImportedValue(quantity.Name, (string)value) { Ids = [.. ((string)value).Split(' ', StringSplitOptions.RemoveEmptyEntries)] },
        var quantity => new ImportedValue(quantity.Name, Convert.ToString(value, CultureInfo.InvariantCulture)!),
    };

    // Where cells stand; only asked for what the reader of rows has taken.
    private sealed class CellPlaces
    {
        private readonly Dictionary<int, int[]> starts = [];
        private readonly Dictionary<int, int> columns = [];

        public CellPlaces(FileMapping file, byte[] bytes)
        {
            foreach (var row in CsvText.Rows(CsvText.Decode(bytes, file.Encoding).Text!, file.Delimiter))
            {
                starts[row.Line] = row.Starts;
                if (columns.Count == 0 && ColumnPlaces.Of(file, row).Places is { } places)
                {
                    places.Columns.ToList().ForEach(place => columns[place.Column.Index] = place.At);
                }
            }
        }

        public TextSpan Of(int line, ColumnMapping column)
        {
            var at = columns.GetValueOrDefault(column.Index, -1);
            var start = starts.TryGetValue(line, out var known) && at >= 0 && at < known.Length ? known[at] : 1;
            return new TextSpan(line, start, line, start + 1);
        }
    }
}

/// <summary>Values as a plan writes them.</summary>
internal static class ImportTexts
{
    /// <summary>A moment with its offset from UTC.</summary>
    public static string Moment(DateTimeOffset moment) => moment.ToString("yyyy-MM-dd'T'HH:mmzzz", CultureInfo.InvariantCulture);

    /// <summary>Whether a text is a whole number that YAML takes for one.</summary>
    public static bool IsPlainNumber(string text) => text.Length is > 0 and < 10 && text.All(char.IsAsciiDigit) && (text[0] != '0' || text.Length == 1);

    /// <summary>Cloud in the nearest eighths of the sky.</summary>
    /// <param name="percent">Cloud, percent of the sky.</param>
    public static string Eighths(double percent) => Math.Round(percent / 12.5, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture);
}
