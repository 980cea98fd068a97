using Laygate.Engineering.Cooling;
using Laygate.Engineering.Mat;
using Laygate.Engineering.Onward;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Supply.Simulation;
using Laygate.Engineering.Timeline;
using Laygate.Model.Plans;
using Laygate.Model.Records;
using ShiftRecord = Laygate.Model.Records.ShiftRecord;

namespace Laygate.Engineering.Measured;

/// <summary>
/// Compares measured temperatures of the mat with those that the solver gives for their place and minute: laid when the record says, with the load's
/// temperature where it was measured, in the weather that was measured. No limit follows from it.
/// </summary>
public sealed class MatComparisons
{
    /// <summary>Most places that are solved: judgement, some minutes of one core.</summary>
    private const int MostPlaces = 60;

    private readonly QuantityContext tonight;
    private readonly ShiftRecord record;
    private readonly IReadOnlyList<LearntValues> learnt;
    private readonly List<ComparedPlace> kept = [];
    private readonly List<(TrainWay Way, IReadOnlyList<ReachedPlace> Reached, PavingTrain Train)> ways;
    private readonly Dictionary<NotCompared, int> left = [];
    private readonly List<ComparedTemperature> compared = [];
    private int withLoads;

    private MatComparisons(QuantityContext context, ShiftRecord record, IReadOnlyList<LearntValues> learnt)
    {
        this.record = record;
        this.learnt = learnt;
        tonight = context.For(MeasuredWeather.Of(context, record.Weather), withSpread: false);
        var timeline = ShiftTimeline.Of(context);
        var trains = timeline is null ? [] : TrainReader.Of(timeline, new Calculation(context));
        ways = [.. trains.Select(train => new TrainWay(train)).Zip(trains, (way, train) => (way, way.Reached(record), train))];
    }

    /// <summary>Compares the temperatures of a record.</summary>
    /// <param name="context">The plan.</param>
    /// <param name="record">The record.</param>
    /// <param name="learnt">What was learnt, with which is computed; null: with what is assumed.</param>
    public static MatComparison Of(QuantityContext context, ShiftRecord record, IReadOnlyList<LearntValues>? learnt = null) => new MatComparisons(context, record, learnt ?? []).Make(Solve);

    /// <summary>Places whose temperatures can be compared, and the plan in the weather that was measured.</summary>
    internal static (QuantityContext Tonight, IReadOnlyList<ComparedPlace> Places) Places(QuantityContext context, ShiftRecord record)
    {
        var all = new MatComparisons(context, record, []);
        all.Make((comparisons, place) => comparisons.kept.Add(place));
        return (all.tonight, all.kept);
    }

    private MatComparison Make(Action<MatComparisons, ComparedPlace> take)
    {
        var places = record.Temperatures.Where(IsPlaced).GroupBy(row => (Station: row.Station!.Value, row.Run, PassOf(row)!.Top.Id)).ToList();
        foreach (var place in places.Take(MostPlaces))
        {
            Compare((place.Key.Station, place.Key.Run), PassOf(place.First())!, [.. place], take);
        }

        Leave(NotCompared.TooMany, places.Skip(MostPlaces).Sum(place => place.Count()));
        return new MatComparison(
            compared, [.. left.OrderBy(one => one.Key).Select(one => (one.Key, one.Value))], TemperatureGroups.Of(compared), tonight.Plan.Weather is not null && record.Weather.Count > 0, withLoads, places.Count);
    }

    private bool IsPlaced(MatTemperature row)
    {
        var isPlaced = row is { Station: not null, Depth: not null } && PassOf(row) is not null;
        Leave(NotCompared.NoPlace, isPlaced ? 0 : 1);
        return isPlaced;
    }

    private PavingPass? PassOf(MatTemperature row)
    {
        var all = tonight.Plan.Courses;
        var course = row.Course is null ? all.Count > 0 ? all[^1] : null : all.FirstOrDefault(one => PlanView.Same(one.Id, row.Course));
        return course is null ? null : PlanView.Of(tonight).PassOf(course);
    }

    private void Compare((double Station, string? Run) at, PavingPass pass, List<MatTemperature> rows, Action<MatComparisons, ComparedPlace> take)
    {
        var (laid, problem) = LaidAt(at, pass);
        var calculation = new Calculation(tonight);
        if (laid is not { } moment)
        {
            Leave(problem, rows.Count);
            return;
        }

        if (CoolingInputs.Gather(calculation, pass, MatQuestion.Fast) is not null || new MatReader(tonight, new Calculation(tonight), learnt).Read(pass) is not { } inputs
            || new MatWeatherReader(tonight, new Calculation(tonight)).Read(pass, MatQuestion.Fast) is not { } weather)
        {
            Leave(NotCompared.NoInput, rows.Count);
            return;
        }

        var start = moment.AddSeconds(-inputs.Courses[inputs.HotFrom].LaidAt);
        if (!weather.Parts.Any(part => part[0] <= start && start <= part[^1]))
        {
            Leave(NotCompared.NoInput, rows.Count);
            return;
        }

        List<MatTemperature> followed = [.. rows.Where(row => IsFollowed(row, start, inputs))];
        if (followed.Count > 0)
        {
            take(this, new ComparedPlace(WithLoads(inputs, at), weather.At(start), start, followed));
        }
    }

    private bool IsFollowed(MatTemperature row, DateTimeOffset start, MatInputs inputs)
    {
        var (time, laid) = ((row.At - start).TotalSeconds, LaidAt(row, inputs));
        Leave(NotCompared.BeforeScreed, time < laid ? 1 : 0);
        Leave(NotCompared.TooLate, time > MatCooling.LongestRolling ? 1 : 0);
        return time >= laid && time <= MatCooling.LongestRolling;
    }

    // Behind the screed that laid the surface at its time; a row without a course is one of the uppermost.
    private static double LaidAt(MatTemperature row, MatInputs inputs) => (inputs.Courses.FirstOrDefault(course => PlanView.Same(course.Id, row.Course)) ?? inputs.Courses[^1]).LaidAt;

    private static void Solve(MatComparisons all, ComparedPlace place) => all.Solve(place);

    private void Solve(ComparedPlace place)
    {
        var (inputs, rows) = (place.Inputs, place.Rows);
        var model = new MatModel(inputs, tonight.Assumptions);
        var times = place.Times;
        var solved = MatCooling.Of(tonight).Sample(
            MatRanges.All(isRolled: false), sample => model.Build(place.Weather, sample, place.Duration, null, CoolingSettings.Coarse), place.Questions, _ => times);
        if (solved.Answers is not { } answers)
        {
            Leave(NotCompared.NoInput, rows.Count);
            return;
        }

        for (var i = 0; i < rows.Count; i++)
        {
            if (double.IsFinite(answers.Expected(i)))
            {
                compared.Add(new ComparedTemperature(rows[i], rows[i].Course ?? inputs.Courses[^1].Id, times[i] - LaidAt(rows[i], inputs), answers.Expected(i), answers.Low(i), answers.High(i)));
            }
            else
            {
                Leave(NotCompared.NoInput, 1);
            }
        }
    }

    // The load that was being laid there, by as much as it came hotter or colder than planned; what is lost on the way to the screed stays as planned.
    private MatInputs WithLoads(MatInputs inputs, (double Station, string? Run) at)
    {
        var courses = inputs.Courses.Select(course =>
        {
            var own = tonight.Plan.Courses.FirstOrDefault(one => PlanView.Same(one.Id, course.Id));
            var delivered = tonight.Plan.Mixes.FirstOrDefault(mix => PlanView.Same(mix.Id, own?.Mix))?.Delivery?.Expected;
            var load = record.Loads.Where(load => PlanView.Same(load.Mix, own?.Mix) && load is { StationAtEnd: not null, SiteTemperature: not null, State: LoadState.Valid } && Reaches(load, at))
                .OrderBy(load => load.Emptied).FirstOrDefault();
            return delivered is null || load is null ? (Course: course, IsMeasured: false) : (Course: Moved(course, load.SiteTemperature!.Value - delivered.Si), IsMeasured: true);
        }).ToList();
        withLoads += courses.TrueForAll(one => one.IsMeasured) ? 1 : 0;
        return inputs with { Courses = [.. courses.Select(one => one.Course)] };
    }

    private bool Reaches(Load load, (double Station, string? Run) at) =>
        ways.Exists(one => one.Way.DistanceOf(load.Run, load.StationAtEnd!.Value) is { } end && one.Way.DistanceOf(at.Run, at.Station) is { } place && end >= place);

    private static MatCourse Moved(MatCourse course, double kelvins) => course with { Celsius = course.Celsius + kelvins, Coldest = course.Coldest + kelvins, Hottest = course.Hottest + kelvins };

    private (DateTimeOffset? At, NotCompared Problem) LaidAt((double Station, string? Run) at, PavingPass pass)
    {
        var own = ways.Find(one => one.Train.Lanes.Any(lane => PlanView.Same(lane.Course.Id, pass.Courses[0].Id)));
        if (own.Way?.DistanceOf(at.Run, at.Station, pass.Courses[0].Id) is not { } position)
        {
            return (null, NotCompared.NoRun);
        }

        for (var i = 1; i < own.Reached.Count; i++)
        {
            var (a, b) = (own.Reached[i - 1], own.Reached[i]);
            if (a.Position <= position && position <= b.Position && b.Position > a.Position)
            {
                return (a.At + ((b.At - a.At) * ((position - a.Position) / (b.Position - a.Position))), default);
            }
        }

        return (null, NotCompared.NotLaid);
    }

    private void Leave(NotCompared reason, int count)
    {
        if (count > 0)
        {
            left[reason] = left.GetValueOrDefault(reason) + count;
        }
    }
}
