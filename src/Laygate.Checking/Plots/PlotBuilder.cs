using Laygate.Engineering.Mat;
using Laygate.Engineering.PlotData;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.SheetData;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Model.Measures;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Checking.Plots;

/// <summary>Gathers what the plots of a report are drawn from, in the units of the plan.</summary>
internal sealed class PlotBuilder
{
    private const double Minute = 60;

    private readonly QuantityContext context;
    private readonly PlotQuantities quantities;
    private readonly Unit temperature;
    private readonly Unit mass;
    private readonly Unit length;
    private readonly List<PlotAbsence> absent = [];

    public PlotBuilder(QuantityContext context)
    {
        this.context = context;
        quantities = new PlotQuantities(context);
        var us = context.System == UnitSystem.UnitedStates;
        temperature = UnitTable.Find(us ? "°F" : "°C")!;
        mass = UnitTable.Find(us ? "short ton" : "t")!;
        length = UnitTable.Find(us ? "ft" : "m")!;
    }

    /// <summary>The plots of a plan.</summary>
    public static PlanPlots Of(QuantityContext context) => new PlotBuilder(context).Build();

    private PlanPlots Build()
    {
        var bodies = quantities.Bodies().Select(Body).OfType<BodyPlot>().ToList();
        var buffers = Buffers();
        var loads = Loads();
        var layout = new LayoutBuilder(context.Plan, length).Build();
        if (layout is null)
        {
            absent.Add(new PlotAbsence("runs from above", [new InputReference("plan", "runs")], null));
        }

        return new PlanPlots { Bodies = bodies, Buffers = buffers, Loads = loads, Layout = layout, Absent = absent };
    }

    private BodyPlot? Body(BodyCooling body)
    {
        var names = body.Courses.Select(course => course.Id).ToList();
        if (body.Curves is not { } curves)
        {
            absent.Add(Why($"cooling and rolling of {string.Join(" and ", names)}", body.Absent));
            return null;
        }

        return new BodyPlot(
            names,
            temperature.Spelling,
            [.. curves.Seconds.Select(second => (second - curves.LastScreed) / Minute)],
            [.. curves.Series.Select(series => Line(series, body.Courses))],
            [.. body.Phases.Select(phase => new PlotSpan(phase.Phase.Id, phase.From / Minute, phase.To / Minute))],
            [.. body.Cessations.Select(mark => new CessationMark(
                mark.Course.Id, temperature.FromSi(mark.Celsius), mark.At / Minute, mark.Low / Minute, mark.High / Minute))],
            [.. (body.Timetable?.Passes ?? []).Select(Pass)]);
    }

    private PlotLine Line(MatSeries series, IReadOnlyList<Course> courses) => new(
        series.Course, series.Place, [.. series.Celsius.Select(celsius => double.IsFinite(celsius) ? temperature.FromSi(celsius) : (double?)null)])
    {
        Laid = series.Laid,
        Learnt = series.IsLearnt ? Learnt(courses.FirstOrDefault(course => string.Equals(course.Id, series.Course, StringComparison.Ordinal)) ?? courses[^1]) : null,
    };

    private PlotLearnt? Learnt(Course course)
    {
        var entry = context.Plan.Learnt.FirstOrDefault(one => course.Mix is { } mix && one.Mixes.Contains(mix, StringComparer.Ordinal));
        return entry is null ? null : LearntShown.Of(entry);
    }

    private PassMark Pass(PassAtPoint pass) => new(
        pass.Phase, pass.Number, pass.Earliest / Minute, pass.Latest / Minute, Degrees(pass.Skin), Degrees(pass.Core), [.. pass.Courses.Select(course => Degrees(course.Mean))]);

    private ShownValue Degrees(PassValue value) => new(
        temperature.FromSi(value.Expected), temperature.Spelling, temperature.FromSi(value.Low), temperature.FromSi(value.High));

    private BufferPlot? Buffers()
    {
        var (simulation, stopped) = quantities.Shift();
        if (simulation.Result is not { } result)
        {
            absent.Add(Why("buffers over the shift", stopped));
            return null;
        }

        var curves = result.Trains.SelectMany(train => train.Model.Buffers.Select((buffer, place) => Curve(buffer, train.Result.Level(place)))).ToList();
        var times = result.Trains[0].Result.Level(0).Times;
        return new BufferPlot(
            quantities.Start,
            mass.Spelling,
            [.. times.Select(second => second / Minute)],
            curves,
            [.. result.Trains.SelectMany(train => train.Model.Pauses.Select(pause =>
                new PlotSpan("planned stop", (train.Model.Begins + pause.After) / Minute, (train.Model.Begins + pause.After + pause.Length) / Minute)))],
            Shown(result.StopChance, 100, "%"),
            Shown(result.Stops, 1, string.Empty),
            result.StopLength is { } stop ? Shown(stop, 1 / Minute, "min") : null,
            result.Outcomes.Count);
    }

    private BufferCurve Curve(ShiftBuffer buffer, LevelCurve level) => new(
        buffer.Course,
        buffer.Mix,
        mass.FromSi(buffer.Capacity),
        mass.FromSi(buffer.Lowest),
        buffer.Call is { } call ? mass.FromSi(call) : null,
        [.. level.Low.Select(mass.FromSi)],
        [.. level.Middle.Select(mass.FromSi)],
        [.. level.High.Select(mass.FromSi)]);

    private LoadPlot? Loads()
    {
        var loads = new SheetQuantities(context).Loads();
        if (loads.Count == 0)
        {
            absent.Add(new PlotAbsence("order of loads", [new InputReference("plan", "supply.trucks")], null));
            return null;
        }

        return new LoadPlot(mass.Spelling, length.Spelling, [.. loads.Select((load, index) => new LoadMark(
            index + 1, load.Course.Id, load.Course.Mix, mass.FromSi(load.Load.Size), length.FromSi(load.Load.NeededAt), length.FromSi(load.Load.EndsAt), load.TipsBy))]);
    }

    private static ShownValue Shown(Band band, double factor, string unit) =>
        new(band.Expected * factor, unit, band.Low * factor, band.High * factor);

    private static PlotAbsence Why(string plot, Absence? absence) => new(plot, absence?.Missing ?? [], absence?.Note);
}
