using System.Text;
using Laygate.Model.Records;
using Laygate.Reading.Records;

namespace Laygate.UnitTests.Reading.Records;

/// <summary>A bad row is refused with its place and the rest is kept; nothing is guessed, nothing is lost without a word.</summary>
public sealed class RecordReaderTests
{
    private const string Head = "ticket,loaded,gross,tare,net,status\n";

    [Fact]
    public void A_ticket_becomes_a_load()
    {
        var file = Shift.ReadTickets("0017,21:15,41.26,15.94,25.32,valid");
        var load = Assert.Single(Shift.Of(file).Loads);
        // Derived: 41.26 t - 15.94 t = 25.32 t; the leading zeros are part of the number.
        Assert.Equal(25_320, load.Net, 1e-6);
        Assert.Equal("0017", load.Ticket);
        Assert.Equal(new DateTimeOffset(2027, 5, 14, 21, 15, 0, TimeSpan.FromHours(2)), load.Loaded);
        Assert.Empty(file.Refused);
    }

    [Fact]
    public void Raw_files_are_named_with_their_hash()
    {
        var raw = Assert.Single(Shift.Of(Shift.Read(Shift.File("t.csv", "load-tickets", Shift.Tickets), ("t.csv", "ticket,loaded,gross,tare,net,status\n"))).Files);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData("ticket,loaded,gross,tare,net,status\n"u8)), raw.Hash);
    }

    [Theory]
    [InlineData("1,21:15,41.26,15.94,25;32,valid", 5, "no number with a decimal point")]
    [InlineData("1,21:15,\"41,26\",15.94,25.32,valid", 3, "no number with a decimal point")]
    [InlineData("1,25:15,41.26,15.94,25.32,valid", 2, "no time")]
    [InlineData("1,24:00,41.26,15.94,25.32,valid", 2, "no time")]
    [InlineData("1,23:60,41.26,15.94,25.32,valid", 2, "no time")]
    [InlineData(",21:15,41.26,15.94,25.32,valid", 1, "no number of the ticket")]
    [InlineData("1,21:15,41.26,15.94,25.32,gut", 6, "none of valid, void, refused, returned")]
    [InlineData("1.23E+12,21:15,41.26,15.94,25.32,valid", 1, "digits are lost")]
    [InlineData("1,21:15,=B2+3,15.94,25.32,valid", 3, "is a formula")]
    [InlineData("@SUM(A1),21:15,41.26,15.94,25.32,valid", 1, "is a formula")]
    [InlineData("1,21:15,#REF!,15.94,25.32,valid", 3, "error")]
    public void A_bad_cell_is_refused_with_its_place_and_the_rest_is_kept(string row, int cell, string says)
    {
        var file = Shift.ReadTickets("8,21:10,40.00,16.00,24.00,valid", row, "9,21:20,40.00,16.00,24.00,valid");
        var problem = Assert.Single(file.Refused);
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Equal(("rec/t.csv", 3), (problem.File, problem.Position!.Line));
        Assert.Equal(Column(row, cell), problem.Position.Column);
        Assert.Equal(["8", "9"], Shift.Of(file).Loads.Select(load => load.Ticket), StringComparer.Ordinal);
        Assert.Equal((2, 1), (file.Record!.Files[0].Rows, file.Record.Files[0].Refused));
    }

    [Theory]
    [InlineData("1,21:15,16,16,0,valid")]
    [InlineData("1,21:15,416,16,400,valid")]
    [InlineData("1,21:15,15,16,,valid")]
    public void A_load_that_no_truck_carries_is_refused(string row) =>
        Assert.Contains("cannot be", Assert.Single(Shift.ReadTickets(row).Refused).Message, StringComparison.Ordinal);

    private const string Tank = """
            columns:
              - { column: from, quantity: from, unit: m }
              - { column: to, quantity: to, unit: m }
              - { column: width, quantity: width, unit: m }
              - { column: before, quantity: tank_before, unit: L }
              - { column: after, quantity: tank_after, unit: L }
              - { column: temp, quantity: temperature, unit: °C }
        """;

    [Fact]
    public void Readings_of_a_tank_are_kept_in_its_own_temperature()
    {
        var file = Shift.Read(Shift.File("b.csv", "bond-coat", Tank), ("b.csv", "from,to,width,before,after,temp\n0,300,8,2000,1200,60\n"));
        Assert.Empty(file.Refused);
        Assert.Equal(new TankVolume(2.0, 60, 1.2, 60), Assert.Single(Shift.Of(file).BondCoats).Taken);
    }

    [Theory]
    [InlineData("0,300,8,1200,2000,60", "more after spraying")]
    [InlineData("0,300,8,1200,,60", "read once only")]
    [InlineData("0,300,8,-5,-6,60", "below zero")]
    [InlineData("0,300,8,2000,1200,600", "between 0 and 250")]
    [InlineData("0,300,8,2000,x,60", "no number")]
    public void A_tank_that_cannot_be_is_refused_at_its_line(string row, string says)
    {
        var file = Shift.Read(Shift.File("b.csv", "bond-coat", Tank), ("b.csv", "from,to,width,before,after,temp\n0,300,8,2000,1200,60\n" + row + "\n"));
        var problem = Assert.Single(file.Refused);
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.Equal(("rec/b.csv", 3), (problem.File, problem.Position!.Line));
        Assert.Single(Shift.Of(file).BondCoats);
    }

    [Fact]
    public void A_volume_without_a_temperature_does_not_count_and_is_named()
    {
        var file = Shift.Read(Shift.File("b.csv", "bond-coat", Tank), ("b.csv", "from,to,width,before,after,temp\n0,300,8,2000,1200,\n"));
        Assert.Null(Assert.Single(Shift.Of(file).BondCoats).Taken);
        Assert.Contains("15 °C", Assert.Single(file.Notes).Message, StringComparison.Ordinal);
    }

    // A file and its own copy are one record: each kind of rows keeps what it had, and each repetition is named.
    [Theory]
    [InlineData("stops", "from,to", "from: from,to: to", "21:40,21:52")]
    [InlineData("cores", "core,bulk", "core: core,bulk: bulk@kg/m3", "K1,2310")]
    [InlineData("dips", "station,depth", "station: station@m,depth: depth@mm", "100,41")]
    [InlineData("weather", "at,air", "at: at,air: air@°C", "22:00,9")]
    [InlineData("bond-coat", "from,to,width,mass", "from: from@m,to: to@m,width: width@m,mass: mass@kg", "0,100,3.5,100")]
    [InlineData("bond-coat", "from,to,width,volume,temp", "from: from@m,to: to@m,width: width@m,volume: volume@L,temp: temperature@°C", "0,100,3.5,100,15")]
    [InlineData("gauge-readings", "test,density", "test: test,density: density@kg/m3", "G1,2310")]
    [InlineData("mat-temperatures", "at,value,station", "at: at,value: value@°C,station: station@m", "22:00,120,100")]
    [InlineData("thermal-profile", "station,a,b", "station: station@m,grid: grid", "100,140,141")]
    [InlineData("roller-passes", "at,roller,pass", "at: at,roller: roller,pass: pass", "22:00,r1,3")]
    public void A_row_that_stands_twice_counts_once(string kind, string header, string columns, string row)
    {
        var mapped = string.Join('\n', columns.Split(',').Select(column => column.Split(": ")).Select(pair => pair[0] is "grid"
            ? "      - { column: a, quantity: grid, unit: °C, last_column: b, header_unit: m }"
            : $"      - {{ column: {pair[0]}, quantity: {pair[1].Split('@')[0]}{(pair[1].Contains('@', StringComparison.Ordinal) ? ", unit: " + pair[1].Split('@')[1] : string.Empty)} }}"));
        header = kind is "thermal-profile" ? "station,0.5,1.5" : header;
        mapped = mapped.Replace("column: a, quantity: grid", "column: \"0.5\", quantity: grid", StringComparison.Ordinal).Replace("last_column: b", "last_column: \"1.5\"", StringComparison.Ordinal);
        var mapping = Shift.File("r.csv", kind, "    columns:\n" + mapped) + Shift.File("copy.csv", kind, "    columns:\n" + mapped);
        var file = Shift.Read(mapping, ("r.csv", $"{header}\n{row}\n{row}\n"), ("copy.csv", $"{header}\n{row}\n"));
        Assert.Empty(file.Refused);
        var record = Shift.Of(file);
        Assert.Equal(1, record.Stops.Count + record.Cores.Count + record.Dips.Count + record.Weather.Count + record.BondCoats.Count + record.Gauges.Count + record.Temperatures.Count + record.Thermal.Count + record.Passes.Count);
        Assert.Equal([("rec/r.csv", 3), ("rec/copy.csv", 2)], file.Notes.Where(note => note.Message.Contains("again", StringComparison.Ordinal)).Select(note => (note.File, note.Position!.Line)));
    }

    /// <summary>Rows are ordered by the time that stands first in them: a stop that ends before an earlier one does is no slip.</summary>
    [Theory]
    [InlineData("21:40,21:52\n21:45,21:50\n", false)]
    [InlineData("21:45,21:50\n21:40,21:52\n", true)]
    public void The_first_time_of_a_row_tells_the_order(string rows, bool backwards)
    {
        const string columns = "    columns:\n      - { column: from, quantity: from }\n      - { column: to, quantity: to }";
        var file = Shift.Read(Shift.File("s.csv", "stops", columns), ("s.csv", "from,to\n" + rows));
        Assert.Equal(2, Shift.Of(file).Stops.Count);
        Assert.Equal(backwards, file.Notes.Any(note => note.Message.StartsWith("Times run back on 1 row, first here.", StringComparison.Ordinal)));
    }

    [Fact]
    public void Passes_without_a_number_may_be_two_of_one_minute()
    {
        const string columns = "    columns:\n      - { column: at, quantity: at }\n      - { column: roller, quantity: roller }";
        Assert.Equal(2, Shift.Of(Shift.Read(Shift.File("r.csv", "roller-passes", columns), ("r.csv", "at,roller\n22:00,r1\n22:00,r1\n"))).Passes.Count);
    }

    [Fact]
    public void A_wrong_delimiter_is_said_with_the_right_one()
    {
        var file = Shift.Read(Shift.File("t.csv", "load-tickets", Shift.Tickets), ("t.csv", Head.Replace(',', ';') + "1;21:15;41.26;15.94;25.32;valid\n"));
        Assert.Contains("divided by semicolons", file.Refused[0].Hint, StringComparison.Ordinal);
        Assert.Empty(Shift.Of(file).Loads);
    }

    [Fact]
    public void A_missing_column_and_one_that_stands_twice_are_said()
    {
        Assert.Contains("no column `net`", Shift.Read(Shift.File("t.csv", "load-tickets", Shift.Tickets), ("t.csv", "ticket,loaded,gross,tare,nett,status\n")).Refused[0].Message, StringComparison.Ordinal);
        Assert.Contains("Two columns are called `gross`", Shift.Read(Shift.File("t.csv", "load-tickets", Shift.Tickets), ("t.csv", "ticket,loaded,gross,tare,net,gross,status\n")).Refused[0].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\uFEFF" + Head + "1,21:15,41.26,15.94,25.32,valid")]
    [InlineData(Head + "1,21:15,41.26,15.94,25.32,valid")]
    [InlineData("sep=,\n" + Head + "1,21:15,41.26,15.94,25.32,valid\n")]
    [InlineData("ticket,loaded,gross,tare,net,status\r\n1,21:15,41.26,15.94,25.32,valid\r\n\r\n")]
    [InlineData("ticket,loaded,gross,tare,net,status\r1,21:15,41.26,15.94,25.32,valid\r")]
    [InlineData("ticket,loaded,gross,tare,net,status\n\"1\",21:15,\u00A041.26 ,15.94,\"25.32\",\"valid\"\n,,,,,\n")]
    public void Marks_line_ends_quotes_and_blanks_change_nothing(string text)
    {
        var file = Shift.Read(Shift.File("t.csv", "load-tickets", Shift.Tickets), ("t.csv", text));
        Assert.Empty(file.Refused);
        Assert.Equal("1", Assert.Single(Shift.Of(file).Loads).Ticket);
    }

    [Fact]
    public void A_quotation_mark_that_nobody_closes_takes_no_rows_without_a_word()
    {
        var rows = Enumerable.Range(1, 60).Select(i => $"{i},21:15,41.26,15.94,25.32,{(i == 5 ? "\"valid" : "valid")}");
        var file = Shift.ReadTickets([.. rows]);
        Assert.Equal(4, Shift.Of(file).Loads.Count);
        Assert.Contains("lines 6 to 61 are not read", Assert.Single(file.Refused).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("windows-1252")]
    public void Declared_encodings_are_read_and_others_refused(string encoding)
    {
        var columns = Shift.Tickets.Replace("column: status", "column: Gültig", StringComparison.Ordinal);
        var text = "ticket,loaded,gross,tare,net,Gültig\n1,21:15,41.26,15.94,25.32,valid\n";
        byte[] bytes = encoding is "utf-16" ? [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)] : Encoding.Latin1.GetBytes(text);
        var how = $"encoding: {encoding}, delimiter: comma, decimal_mark: point, zone: +02:00, day: 2027-05-14";
        Assert.Single(Shift.Of(Shift.ReadBytes(Shift.File("t.csv", "load-tickets", columns, how), ("t.csv", bytes))).Loads);
        var wrong = Shift.ReadBytes(Shift.File("t.csv", "load-tickets", columns), ("t.csv", bytes));
        Assert.Contains("encoding", $"{wrong.Refused[0].Message} {wrong.Refused[0].Hint}", StringComparison.Ordinal);
    }

    /// <summary>A number means what its file declares: 1.234 is 1234 or 1.234, never decided from the cell.</summary>
    [Theory]
    [InlineData("comma", "point", "25.320,5", 25320.5)]
    [InlineData("comma", "point", "25320,5", 25320.5)]
    [InlineData("comma", "none", "25,32", 25.32)]
    [InlineData("point", "comma", "25,320.5", 25320.5)]
    [InlineData("point", "apostrophe", "25'320", 25320.0)]
    [InlineData("point", "space", "25\u202F320", 25320.0)]
    [InlineData("point", "none", "1.234", 1.234)]
    [InlineData("comma", "point", "1.234", 1234.0)]
    [InlineData("comma", "point", "25.3", null)]
    [InlineData("comma", "none", "25.3", null)]
    public void Numbers_are_read_as_declared(string mark, string grouping, string cell, double? expected)
    {
        var mapping = Shift.File("t.csv", "load-tickets", "    columns:\n      - { column: n, quantity: ticket }\n      - { column: t, quantity: loaded }\n      - { column: m, quantity: net, unit: kg }\n",
            $"encoding: utf-8, delimiter: semicolon, decimal_mark: {mark}, grouping: {grouping}, zone: UTC, day: 2027-05-14");
        var file = Shift.Read(mapping, ("t.csv", $"n;t;m\n1;21:15;{cell}\n"));
        Assert.Equal(expected is { } known ? [known] : [], Shift.Of(file).Loads.Select(load => load.Net));
        Assert.Equal(expected is null ? 1 : 0, file.Refused.Count);
    }

    [Theory]
    [InlineData("km+m", "12+500", 12500.0)]
    [InlineData("100ft+ft", "118+50", 11850 * 0.3048)]
    [InlineData("km", "12.5", 12500.0)]
    [InlineData("m", "12+500", null)]
    [InlineData("km+m", "12500", null)]
    public void Stations_are_read_as_declared(string unit, string cell, double? expected)
    {
        var file = Shift.Read(Shift.File("s.csv", "stations", $"    columns:\n      - {{ column: t, quantity: at }}\n      - {{ column: s, quantity: station, unit: {unit} }}\n"), ("s.csv", $"t,s\n21:15,{cell}\n"));
        Assert.Equal(expected is { } known ? [known] : [], Shift.Of(file).Stations.Select(reading => Math.Round(reading.Station, 6)));
    }

    [Theory]
    [InlineData("day-month-year", "03/04/2027 21:15", 4)]
    [InlineData("month-day-year", "03/04/2027 9:15 PM", 3)]
    [InlineData("year-month-day", "2027-04-03T21:15:00+02:00", 4)]
    [InlineData("month-day-year", "13/04/2027 21:15", 0)]
    public void Dates_are_read_in_the_declared_order(string order, string cell, int month)
    {
        var how = $"encoding: utf-8, delimiter: comma, decimal_mark: point, zone: +02:00, dates: {order}";
        var file = Shift.Read(Shift.File("s.csv", "stations", "    columns:\n      - { column: t, quantity: at }\n      - { column: s, quantity: station, unit: m }\n", how), ("s.csv", $"t,s\n{cell},5\n"));
        Assert.Equal(month > 0 ? [month] : [], Shift.Of(file).Stations.Select(reading => reading.At.Month));
    }

    [Fact]
    public void Two_hundred_thousand_rows_are_read_and_what_is_beyond_is_said()
    {
        var text = new StringBuilder("t,s\n");
        for (var i = 0; i <= 200_000; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"21:15,{i}\n");
        }

        var file = Shift.Read(Shift.File("s.csv", "stations", "    columns:\n      - { column: t, quantity: at }\n      - { column: s, quantity: station, unit: m }\n"), ("s.csv", text.ToString()));
        Assert.Equal(200_000, Shift.Of(file).Stations.Count);
        var problem = Assert.Single(file.Refused);
        Assert.Contains("more than 200,000 rows", problem.Message, StringComparison.Ordinal);
        Assert.Equal(200_002, problem.Position!.Line);
    }

    [Theory]
    [InlineData("holds: tickets", "There are no rows called `tickets`")]
    [InlineData("quantity: grosss", "have no `grosss`")]
    [InlineData("unit: lbs", "no unit of `gross`")]
    [InlineData("zone: Europe/Berlinn", "no zone")]
    [InlineData("quantity: tare,", "The mapping does not say the unit of `tare`")]
    public void What_a_mapping_does_not_declare_is_asked_for(string change, string says)
    {
        var mapping = Shift.File("t.csv", "load-tickets", Shift.Tickets);
        mapping = change switch
        {
            "holds: tickets" => mapping.Replace("holds: load-tickets", change, StringComparison.Ordinal),
            "quantity: grosss" => mapping.Replace("quantity: gross", change, StringComparison.Ordinal),
            "unit: lbs" => mapping.Replace("quantity: gross, unit: t", $"quantity: gross, {change}", StringComparison.Ordinal),
            "quantity: tare," => mapping.Replace("quantity: tare, unit: t", "quantity: tare", StringComparison.Ordinal),
            _ => mapping.Replace("zone: +02:00", change, StringComparison.Ordinal),
        };
        var file = Shift.Read(mapping, ("t.csv", Head));
        Assert.Null(file.Record);
        Assert.Contains(file.Refused, problem => problem.Message.Contains(says, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_kind_of_rows_is_read_from_an_empty_record()
    {
        var kinds = Shift.Read(Shift.File("x.csv", "nothing", "    columns: [{ column: a, quantity: b }]")).Refused[0].Hint!;
        Assert.All((string[])["load-tickets", "deliveries", "stations", "stops", "mat-temperatures", "thermal-profile", "gauge-readings", "cores", "dips", "weather", "roller-passes", "bond-coat", "hold-points"],
            kind => Assert.Contains(kind, kinds, StringComparison.Ordinal));
    }

    [Fact]
    public void A_grid_knows_its_offsets_and_its_gaps()
    {
        var file = Shift.Read(Shift.File("g.csv", "thermal-profile",
            "    no_data: [\"-999\"]\n    columns:\n      - { column: s, quantity: station, unit: m }\n      - { column: \"0.5\", last_column: \"1.5\", header_unit: m, quantity: grid, unit: °C }\n"), ("g.csv", "s,0.5,1.0,1.5,who\n7,150,-999,,me\n"));
        var line = Assert.Single(Shift.Of(file).Thermal);
        Assert.Equal([0.5, 1.0, 1.5], line.Offsets);
        Assert.Equal([150, double.NaN, double.NaN], line.Skin);
    }

    private static int Column(string row, int cell)
    {
        var (at, quoted) = (1, false);
        for (var i = 0; cell > 1; i++, at++)
        {
            quoted ^= row[i] == '"';
            cell -= row[i] == ',' && !quoted ? 1 : 0;
        }

        return at;
    }

    // Recalled: AASHTO T 166 field procedure, worked example: 4833.6 g, 4842.4 g and 2881.3 g in water give 2.465 and 0.45 %. The second row by hand: it absorbs 60 / 2000 = 3 %.
    [Fact]
    public void A_core_that_was_weighed_in_water_gets_its_density_unless_it_absorbs_too_much()
    {
        const string Mapping = """
            format: 1
            record: { plan: small, water: 997 kg/m3 }
            files:
              - file: cores.csv
                holds: cores
                encoding: utf-8
                delimiter: comma
                decimal_mark: point
                columns:
                  - { column: core, quantity: core }
                  - { column: a, quantity: dry, unit: g }
                  - { column: b, quantity: surface_dry, unit: g }
                  - { column: c, quantity: in_water, unit: g }
            """;
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal)
        {
            ["record.yaml"] = System.Text.Encoding.UTF8.GetBytes(Mapping),
            ["cores.csv"] = "core,a,b,c\n1,4833.6,4842.4,2881.3\n2,4700,4760,2760\n"u8.ToArray(),
        };
        var read = RecordReader.Read(new Laygate.Reading.RuleFiles.RuleFolderInMemory("rec", files));
        Assert.Equal(2.46474 * 997, read.Record!.Cores[0].Bulk!.Value, 0.005);
        Assert.Null(read.Record.Cores[1].Bulk);
        Assert.Contains("absorbs 3.0 %", Assert.Single(read.Notes).Message, StringComparison.Ordinal);
    }
}
