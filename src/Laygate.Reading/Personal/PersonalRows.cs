using System.Text;
using Laygate.Reading.Records;

namespace Laygate.Reading.Personal;

/// <summary>Finds what the record of a shift says about persons: in the columns, and in the values that all rows share, whose meaning is a person (see the kinds of rows).</summary>
public static class PersonalRows
{
    /// <summary>The raw files of a record with the values about persons in them, by their names; a file that the mapping does not name, or that cannot be read, is left out.</summary>
    /// <param name="files">All files of the record, by their names; one is the mapping.</param>
    public static IReadOnlyDictionary<string, PersonalText> Find(IReadOnlyDictionary<string, byte[]> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        var found = new Dictionary<string, PersonalText>(StringComparer.Ordinal);
        if (files.GetValueOrDefault(MappingReader.FileName) is not { } mapping || MappingReader.Read(mapping).Mapping is not { } read)
        {
            return found;
        }

        foreach (var file in read.Files)
        {
            if (files.GetValueOrDefault(file.File) is { } bytes && CsvText.Decode(bytes, file.Encoding).Text is { } text)
            {
                var encoding = Encoded(bytes, file.Encoding);
                found[file.File] = new PersonalText(text, Places(text, file), encoding);
            }
        }

        return found;
    }

    /// <summary>Values about persons that all rows of a file of the record share.</summary>
    /// <param name="mapping">The mapping.</param>
    public static IReadOnlyList<string> Shared(byte[] mapping) => MappingReader.Read(mapping).Mapping is { } read
        ? [.. read.Files.SelectMany(file => file.Columns).Where(column => column.Quantity.IsPerson).Select(column => column.Value).OfType<string>()]
        : [];

    private static List<PersonalPlace> Places(string text, FileMapping file)
    {
        var places = new List<PersonalPlace>();
        var names = file.Columns.Where(column => column.Quantity.IsPerson).Select(column => column.Column).OfType<string>().ToList();
        if (names.Count == 0)
        {
            return places;
        }

        var (lines, columns, header) = (LineStarts(text), new List<int>(), file.Header);
        foreach (var row in CsvText.Rows(text, file.Delimiter))
        {
            if (row.Line <= header)
            {
                columns = row.Line == header ? [.. names.Select(name => Array.IndexOf(row.Cells, name)).Where(index => index >= 0)] : columns;
                continue;
            }

            foreach (var index in columns.Where(index => index < row.Cells.Length && row.Cells[index].Length > 0))
            {
                // The value as it stands in the cell, without quotation marks and blanks.
                var start = text.IndexOf(row.Cells[index], Math.Min(lines[row.Line - 1] + row.Starts[index] - 1, text.Length), StringComparison.Ordinal);
                if (start >= 0 && (row.Last >= lines.Count || start < lines[row.Last]))
                {
                    places.Add(new PersonalPlace(start, start + row.Cells[index].Length, PersonalSort.Who, row.Cells[index]));
                }
            }
        }

        return [.. places.OrderBy(place => place.Start).Where((place, i) => i == 0 || place.Start >= places[i - 1].End)];
    }

    private static List<int> LineStarts(string text)
    {
        var starts = new List<int> { 0 };
        for (var at = 0; at < text.Length; at++)
        {
            if (text[at] == '\n' || (text[at] == '\r' && (at + 1 == text.Length || text[at + 1] != '\n')))
            {
                starts.Add(at + 1);
            }
        }

        return starts;
    }

    private static Encoding Encoded(byte[] bytes, string encoding) => encoding switch
    {
        "utf-16" => new UnicodeEncoding(bigEndian: bytes is [0xFE, 0xFF, ..], byteOrderMark: bytes is [0xFE, 0xFF, ..] or [0xFF, 0xFE, ..]),
        "windows-1252" => CodePagesEncodingProvider.Instance.GetEncoding(1252)!,
        _ => new UTF8Encoding(bytes is [0xEF, 0xBB, 0xBF, ..]),
    };
}
