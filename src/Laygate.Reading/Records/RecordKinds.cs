using Laygate.Model.Measures;
using Laygate.Model.Records;

namespace Laygate.Reading.Records;

/// <summary>What a cell holds.</summary>
internal enum CellForm
{
    /// <summary>Free text.</summary>
    Text,

    /// <summary>One word of a closed list.</summary>
    Word,

    /// <summary>A whole number.</summary>
    Count,

    /// <summary>A number in a unit.</summary>
    Number,

    /// <summary>A place along the road.</summary>
    Station,

    /// <summary>A date with a time, or a time.</summary>
    Moment,

    /// <summary>The date of the times of the row.</summary>
    Date,

    /// <summary>One of several columns across the mat.</summary>
    Grid,
}

/// <summary>What a column of a record may hold.</summary>
/// <param name="Name">Its word in a mapping.</param>
/// <param name="Form">Form of the cell.</param>
/// <param name="Meaning">What it is, in a few words.</param>
internal sealed record RowQuantity(string Name, CellForm Form, string Meaning)
{
    /// <summary>Dimension of a number; none for a plain one.</summary>
    public Dimension Dimension { get; init; } = Dimension.None;

    /// <summary>Unit with which a mapping is laid out, metric and US.</summary>
    public (string Metric, string Us) Unit { get; init; } = (string.Empty, string.Empty);

    /// <summary>Words of a closed list.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Whether a row without it is refused.</summary>
    public bool Needed { get; init; }

    /// <summary>Whether the empty file has a column for it.</summary>
    public bool LaidOut { get; init; } = true;
}

/// <summary>One kind of rows.</summary>
/// <param name="Name">Its word in a mapping.</param>
/// <param name="Meaning">What its rows are.</param>
/// <param name="Quantities">What its columns may hold.</param>
internal sealed record RecordKind(string Name, string Meaning, IReadOnlyList<RowQuantity> Quantities)
{
    /// <summary>Whether each row is of a later time than the one above it, as hours are: the same time again is then the second one of a night of a change of clock.</summary>
    public bool TimesRise { get; init; }

    /// <summary>Place of a quantity.</summary>
    public int Of(string quantity)
    {
        for (var i = 0; i < Quantities.Count; i++)
        {
            if (string.Equals(Quantities[i].Name, quantity, StringComparison.Ordinal))
            {
                return i;
            }
        }

        throw new ArgumentException($"Rows of {Name} have no {quantity}.", nameof(quantity));
    }
}

/// <summary>The kinds of rows that a record may have, each once; the mapping, the empty files and the page of records are made from this table.</summary>
internal static class RecordKinds
{
    public const string Tickets = RowsOf.Tickets;
    public const string Deliveries = RowsOf.Deliveries;
    public const string Stations = RowsOf.Stations;
    public const string Stops = RowsOf.Stops;
    public const string Temperatures = RowsOf.Temperatures;
    public const string Thermal = RowsOf.Thermal;
    public const string Gauges = RowsOf.Gauges;
    public const string Cores = RowsOf.Cores;
    public const string Dips = RowsOf.Dips;
    public const string Weather = RowsOf.Weather;
    public const string Passes = RowsOf.Passes;
    public const string BondCoat = RowsOf.BondCoat;
    public const string HoldPoints = RowsOf.HoldPoints;

    private static readonly RowQuantity Date = new("date", CellForm.Date, "date of the times of the row, where they have none") { LaidOut = false };
    private static readonly RowQuantity Course = Text("course", "id of the course in the plan");
    private static readonly RowQuantity Station = Along("station", "station");
    private static readonly RowQuantity Offset = Length("offset", "distance from the left edge", ("m", "ft"));

    /// <summary>All kinds.</summary>
    public static IReadOnlyList<RecordKind> All { get; } =
    [
        new(Tickets, "one row for each load that left a plant",
        [
            Needed(Text("ticket", "number of the ticket")), Needed(When("loaded", "when it was loaded or weighed out")), Date, Count("sequence", "running number of the scale"), Text("plant", "id of the plant"),
            Text("vehicle", "the truck"), Text("mix", "id of the mix in the plan"), Course, Mass("gross", "mass of the full truck"), Mass("tare", "mass of the empty truck"), Mass("net", "mass of the mix, as printed"),
            Word("tare_kind", "how the tare was found", "weighed", "stored"), Degrees("temperature", "temperature in the load when it was loaded"), Word("status", "what became of the ticket", "valid", "void", "refused", "returned"),
        ]),
        new(Deliveries, "one row for each load on site",
        [
            Needed(Text("ticket", "number of the ticket")), When("arrived", "when it arrived"), When("started", "when its discharge began"), When("emptied", "when it was empty"), Date, Along("station", "station of the screed when it was empty"),
            Text("run", "id of the run in the plan"), Degrees("temperature", "temperature in the load"), Mass("not_laid", "mass that went back or was thrown away"), Word("status", "whether it was taken", "valid", "refused", "returned"),
        ]),
        new(Stations, "one row whenever the station of the screed is read",
        [
            Needed(When("at", "when it was read")), Date, Needed(Along("station", "station of the screed")), Text("run", "id of the run in the plan"), Course with { LaidOut = false },
            Length("width", "width that is laid", ("m", "ft")), Mass("on_machine", "mix of the course in feeder, hopper and auger box"),
        ]),
        new(Stops, "one row for each stop of the paver",
        [
            Needed(When("from", "when it began")), When("to", "when it ended; empty while it lasts"), Date, Text("reason", "why"), Along("station", "station"), Text("paver", "id of the paver in the plan"),
        ]),
        new(Temperatures, "one row for each temperature of the mat",
        [
            Needed(When("at", "when it was read")), Date, Needed(Degrees("value", "temperature")), Station, Text("run", "id of the run in the plan") with { LaidOut = false }, Offset, Course, Length("depth", "depth below the surface; 0 for the skin", ("mm", "in")), Text("instrument", "instrument"),
        ]),
        new(Thermal, "one row for each line of readings across the mat",
        [
            When("at", "when it was read"), Date, Needed(Station), new("grid", CellForm.Grid, "temperatures of the skin, one column for each offset") { Dimension = Dimension.Temperature, Unit = ("°C", "°F"), Needed = true },
        ]),
        new(Gauges, "one row for each reading of a density gauge",
        [
            Needed(Text("test", "number of the test")), When("at", "when it was read"), Date, Needed(Number("density", "density as the gauge shows it", Dimension.Density, ("kg/m3", "lb/ft3"))), Station, Offset, Course,
            Text("gauge", "number of the gauge"), Text("core", "number of the core that was cut there"),
        ]),
        new(Cores, "one row for each core, or for each slice of one",
        [
            Needed(Text("core", "number of the core")), When("cut", "when it was cut"), Date, Station, Offset, Course, Word("joint", "whether it was cut over a joint", "yes", "no"), Text("laboratory", "laboratory that tested it, such as contractor or agency") with { LaidOut = false },
            Length("thickness_1", "thickness, first reading", ("mm", "in")), Length("thickness_2", "thickness, second reading", ("mm", "in")), Length("thickness_3", "thickness, third reading", ("mm", "in")),
            Length("thickness_4", "thickness, fourth reading", ("mm", "in")), Mass("dry", "dry mass in air", ("g", "g")), Mass("surface_dry", "mass saturated, surface dry", ("g", "g")), Mass("in_water", "mass in water", ("g", "g")),
            Number("bulk", "bulk density as reported", Dimension.Density, ("kg/m3", "lb/ft3")), Number("maximum", "maximum density of the mix", Dimension.Density, ("kg/m3", "lb/ft3")),
            Number("reference", "reference density of the mix", Dimension.Density, ("kg/m3", "lb/ft3")),
        ]),
        new(Dips, "one row for each thickness taken by dip or by levels",
        [
            Needed(Station), Offset, Course, Length("depth", "thickness", ("mm", "in")), Length("before", "level before laying", ("m", "ft")) with { LaidOut = false }, Length("after", "level after laying", ("m", "ft")) with { LaidOut = false },
            Word("loose", "whether the mat was still loose", "yes", "no"),
        ]),
        new(Weather, "one row for each reading of the weather",
        [
            Needed(When("at", "when it was read")), Date, Degrees("air", "air"), Degrees("surface", "surface of the base"), Number("wind", "wind", Dimension.Speed, ("m/s", "mph")), Length("rain", "rain since the row before", ("mm", "in")),
            Degrees("dew_point", "dew point of the air") with { LaidOut = false },
        ]),
        new(Passes, "one row for each pass of a roller over a place",
        [
            Needed(When("at", "when")), Date, Needed(Text("roller", "id of the roller in the plan")), Station, Count("pass", "number of the pass at this place, one direction"), Degrees("skin", "skin of the mat"),
            Number("density", "density of the mat after the pass", Dimension.Density, ("kg/m3", "lb/ft3")),
        ]),
        new(BondCoat, "one row for each stretch that was sprayed",
        [
            When("at", "when"), Date, Needed(Along("from", "first station")), Needed(Along("to", "last station")), Needed(Length("width", "width", ("m", "ft"))), Mass("mass", "mass that was sprayed", ("kg", "lb")),
            Volume("volume", "volume that was sprayed, as a meter counts it"), Volume("tank_before", "volume in the tank before spraying"), Volume("tank_after", "volume in the tank after it"),
            Degrees("temperature", "temperature in the tank or at the meter") with { LaidOut = false }, Degrees("temperature_after", "temperature in the tank after spraying, where it is another") with { LaidOut = false }, Text("below", "id of the course below which it lies"),
        ]),
        new(HoldPoints, "one row for each release of a hold point",
        [
            Needed(Text("hold_point", "id of the hold point in the plan")), When("at", "when it was released"), Date, Text("by", "who released it"), Text("evidence", "what it rests on, such as the number of a form"),
        ]),
    ];

    /// <summary>The kind of a word; null where there is none.</summary>
    public static RecordKind? Find(string name) => All.FirstOrDefault(kind => string.Equals(kind.Name, name, StringComparison.Ordinal));

    private static RowQuantity Needed(RowQuantity quantity) => quantity with { Needed = true };

    private static RowQuantity Text(string name, string meaning) => new(name, CellForm.Text, meaning);

    private static RowQuantity Count(string name, string meaning) => new(name, CellForm.Count, meaning);

    private static RowQuantity When(string name, string meaning) => new(name, CellForm.Moment, meaning);

    private static RowQuantity Word(string name, string meaning, params IReadOnlyList<string> words) => new(name, CellForm.Word, meaning) { Words = words };

    private static RowQuantity Along(string name, string meaning) => new(name, CellForm.Station, meaning) { Dimension = Dimension.Length, Unit = ("m", "ft") };

    private static RowQuantity Number(string name, string meaning, Dimension dimension, (string Metric, string Us) unit) => new(name, CellForm.Number, meaning) { Dimension = dimension, Unit = unit };

    private static RowQuantity Length(string name, string meaning, (string Metric, string Us) unit) => Number(name, meaning, Dimension.Length, unit);

    private static RowQuantity Volume(string name, string meaning) => Number(name, meaning, Dimension.Volume, ("L", "gal")) with { LaidOut = false };

    private static RowQuantity Degrees(string name, string meaning) => Number(name, meaning, Dimension.Temperature, ("°C", "°F"));

    private static RowQuantity Mass(string name, string meaning) => Mass(name, meaning, ("t", "lb"));

    private static RowQuantity Mass(string name, string meaning, (string Metric, string Us) unit) => Number(name, meaning, Dimension.Mass, unit);
}
