using System.Globalization;
using Laygate.Engineering.Acceptance;
using Laygate.Model.Records;

namespace Laygate.Reading.Records;

/// <summary>Rows of each kind as the record has them; those that have a time stand in its order.</summary>
internal static class RecordMapper
{
    public static ShiftRecord Map(RecordMapping mapping, IReadOnlyList<Load> loads, Func<string, IReadOnlyList<RecordRow>> rows, Action<RowPlace, string, string?> refuse, Action<RowPlace, string> note) => new()
    {
        Plan = mapping.Plan,
        About = mapping.About,
        IsTrial = mapping.IsTrial,
        Laboratory = mapping.Laboratory,
        Uncertainty = mapping.Uncertainty,
        Loads = loads,
        Stations = InTime(rows(RecordKinds.Stations).Select(Station), reading => reading.At, reading => reading.Place),
        Stops = InTime(rows(RecordKinds.Stops).Where(row => Runs(row, refuse)).Select(Stop), stop => stop.From, stop => stop.Place),
        Temperatures = InTime(rows(RecordKinds.Temperatures).Select(Temperature), reading => reading.At, reading => reading.Place),
        Thermal = [.. rows(RecordKinds.Thermal).Select(Thermal)],
        Gauges = [.. rows(RecordKinds.Gauges).Select(Gauge)],
        Cores = [.. rows(RecordKinds.Cores).Select(row => Weighed(CoreOf(row), mapping.Water, note))],
        Dips = [.. rows(RecordKinds.Dips).Select(row => DipOf(row, refuse)).OfType<Dip>()],
        Weather = InTime(rows(RecordKinds.Weather).Select(Weather), reading => reading.At, reading => reading.Place),
        Passes = InTime(rows(RecordKinds.Passes).Select(Pass), reading => reading.At, reading => reading.Place),
        BondCoats = [.. rows(RecordKinds.BondCoat).Select(row => Coat(row, refuse, note)).OfType<BondCoatReading>()],
        HoldPoints = [.. rows(RecordKinds.HoldPoints).Select(HoldPoint).OrderBy(release => release.At).ThenBy(release => release.Place.File, StringComparer.Ordinal).ThenBy(release => release.Place.Line)],
    };

    // Equal times keep the order of their files and lines, so that the order of rows in a file changes nothing.
    private static IReadOnlyList<T> InTime<T>(IEnumerable<T> rows, Func<T, DateTimeOffset> at, Func<T, RowPlace> place) =>
        [.. rows.OrderBy(at).ThenBy(row => place(row).File, StringComparer.Ordinal).ThenBy(row => place(row).Line)];

    private static StationReading Station(RecordRow row) => new(row.Place, row.When("at")!.Value, row.Number("station")!.Value)
    {
        Run = row.Text("run"),
        Course = row.Text("course"),
        Width = row.Number("width"),
        OnMachine = row.Number("on_machine"),
    };

    private static bool Runs(RecordRow row, Action<RowPlace, string, string?> refuse)
    {
        if (row.When("to") is not { } to || to >= row.When("from"))
        {
            return true;
        }

        refuse(row.Place, "The stop ends before it begins.", "Correct one of the two times.");
        return false;
    }

    private static PaverStop Stop(RecordRow row) => new(row.Place, row.When("from")!.Value, row.When("to"))
    {
        Reason = row.Text("reason"),
        Station = row.Number("station"),
        Paver = row.Text("paver"),
    };

    private static MatTemperature Temperature(RecordRow row) => new(row.Place, row.When("at")!.Value, row.Number("value")!.Value)
    {
        Station = row.Number("station"),
        Run = row.Text("run"),
        Offset = row.Number("offset"),
        Course = row.Text("course"),
        Depth = row.Number("depth"),
        Instrument = row.Text("instrument"),
    };

    private static ThermalLine Thermal(RecordRow row)
    {
        var (offsets, values) = row.Grid("grid");
        return new ThermalLine(row.Place, row.Number("station")!.Value, values) { At = row.When("at"), Offsets = offsets };
    }

    private static GaugeReading Gauge(RecordRow row) => new(row.Place, row.Text("test")!, row.Number("density")!.Value)
    {
        At = row.When("at"),
        Station = row.Number("station"),
        Offset = row.Number("offset"),
        Course = row.Text("course"),
        Gauge = row.Text("gauge"),
        Core = row.Text("core"),
    };

    private static Core CoreOf(RecordRow row) => new(row.Place, row.Text("core")!)
    {
        Cut = row.When("cut"),
        Station = row.Number("station"),
        Offset = row.Number("offset"),
        Course = row.Text("course"),
        AtJoint = row.Text("joint") is "yes",
        Laboratory = row.Text("laboratory"),
        Thickness = [.. new[] { "thickness_1", "thickness_2", "thickness_3", "thickness_4" }.Select(row.Number).OfType<double>()],
        Dry = row.Number("dry"),
        SurfaceDry = row.Number("surface_dry"),
        InWater = row.Number("in_water"),
        Bulk = row.Number("bulk"),
        Maximum = row.Number("maximum"),
        Reference = row.Number("reference"),
    };

    // A density that the laboratory reports stands; else it follows from three weighings, where the method holds for the core.
    private static Core Weighed(Core core, double? water, Action<RowPlace, string> note)
    {
        if (core.Bulk is not null || core is not { Dry: { } dry, SurfaceDry: { } surfaceDry, InWater: { } inWater })
        {
            return core;
        }

        if (CoreFormulas.Bulk(dry, surfaceDry, inWater) is not { } bulk)
        {
            note(core.Place, "No density follows from these masses: surface dry is at least the dry mass, and in water less than it.");
        }
        else if (CoreFormulas.Absorbed(dry, surfaceDry, inWater) is > MostAbsorbed and var absorbed)
        {
            note(core.Place, string.Create(CultureInfo.InvariantCulture, $"The core absorbs {100 * absorbed:0.0} % of water by volume, more than the 2 % up to which this weighing holds: no density is taken from it. Have it sealed."));
        }
        else if (water is { } density)
        {
            return core with { Bulk = bulk * density };
        }
        else
        {
            note(core.Place, "The masses give a specific gravity, and no density: state `water` in the mapping.");
        }

        return core;
    }

    // AASHTO T 166, field procedure, 22: not where more than 2.00 % by volume is absorbed (read).
    private const double MostAbsorbed = 0.02;

    private static Dip? DipOf(RecordRow row, Action<RowPlace, string, string?> refuse)
    {
        if ((row.Number("depth") ?? (row.Number("after") - row.Number("before"))) is not { } depth)
        {
            refuse(row.Place, "There is no thickness, and no two levels to tell it.", "Map `depth`, or `before` and `after`.");
            return null;
        }

        return new Dip(row.Place, row.Number("station")!.Value, depth) { Offset = row.Number("offset"), Course = row.Text("course"), Loose = row.Text("loose") is "yes" };
    }

    private static WeatherReading Weather(RecordRow row) => new(row.Place, row.When("at")!.Value)
    {
        Air = row.Number("air"),
        Surface = row.Number("surface"),
        Wind = row.Number("wind"),
        Rain = row.Number("rain"),
        DewPoint = row.Number("dew_point"),
    };

    private static PassReading Pass(RecordRow row) => new(row.Place, row.When("at")!.Value, row.Text("roller")!)
    {
        Station = row.Number("station"),
        Pass = row.Count("pass"),
        Skin = row.Number("skin"),
        Density = row.Number("density"),
    };

    private static BondCoatReading? Coat(RecordRow row, Action<RowPlace, string, string?> refuse, Action<RowPlace, string> note)
    {
        var (taken, wrong) = TankRows.Of(row, note);
        if (wrong is { } problem)
        {
            refuse(row.Place, problem.Message, problem.Hint);
            return null;
        }

        return new BondCoatReading(row.Place, row.Number("from")!.Value, row.Number("to")!.Value, row.Number("width")!.Value)
        {
            At = row.When("at"),
            Mass = row.Number("mass"),
            Taken = taken,
            Below = row.Text("below"),
        };
    }

    private static HoldPointRelease HoldPoint(RecordRow row) => new(row.Place, row.Text("hold_point")!)
    {
        At = row.When("at"),
        By = row.Text("by"),
        Evidence = row.Text("evidence"),
    };
}
