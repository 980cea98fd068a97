using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Model.Records;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Schema;
using Laygate.Reading.Yaml;
using NodaTime;

namespace Laygate.Reading.Records;

/// <summary>Reads the mapping of a record: which file holds what, and how it is written. What is not declared is asked for, never guessed.</summary>
internal static class MappingReader
{
    /// <summary>Name of the file in the folder of a record.</summary>
    public const string FileName = "record.yaml";

    /// <summary>Reads the mapping.</summary>
    /// <returns>The mapping; null where there are problems.</returns>
    public static (RecordMapping? Mapping, IReadOnlyList<ReadingProblem> Problems) Read(byte[] bytes)
    {
        var text = YamlReader.Read(bytes, "mapping of a record");
        if (!text.IsSound)
        {
            return (null, text.Problems);
        }

        var problems = SchemaChecker.Check(text.Documents[0], SchemaLoader.Load(EmbeddedSchemas.Text("record.schema.json"))).ToList();
        problems.AddRange(text.Documents.Skip(1).Take(1).Select(document => new ReadingProblem("A folder holds one record.", document.Root.Span, "Remove what follows the `---` line.")));
        if (problems.Count > 0)
        {
            return (null, problems);
        }

        var root = (MapToken)text.Documents[0].Root;
        var about = root.Map("record");
        var files = root.Maps("files").Select(map => File(map, problems)).OfType<FileMapping>().ToList();
        var mapping = new RecordMapping(about?.Text("plan"), about?.Text("about"), Uncertainty(about?.Map("uncertainty"), problems), Amount(about, "water", Dimension.Density, problems), files) { IsTrial = about?.Text("of") is "trial-length", Laboratory = about?.Text("laboratory") };
        return problems.Count > 0 ? (null, problems) : (mapping, []);
    }

    private static RecordUncertainty Uncertainty(MapToken? map, List<ReadingProblem> problems)
    {
        double? Of(string key, Dimension dimension = Dimension.Proportion) => Amount(map, key, dimension, problems);
        return new RecordUncertainty(Of("mass"), Of("density"), Of("width"), Of("length"))
        {
            Volume = Of("volume"),
            Temperature = Of("temperature", Dimension.TemperatureDifference),
            Skin = Of("skin", Dimension.TemperatureDifference),
            Thickness = Of("thickness", Dimension.Length),
            Wind = Of("wind", Dimension.Speed),
            Time = Of("time", Dimension.Duration),
        };
    }

    private static double? Amount(MapToken? map, string key, Dimension dimension, List<ReadingProblem> problems)
    {
        if (map?[key] is not ScalarToken scalar)
        {
            return null;
        }

        if (MeasureReader.Read(scalar.Text, dimension, out var wrong) is not var (number, unit))
        {
            problems.Add(new ReadingProblem(wrong!.Message, scalar.Span, wrong.Hint));
            return null;
        }

        return unit.ToSi(number);
    }

    private static FileMapping? File(MapToken map, List<ReadingProblem> problems)
    {
        var holds = map["holds"] as ScalarToken;
        if (RecordKinds.Find(holds!.Text) is not { } kind)
        {
            problems.Add(new ReadingProblem($"There are no rows called {TokenNames.Quote(holds.Text)}.", holds.Span, Near(holds.Text, RecordKinds.All.Select(one => one.Name))));
            return null;
        }

        return File(map, kind, map.Needed("file"), map["file"]!.Span, problems);
    }

    /// <summary>Reads how one file is written.</summary>
    /// <param name="map">The keys of the mapping.</param>
    /// <param name="kind">What its rows are.</param>
    /// <param name="name">Name of the file.</param>
    /// <param name="at">Where problems of the mapping as a whole stand.</param>
    /// <param name="problems">Problems are added here.</param>
    public static FileMapping File(MapToken map, RecordKind kind, string name, TextSpan at, List<ReadingProblem> problems)
    {
        var columns = map.Maps("columns").Select(column => Column(column, kind, problems)).OfType<ColumnMapping>().ToList();
        var file = new FileMapping(name, kind, at)
        {
            Delimiter = map.Text("delimiter") switch { "semicolon" => ';', "tab" => '\t', "bar" => '|', _ => ',' },
            DecimalMark = map.Text("decimal_mark") is "comma" ? ',' : '.',
            Grouping = map.Text("grouping") switch { "comma" => ',', "point" => '.', "apostrophe" => '\'', "space" => ' ', _ => null },
            Encoding = map.Needed("encoding"),
            Header = int.Parse(map.Text("header") ?? "1", CultureInfo.InvariantCulture),
            UnitsRow = map.Text("units_row") is "yes",
            Dates = map.Text("dates") switch { "day-month-year" => DateOrder.DayMonthYear, "month-day-year" => DateOrder.MonthDayYear, _ => DateOrder.YearMonthDay },
            Day = map.Date("day", problems),
            Zone = Zone(map["zone"] as ScalarToken, problems),
            NoData = map.Texts("no_data"),
            Division = Amount(map, "division", Dimension.Mass, problems),
            OriginalStands = map.Text("on_conflict") is "original",
            Columns = columns,
        };
        problems.AddRange(Lacking(file));
        return file;
    }

    private static IEnumerable<ReadingProblem> Lacking(FileMapping file)
    {
        foreach (var quantity in file.Kind.Quantities.Where(quantity => quantity.Needed && file.Columns.All(column => column.Quantity != quantity)))
        {
            yield return new ReadingProblem($"{TokenNames.Quote(file.File)}: no column is said to hold `{quantity.Name}` ({quantity.Meaning}).", file.At, $"Add `- {{ column: …, quantity: {quantity.Name} }}`.");
        }

        foreach (var twice in file.Columns.GroupBy(column => column.Index).Where(group => group.Count() > 1))
        {
            yield return new ReadingProblem($"`{twice.First().Quantity.Name}` is said twice.", twice.ElementAt(1).At, "Keep one column for it.");
        }

        if (file.Zone is null && file.Columns.Any(column => column.Quantity.Form == CellForm.Moment))
        {
            yield return new ReadingProblem($"{TokenNames.Quote(file.File)} has times, and the mapping does not say in which zone.", file.At, "Add `zone: Europe/Berlin`, or an offset from UTC such as `zone: +02:00`.");
        }

        if (file.Grouping == file.DecimalMark)
        {
            yield return new ReadingProblem("The same mark cannot divide thousands and decimals.", file.At, "Change `grouping` or `decimal_mark`.");
        }
    }

    private static ColumnMapping? Column(MapToken map, RecordKind kind, List<ReadingProblem> problems)
    {
        var name = (ScalarToken)map["quantity"]!;
        var quantity = kind.Quantities.FirstOrDefault(one => string.Equals(one.Name, name.Text, StringComparison.Ordinal));
        if (quantity is null)
        {
            problems.Add(new ReadingProblem($"Rows of `{kind.Name}` have no {TokenNames.Quote(name.Text)}.", name.Span, Near(name.Text, kind.Quantities.Select(one => one.Name))));
            return null;
        }

        if ((map["column"] is null) == (map["value"] is null))
        {
            problems.Add(new ReadingProblem("Each entry names either a column or a value that all rows share.", name.Span, "Write `column: …`, or `value: …`."));
            return null;
        }

        var (unit, form) = UnitOf(map, quantity, problems);
        var header = quantity.Form == CellForm.Grid ? LengthUnit(map, problems) : null;
        return new ColumnMapping(kind.Of(quantity.Name), quantity, map.Text("column"), map.Text("value"), unit, form, WordsOf(map, quantity, problems), name.Span)
        {
            LastColumn = map.Text("last_column"),
            HeaderUnit = header,
        };
    }

    private static Unit? LengthUnit(MapToken map, List<ReadingProblem> problems)
    {
        if (UnitTable.Find(map.Text("header_unit") ?? string.Empty) is { Dimension: Dimension.Length } unit)
        {
            return unit;
        }

        problems.Add(new ReadingProblem("A grid needs the unit of the offsets in its header.", map["quantity"]!.Span, "Add `header_unit: m` or `header_unit: ft`."));
        return null;
    }

    private static (Unit? Unit, StationForm Form) UnitOf(MapToken map, RowQuantity quantity, List<ReadingProblem> problems)
    {
        if (quantity.Form is not (CellForm.Number or CellForm.Station or CellForm.Grid))
        {
            return (null, StationForm.Plain);
        }

        var unit = map["unit"] as ScalarToken;
        switch (unit?.Text)
        {
            case "km+m" when quantity.Form == CellForm.Station:
                return (UnitTable.Find("m"), StationForm.KilometresAndMetres);
            case "100ft+ft" when quantity.Form == CellForm.Station:
                return (UnitTable.Find("ft"), StationForm.HundredsOfFeet);
            case { } text when UnitTable.Find(text) is { } known && known.Dimension == quantity.Dimension:
                return (known, StationForm.Plain);
            default:
                var units = string.Join(", ", UnitTable.Of(quantity.Dimension).Select(one => one.Spelling));
                var more = quantity.Form == CellForm.Station ? ", km+m for 12+500, 100ft+ft for 118+50" : string.Empty;
                problems.Add(new ReadingProblem(
                    unit is null ? $"The mapping does not say the unit of `{quantity.Name}`." : $"{TokenNames.Quote(unit.Text)} is no unit of `{quantity.Name}`.",
                    (unit ?? map["quantity"]!).Span, $"Write one of: {units}{more}."));
                return (null, StationForm.Plain);
        }
    }

    private static IReadOnlyDictionary<string, string> WordsOf(MapToken map, RowQuantity quantity, List<ReadingProblem> problems)
    {
        var words = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var entry in map.Map("words")?.Entries ?? [])
        {
            if (entry.Value is ScalarToken value && (quantity.Form != CellForm.Word || quantity.Words.Contains(value.Text, StringComparer.Ordinal)))
            {
                words[entry.Key.Text] = value.Text;
            }
            else
            {
                problems.Add(new ReadingProblem($"`{quantity.Name}` has no word {TokenNames.Quote((entry.Value as ScalarToken)?.Text ?? string.Empty)}.", entry.Value.Span, $"Its words are {string.Join(", ", quantity.Words)}."));
            }
        }

        return words;
    }

    // An offset is a zone that never changes; a name is looked up in the table of zones that the library carries.
    internal static DateTimeZone? Zone(ScalarToken? token, List<ReadingProblem> problems)
    {
        if (token is null)
        {
            return null;
        }

        if (token.Text is "UTC")
        {
            return DateTimeZone.Utc;
        }

        if (ScalarTexts.Zone(token.Text) is { } offset)
        {
            return DateTimeZone.ForOffset(Offset.FromTimeSpan(offset));
        }

        var zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(token.Text);
        if (zone is null)
        {
            problems.Add(new ReadingProblem($"There is no zone {TokenNames.Quote(token.Text)}.", token.Span, Near(token.Text, DateTimeZoneProviders.Tzdb.Ids) + " An offset such as `+02:00` will do, too."));
        }

        return zone;
    }

    private static string Near(string name, IEnumerable<string> known) =>
        NearestNames.Of(name, known) is { Count: > 0 } near ? NearestNames.Asked(near) : known.Count() < 40 ? $"Known are {string.Join(", ", known)}." : "Check the spelling.";
}
