using System.Globalization;
using Laygate.Model.Records;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Records;

/// <summary>The rows of one file.</summary>
/// <param name="Rows">Rows that were read, in the order of the file.</param>
/// <param name="Refused">Why others were not, or why the whole file was not.</param>
/// <param name="Notes">What was seen and changes nothing that was refused.</param>
internal sealed record FileRows(IReadOnlyList<RecordRow> Rows, IReadOnlyList<ReadingProblem> Refused, IReadOnlyList<ReadingProblem> Notes);

/// <summary>Reads the rows of one raw file as its mapping declares them. A row that cannot be read is refused with its place; the rest is kept.</summary>
internal sealed class RowReader
{
    private readonly FileMapping file;
    private readonly CellReader cells;
    private readonly RowClock clock;
    private readonly List<ReadingProblem> refused = [];
    private readonly List<ReadingProblem> notes = [];
    private readonly List<RecordRow> rows = [];

    private RowReader(FileMapping file)
    {
        this.file = file;
        cells = new CellReader(file);
        clock = new RowClock(file, notes);
    }

    /// <summary>Reads a file.</summary>
    public static FileRows Read(FileMapping file, byte[] bytes)
    {
        if (bytes.Length > CsvText.LargestFile)
        {
            return Whole(FormattableString.Invariant($"The file has more than {CsvText.LargestFile >> 20} MiB."), "Divide it, and name each part in the mapping.");
        }

        var (text, problem) = CsvText.Decode(bytes, file.Encoding);
        return text is null ? Whole(problem!, "Change `encoding` in the mapping to utf-8, utf-16 or windows-1252.") : new RowReader(file).Read(text);
    }

    private static FileRows Whole(string message, string hint) => new([], [new ReadingProblem(message, TextSpan.FileStart, hint)], []);

    private FileRows Read(string text)
    {
        if (CsvText.DeclaredInside(text) is { } inside && inside != file.Delimiter)
        {
            return Whole($"The first line of the file says that `{inside}` divides its cells; the mapping says `{file.Delimiter}`.", "Change `delimiter` in the mapping.");
        }

        ColumnPlaces? places = null;
        var header = file.Header + (CsvText.DeclaredInside(text) is null || file.Header > 1 ? 0 : 1);
        foreach (var row in CsvText.Rows(text, file.Delimiter))
        {
            if (places is null)
            {
                if (row.Line < header)
                {
                    continue;
                }

                (places, var wrong) = ColumnPlaces.Of(file, row);
                if (places is null)
                {
                    return new FileRows([], wrong, []);
                }
            }
            else if (!file.UnitsRow || row.Line > header + 1)
            {
                if (rows.Count + refused.Count >= CsvText.MostRows)
                {
                    refused.Add(new ReadingProblem(string.Create(CultureInfo.InvariantCulture, $"The file has more than {CsvText.MostRows:N0} rows; from here on they are not read."), Span(row, 0), "Divide it, and name each part in the mapping."));
                    break;
                }

                Add(row, places);
            }
        }

        return places is null ? Whole("The file has no header.", "Its first row names the columns; `header` in the mapping says on which line.") : End();
    }

    private FileRows End()
    {
        clock.End();
        foreach (var open in clock.Settle(rows))
        {
            refused.Add(new ReadingProblem("This time happens twice in the night of the change of clock, and the rows around it do not tell which is meant.", Line(open), "Write the offset behind it, such as 02:30+02:00."));
            rows.Remove(open);
        }

        return new FileRows(rows, refused, notes);
    }

    private void Add(CsvRow row, ColumnPlaces places)
    {
        if (row.Cells is [] or [""] || Array.TrueForAll(row.Cells, cell => cell.Length == 0))
        {
            return;
        }

        if (row.Last - row.Line > CsvText.MostLines)
        {
            refused.Add(new ReadingProblem(string.Create(CultureInfo.InvariantCulture, $"A quotation mark opens here and none closes it before line {row.Last}: lines {row.Line} to {row.Last} are not read."), Span(row, 0), "Close it, or write it twice where it belongs to the text."));
            return;
        }

        var read = new RecordRow(file.Kind, new RowPlace(file.File, row.Line), 1);
        foreach (var (column, at) in places.Columns)
        {
            if (Put(read, row, column, at) is { } wrong)
            {
                refused.Add(wrong);
                return;
            }
        }

        rows.Add(read);
    }

    private ReadingProblem? Put(RecordRow read, CsvRow row, ColumnMapping column, int at)
    {
        if (column.Quantity.Form == CellForm.Grid)
        {
            return Grid(read, row, column, at);
        }

        var cell = column.Value ?? (at < row.Cells.Length ? row.Cells[at] : string.Empty);
        if (cell.Length == 0 || file.NoData.Contains(cell, StringComparer.Ordinal))
        {
            return column.Quantity.Needed ? Wrong(row, column, at, $"There is no {column.Quantity.Meaning}.") : null;
        }

        var wrong = CellReader.Damage(cell, column.Quantity.Form) ?? Value(read, column, cell);
        return wrong is null ? null : Wrong(row, column, at, wrong);
    }

    private string? Value(RecordRow read, ColumnMapping column, string cell)
    {
        string? wrong = null;
        switch (column.Quantity.Form)
        {
            case CellForm.Number:
                read[column.Index] = cells.Number(cell, out wrong) is { } number ? column.Unit!.ToSi(number) : null;
                return wrong;
            case CellForm.Station:
                read[column.Index] = cells.Station(cell, column, out wrong);
                return wrong;
            case CellForm.Count:
                read[column.Index] = CellReader.Count(cell, out wrong);
                return wrong;
            case CellForm.Word:
                read[column.Index] = CellReader.Word(cell, column, out wrong);
                return wrong;
            case CellForm.Date:
                read[column.Index] = cells.Date(cell, out wrong);
                return wrong;
            case CellForm.Moment:
                return cells.Time(cell, out wrong) is { } time ? clock.Put(read, column.Index, time, Day(read)) : wrong;
            default:
                read[column.Index] = column.Words.GetValueOrDefault(cell, cell);
                return null;
        }
    }

    private DateOnly? Day(RecordRow read)
    {
        for (var i = 0; i < file.Kind.Quantities.Count; i++)
        {
            if (file.Kind.Quantities[i].Form == CellForm.Date)
            {
                return read[i] as DateOnly?;
            }
        }

        return null;
    }

    private ReadingProblem? Grid(RecordRow read, CsvRow row, ColumnMapping column, int first)
    {
        var (offsets, values) = (new List<double>(), new List<double>());
        for (var i = 0; i < column.Offsets.Count; i++)
        {
            var cell = first + i < row.Cells.Length ? row.Cells[first + i] : string.Empty;
            string? wrong = null;
            var isRead = cell.Length > 0 && !file.NoData.Contains(cell, StringComparer.Ordinal);
            var number = isRead ? cells.Number(cell, out wrong) : null;
            if (wrong is not null)
            {
                return Wrong(row, column, first + i, wrong);
            }

            offsets.Add(column.Offsets[i]);
            values.Add(number is { } known ? column.Unit!.ToSi(known) : double.NaN);
        }

        read[column.Index] = ((IReadOnlyList<double>)offsets, (IReadOnlyList<double>)values);
        return null;
    }

    private static ReadingProblem Wrong(CsvRow row, ColumnMapping column, int at, string message) =>
        new(column.Column is { } name ? $"Column {TokenNames.Quote(name)}: {message}" : message, Span(row, at), "The row is left out; the others are kept.");

    private static TextSpan Span(CsvRow row, int at)
    {
        var start = at >= 0 && at < row.Starts.Length ? row.Starts[at] : row.Starts.LastOrDefault(1);
        return new TextSpan(row.Line, start, row.Line, start + 1);
    }

    private static TextSpan Line(RecordRow row) => new(row.Place.Line, row.Column, row.Place.Line, row.Column + 1);
}

/// <summary>Where the columns of a mapping stand in a header.</summary>
/// <param name="Columns">Columns with their places from 0; dates first, since times need them; −1 for a value that all rows share.</param>
internal sealed record ColumnPlaces(IReadOnlyList<(ColumnMapping Column, int At)> Columns)
{
    /// <summary>Finds the columns.</summary>
    /// <returns>The places, or what is wrong with the header.</returns>
    public static (ColumnPlaces? Places, IReadOnlyList<ReadingProblem> Problems) Of(FileMapping file, CsvRow header)
    {
        var (problems, found) = (new List<ReadingProblem>(), new List<(ColumnMapping, int)>());
        string[] names = [.. header.Cells.Select(Plain)];
        foreach (var column in file.Columns.OrderBy(column => column.Quantity.Form != CellForm.Date))
        {
            if (column.Column is not { } wanted)
            {
                found.Add((column, -1));
                continue;
            }

            var at = Find(names, wanted, file, header, problems);
            if (at < 0 && names.Length == 1)
            {
                break;
            }

            if (at >= 0 && column.Quantity.Form == CellForm.Grid)
            {
                found.Add((column with { Offsets = Offsets(column, names, at, header, file, problems) }, at));
            }
            else if (at >= 0)
            {
                found.Add((column, at));
            }
        }

        return problems.Count > 0 ? (null, problems) : (new ColumnPlaces(found), []);
    }

    private static int Find(string[] names, string wanted, FileMapping file, CsvRow header, List<ReadingProblem> problems)
    {
        var at = Array.IndexOf(names, Plain(wanted));
        if (at < 0)
        {
            var other = names.Length == 1 ? new[] { ',', ';', '\t', '|' }.FirstOrDefault(mark => mark != file.Delimiter && names[0].Contains(mark, StringComparison.Ordinal)) : default;
            var hint = other != default ? $"The header is one cell, divided by {Named(other)}: change `delimiter` in the mapping."
                : NearestNames.Of(wanted, names) is { Count: > 0 } near ? NearestNames.Asked(near) : $"Its columns are {string.Join(", ", names.Take(30).Select(TokenNames.Quote))}.";
            problems.Add(new ReadingProblem($"The header has no column {TokenNames.Quote(wanted)}; nothing of this file is read.", At(header, 0), hint));
        }
        else if (Array.LastIndexOf(names, Plain(wanted)) is var again && again != at)
        {
            problems.Add(new ReadingProblem($"Two columns are called {TokenNames.Quote(wanted)}; nothing of this file is read.", At(header, again), "Rename one of them in the spreadsheet, or leave it out."));
        }

        return at;
    }

    private static List<double> Offsets(ColumnMapping column, string[] names, int first, CsvRow header, FileMapping file, List<ReadingProblem> problems)
    {
        var last = column.LastColumn is { } name ? Array.IndexOf(names, Plain(name)) : names.Length - 1;
        var offsets = new List<double>();
        for (var i = first; i <= last; i++)
        {
            if (new CellReader(file).Number(names[i], out var wrong) is { } number)
            {
                offsets.Add(column.HeaderUnit!.ToSi(number));
            }
            else
            {
                problems.Add(new ReadingProblem($"The header of the grid should be an offset: {wrong}", At(header, i), "Name the last column of the grid with `last_column`."));
                break;
            }
        }

        if (last < first)
        {
            problems.Add(new ReadingProblem($"The last column of the grid, {TokenNames.Quote(column.LastColumn ?? string.Empty)}, does not stand behind its first.", At(header, first)));
        }

        return offsets;
    }

    private static string Named(char mark) => mark switch { ';' => "semicolons", '\t' => "tabs", '|' => "bars", _ => "commas" };

    private static string Plain(string name) => string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static TextSpan At(CsvRow header, int at) => new(header.Line, header.Starts[Math.Min(at, header.Starts.Length - 1)], header.Line, header.Starts[Math.Min(at, header.Starts.Length - 1)] + 1);
}
