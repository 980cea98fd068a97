using System.Security.Cryptography;
using System.Text;
using Laygate.Checking.Importing;
using Laygate.Model.Plans;
using Laygate.Reading.Imports;
using Laygate.Reading.Parts;
using Laygate.Reading.Plans;

namespace Laygate.UnitTests.Reading.Imports;

/// <summary>Lists of a spreadsheet become entries of a plan, as their mapping declares them; one bad row, and nothing is written.</summary>
public sealed class TableImportTests
{
    internal const string Head = "format: 1\nencoding: utf-8\ndelimiter: semicolon\ndecimal_mark: comma\n";

    private const string Weather = Head + """
        dates: day-month-year
        zone: Europe/Berlin
        columns:
          - { column: Zeit, quantity: at }
          - { column: Luft, quantity: air, unit: °C }
          - { column: Wind, quantity: wind, unit: m/s }
          - { column: Regen, quantity: rain_chance, unit: "%" }
          - { column: Wolken, quantity: cloud_cover, unit: "%" }
        """;

    private const string Hours = "Zeit;Luft;Wind;Regen;Wolken\n";

    internal static readonly PlanReader Reader = new();

    // The clocks of central Europe go back at 03:00 summer time on the last Sunday of October: 2026-10-25 (Directive 2000/84/EC, article 3, recalled).
    [Fact]
    public void Hours_over_midnight_and_the_change_of_clock_stand_with_their_offsets()
    {
        var import = Import("weather", Hours + "24.10.2026 23:00;9,1;3;0;50\n25.10.2026 00:00;8,4;3,0;5;60\n25.10.2026 01:00;8,1;3,5;5;62,5\n25.10.2026 02:00;7,9;3;10;70\n25.10.2026 02:00;7,6;3;10;80\n25.10.2026 03:00;7,4;2,5;10;90\n", Weather);
        var plan = Plan(ImportText.Write(import));
        Assert.Equal(
            ["24T23:00+02", "25T00:00+02", "25T01:00+02", "25T02:00+02", "25T02:00+01", "25T03:00+01"],
            plan.Weather!.Hours.Select(hour => $"{hour.At.Local:dd'T'HH:mm}+{hour.At.Offset!.Value.Hours:00}"),
            StringComparer.Ordinal);
        Assert.Equal(8.4, plan.Weather.Hours[1].Air!.Number);

        // 62.5 % and 70 % of the sky are 5 and 5.6 eighths.
        Assert.Equal([4, 5, 5, 6, 6, 7], plan.Weather.Hours.Select(hour => hour.CloudEighths!.Value));
        Assert.Equal("w.csv", plan.Weather.Imported!.File);
        Assert.Equal(import.Hash, plan.Weather.Imported.Sha256);
    }

    [Theory]
    [InlineData("25.10.2026 01:00;8;3;5;60\n25.10.2026 02:00;8;3;5;60\n25.10.2026 03:00;8;3;5;60\n", 3, 1, "happens twice")]
    [InlineData("28.03.2027 01:00;8;3;5;60\n28.03.2027 02:00;8;3;5;60\n", 3, 1, "put forward over this time")]
    [InlineData("25.10.2026 01:00;8;3;5;60\n25.10.2026 00:00;8;3;5;60\n", 3, 1, "must start after the one above it")]
    [InlineData("25.10.2026 01:00;8.1;3;5;60\n", 2, 18, "decimal comma")]
    [InlineData("25.10.2026 01:00;=1+1;3;5;60\n", 2, 18, "is a formula")]
    [InlineData("25.10.2026 01:00;#REF!;3;5;60\n", 2, 18, "shows the error")]
    [InlineData("25.10.2026 01:00;99;3;5;60\n", 2, 18, "never above 60")]
    [InlineData("25.10.2026 01:00;9;-3;5;60\n", 2, 20, "wind")]
    [InlineData("2026-10-25 01:00;9;3;5;60\n", 2, 1, "day, month, year")]
    [InlineData("25.10.2026 01:00:30;9;3;5;60\n", 2, 1, "has seconds")]
    [InlineData(";9;3;5;60\n", 2, 1, "There is no Start of the hour")]
    [InlineData("", 1, 1, "The list has no rows")]
    public void A_bad_row_is_named_and_nothing_is_written(string rows, int line, int column, string why)
    {
        var import = Import("weather", Hours + rows, Weather);
        Assert.Empty(import.Entries);
        var problem = import.Problems.First(one => one.Message.Contains(why, StringComparison.Ordinal));
        Assert.Equal(("w.csv", line, column), (problem.File, problem.Position!.Line, problem.Position.Column));
        Assert.DoesNotContain("the others are kept", problem.Hint ?? string.Empty, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_cell_states_nothing()
    {
        var hour = Assert.Single(Plan(ImportText.Write(Import("weather", Hours + "25.10.2026 01:00;9;;5;\n", Weather))).Weather!.Hours);
        Assert.Equal((9.0, null, 5.0, null), (hour.Air!.Number, hour.Wind?.Number, hour.RainChance!.Number, hour.CloudEighths));
    }

    [Theory]
    [InlineData("Zeit,Luft,Wind,Regen,Wolken\n", "divided by commas")]
    [InlineData("Zeit;Luft;Luft;Regen;Wolken\n", "Two columns are called `Luft`")]
    [InlineData("Zeit;Lufttemperatur;Wind;Regen;Wolken\n", "no column `Luft`")]
    public void A_header_that_is_not_the_declared_one_is_refused(string header, string why)
    {
        var import = Import("weather", header + "25.10.2026 01:00;9;3;5;60\n", Weather);
        Assert.Contains(import.Problems, problem => $"{problem.Message} {problem.Hint}".Contains(why, StringComparison.Ordinal));
    }

    [Fact]
    public void A_mark_at_the_beginning_of_the_text_is_no_part_of_the_first_name()
    {
        var text = Encoding.UTF8.GetBytes("\uFEFF" + Hours + "25.10.2026 01:00;9;3;5;60\n");
        var import = TableImport.Read("weather", "w.csv", text, "m.yaml", Encoding.UTF8.GetBytes(Weather), Reader);
        Assert.Equal("9 °C", Assert.Single(import.Entries)["air"]);
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(text)), import.Hash);
    }

    [Theory]
    [InlineData("decimal_mark: comma\n", "", "`decimal_mark`")]
    [InlineData("delimiter: semicolon\n", "", "`delimiter`")]
    [InlineData("zone: Europe/Berlin", "zone: Europe/Berln", "There is no zone")]
    [InlineData("zone: Europe/Berlin\n", "", "in which zone")]
    [InlineData("unit: m/s", "unit: mm", "no unit of `wind`")]
    [InlineData(", unit: m/s", "", "does not say the unit of `wind`")]
    [InlineData("quantity: wind", "quantity: wnd", "have no `wnd`")]
    [InlineData("quantity: at", "quantity: sun, unit: W/m2", "no column is said to hold `at`")]
    public void What_is_not_declared_is_asked_for(string from, string to, string why)
    {
        Assert.Contains(from, Weather, StringComparison.Ordinal);
        var import = Import("weather", Hours + "25.10.2026 01:00;9;3;5;60\n", Weather.Replace(from, to, StringComparison.Ordinal));
        Assert.Contains(import.Problems, problem => problem.File is "m.yaml" && problem.Message.Contains(why, StringComparison.Ordinal));
        Assert.Empty(import.Entries);
    }

    [Fact]
    public void Trucks_become_parts_that_a_plan_uses()
    {
        var import = Import(
            "trucks",
            "Gruppe;Werk;Anzahl;Nutzlast;Thermo;Hin\ntrucks-a;west;9;25,5;ja;31\ntrucks-b;west;4;18;nein;44\n",
            Head + """
            columns:
              - { column: Gruppe, quantity: id }
              - { column: Werk, quantity: plant }
              - { column: Anzahl, quantity: count }
              - { column: Nutzlast, quantity: payload, unit: t }
              - { column: Thermo, quantity: insulated, words: { ja: "yes", nein: "no" } }
              - { column: Hin, quantity: haul_out, unit: min }
              - { value: ac-11, quantity: mix }
            """);
        var trucks = Using(ImportText.Write(import), "supply: { trucks: [trucks-b, { part: trucks-a, count: 8 }] }\n").Supply!.Trucks;
        Assert.Equal((4, 18, false, "ac-11"), (trucks[0].Count!.Value, trucks[0].Payload!.Number, trucks[0].Insulated!.Value, trucks[0].Mix));
        Assert.Equal((8, 25.5, true, 31), (trucks[1].Count!.Value, trucks[1].Payload!.Number, trucks[1].Insulated!.Value, trucks[1].HaulOut!.Number));
        Assert.Equal(import.Hash, trucks[0].Imported!.Sha256);
    }

    [Fact]
    public void A_plant_with_several_mixes_names_them_in_one_cell()
    {
        var import = Import("plants", "id;mixes;out\nwest;ac-11 ac-16;240\n", Head + "columns:\n  - { column: id, quantity: id }\n  - { column: mixes, quantity: mixes }\n  - { column: out, quantity: nameplate, unit: t/h }\n");
        var plant = Assert.Single(Using(ImportText.Write(import), "supply: { plants: [west] }\n").Supply!.Plants);
        Assert.Equal(["ac-11", "ac-16"], plant.Mixes, StringComparer.Ordinal);
        Assert.Equal(240, plant.Nameplate!.Number);
    }

    // By hand: T1 and T2 bring 22.4 + 21.9 + 22.6 = 66.9 t in three loads, 22.3 t a load; T9 brings 25.05 t in one.
    [Fact]
    public void Loads_become_groups_of_trucks()
    {
        var import = LoadGroups.OfLoads(
            Import("loads", "truck;plant;mix;net\nT1;west;ac-11;22,4\nT2;west;ac-11;21,9\nT9;east;ac-16;25,05\nT1;west;ac-11;22,6\n", Head + "columns:\n  - { column: truck, quantity: truck }\n  - { column: plant, quantity: plant }\n  - { column: mix, quantity: mix }\n  - { column: net, quantity: payload, unit: t }\n"),
            Reader);
        Assert.Equal(["loads-1 west ac-11 2 22.3 t", "loads-2 east ac-16 1 25.05 t"], import.Entries.Select(entry => $"{entry["id"]} {entry["plant"]} {entry["mix"]} {entry["count"]} {entry["payload"]}"), StringComparer.Ordinal);
        Assert.Contains("parts: 1\ntrucks:\n  - id: loads-1\n", ImportText.Write(import), StringComparison.Ordinal);

        // A plant that is no id of a plan cannot stand in one.
        var odd = LoadGroups.OfLoads(Import("loads", "plant;net\nWerk West;22,4\n", Head + "columns:\n  - { column: plant, quantity: plant }\n  - { column: net, quantity: payload, unit: t }\n"), Reader);
        Assert.Equal(2, Assert.Single(odd.Problems).Position!.Line);
    }

    [Theory]
    [InlineData("=HYPERLINK(\"http://x\")")]
    [InlineData("@SUM(A1)")]
    [InlineData("+cmd|' /C calc'!A0")]
    [InlineData("-2+3+cmd")]
    public void A_formula_is_never_copied(string cell)
    {
        var import = Import("plants", $"id;spare\nwest;\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"\n", Head + "columns:\n  - { column: id, quantity: id }\n  - { column: spare, quantity: spare }\n");
        Assert.Contains("is a formula", Assert.Single(import.Problems).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_that_YAML_would_take_for_something_else_is_written_in_quotes()
    {
        foreach (var text in new[] { "on # hold: {x}", "null", "1e5", "*a", "\\\"quoted\\\"", "a: b", "ä % &", "0x10" })
        {
            var import = Import("plants", $"id;spare\nwest;{text}\n", Head + "columns:\n  - { column: id, quantity: id }\n  - { column: spare, quantity: spare }\n");
            Assert.Empty(import.Problems);
            Assert.Equal(text, Assert.Single(Using(ImportText.Write(import), "supply: { plants: [west] }\n").Supply!.Plants).Spare);
        }
    }

    internal static Plan Plan(string section)
    {
        var read = Reader.Read("p.yaml", Encoding.UTF8.GetBytes("format: 1\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\n" + section), new NoPartFiles());
        Assert.Empty(read.Problems);
        return read.Plans[0].Plan;
    }

    private static Plan Using(string parts, string section)
    {
        var read = Reader.Read("p.yaml", Encoding.UTF8.GetBytes("format: 1\nuses: [parts.yaml]\nplan: { id: p, stage: concept }\ncourses: [{ id: c, mix: m, thickness: 45 mm }]\n" + section), new OneFile(parts));
        Assert.Empty(read.Problems);
        return read.Plans[0].Plan;
    }

    private static Import Import(string kind, string list, string mapping) => TableImport.Read(kind, "w.csv", Encoding.UTF8.GetBytes(list), "m.yaml", Encoding.UTF8.GetBytes(mapping), Reader);

    private sealed class OneFile(string text) : IPartFiles
    {
        public PartText Read(string from, string name) => new(name, Encoding.UTF8.GetBytes(text));
    }
}
