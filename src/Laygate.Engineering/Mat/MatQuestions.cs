using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Sampling;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Reading;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>What is asked of every cooling curve of one hot body while it is rolled. Times in s after the screed concerned; infinite where not reached.</summary>
internal sealed class MatQuestions
{
    private readonly List<CoolingQuestion> all = [];
    private readonly Dictionary<string, int> byName = new(StringComparer.Ordinal);
    private readonly List<Func<double[], double[]>> lookedFor = [];
    private readonly MatInputs inputs;
    private readonly int[] layers;
    private readonly double last;

    public MatQuestions(QuantityContext context, PavingPass pass, MatInputs inputs, bool everyPass)
    {
        this.inputs = inputs;
        layers = [.. pass.Courses.Select(course => inputs.LayerOf(course.Id))];
        last = LastTime = inputs.LastScreed;
        Cessation = [.. pass.Courses.Select(course => MatLimits.CessationRange(context, course))];
        AddSkinTimes(context, pass);
        AddCourses(context, pass);
        AddDifferences(context, pass);
        AddEdges(context, pass);
        Times = [.. PassPlan.Moments(new Calculation(context), everyPass).Where(time => time >= 0 && time <= MatCooling.LongestRolling / 2).Distinct().Order()];
        AddMoments();
    }

    /// <summary>All questions.</summary>
    public IReadOnlyList<CoolingQuestion> All => all;

    /// <summary>Cessation temperature of each course of the hot body, from bottom to top.</summary>
    public MatRange[] Cessation { get; }

    /// <summary>Times of the passes, s after the last screed.</summary>
    public double[] Times { get; }

    /// <summary>Latest time asked for, s from the start of the solve.</summary>
    public double LastTime { get; private set; }

    /// <summary>Numbers that all questions look for at a sample: places, limits and times.</summary>
    public IEnumerable<double> LookedFor(double[] sample) => lookedFor.SelectMany(numbers => numbers(sample));

    /// <summary>Index of a question; null where it is not asked of this body.</summary>
    public int? Find(string name) => byName.TryGetValue(name, out var index) ? index : null;

    /// <summary>Shortest window or grit time of a curve, s: what makes an hour the worst.</summary>
    public double Shortest(CoolingCurve curve, double[] sample) => byName
        .Where(named => named.Key.StartsWith("window", StringComparison.Ordinal) || named.Key is "grit")
        .Select(named => all[named.Value].Answer(curve, sample) ?? double.PositiveInfinity)
        .DefaultIfEmpty(double.PositiveInfinity)
        .Min();

    /// <summary>Temperatures of one moment out of the answers of one case.</summary>
    public MatMoment? MomentAt(int time, Func<int, double> answer)
    {
        var first = byName[$"moment {time}"];
        var moment = new MatMoment(
            answer(first), answer(first + 1), [.. layers.Select((_, i) => answer(first + 2 + i))], [.. layers.Select((_, i) => answer(first + 2 + layers.Length + i))]);
        return double.IsFinite(moment.Skin) && double.IsFinite(moment.Core) ? moment : null;
    }

    private static double At(MatRange range, double[] sample, int dimension) => range.At(sample, dimension);

    private void AddSkinTimes(QuantityContext context, PavingPass pass)
    {
        var embedment = MatLimits.EmbedmentRange(context, pass.Top);
        if (!double.IsNaN(embedment.Central))
        {
            AddTime("grit", CoolingPlace.Skin, sample => At(embedment, sample, MatRanges.Embedment), last);
        }

        var hot = MatLimits.RangeOf(context, Assumptions.AssumptionIds.MarkingHot);
        var cold = MatLimits.RangeOf(context, Assumptions.AssumptionIds.MarkingCold);
        AddTime("marking from", CoolingPlace.Skin, sample => At(hot, sample, MatRanges.Embedment), last);
        AddTime("marking to", CoolingPlace.Skin, sample => At(cold, sample, MatRanges.Embedment), last);
    }

    private void AddCourses(QuantityContext context, PavingPass pass)
    {
        for (var i = 0; i < pass.Courses.Count; i++)
        {
            var (course, laid, limit) = (pass.Courses[i], inputs.Courses[inputs.HotFrom + i].LaidAt, Cessation[i]);
            if (!double.IsNaN(limit.Central))
            {
                AddTime($"window {course.Id}", CoolingPlace.Mean(layers[i]), sample => At(limit, sample, MatRanges.Cessation), laid);
            }

            if (MatLimits.Start(new Calculation(context), course) is { } start)
            {
                AddTime($"bears {course.Id}", new CoolingPlace(start.Kind, layers[i]), _ => start.Celsius, laid);
            }

            if (inputs.HotFrom + i > 0)
            {
                AddValue($"lower {course.Id}", Lower(MatLimits.PlaceOfLower(course), layers[i] + 1), Math.Max(0, laid - 1e-3));
            }
        }
    }

    private static CoolingPlace Lower(Place place, int layer) => place switch
    {
        Place.Skin => CoolingPlace.TopFace(layer),
        Place.MidDepth => CoolingPlace.MidDepth(layer),
        Place.Core => CoolingPlace.Core,
        _ => CoolingPlace.Mean(layer),
    };

    private void AddDifferences(QuantityContext context, PavingPass pass)
    {
        var (from, to) = MatLimits.Rolling(new Calculation(context));
        if (to >= from && to <= MatCooling.LongestRolling / 2)
        {
            Reach(last + to);
            Add("core-skin", (curve, _) => Largest(curve, from, to, 30, double.PositiveInfinity), double.NaN, _ => [last, from, to]);
        }

        var tender = MatLimits.Tender(new Calculation(context), pass.Top);
        foreach (var span in VibrationSpan.Of(new Calculation(context)))
        {
            Reach(last + Math.Min(span.To, MatCooling.LongestRolling / 2));
            Add($"vibration {span.Roller}", (curve, _) => Largest(curve, span.From, span.To, 15, tender) ?? 0, 0, _ => [last, span.From, span.To, tender]);
        }
    }

    /// <summary>Largest core-skin difference, K, while the skin is below a temperature, looked for at even steps.</summary>
    private double? Largest(CoolingCurve curve, double from, double to, double step, double skinBelow)
    {
        double? largest = null;
        var end = Math.Min(last + to, curve.End);
        for (var time = last + from; time <= end; time += step)
        {
            if (curve.Value(CoolingPlace.Skin, time) < skinBelow && curve.Value(CoolingPlace.CoreSkinDifference, time) is { } difference)
            {
                largest = difference <= largest ? largest : difference;
            }
        }

        return largest;
    }

    private void AddEdges(QuantityContext context, PavingPass pass)
    {
        foreach (var joint in context.Plan.Joints.DistinctBy(joint => joint.Id, StringComparer.Ordinal))
        {
            var i = pass.Courses.ToList().FindIndex(course => PlanView.Same(course.Id, joint.Course));
            if (i >= 0 && JointTimes.Followed(context, joint) is { } delay)
            {
                AddValue($"edge {joint.Id}", CoolingPlace.Mean(layers[i]), inputs.Courses[inputs.HotFrom + i].LaidAt + delay);
            }
        }
    }

    private void AddMoments()
    {
        for (var i = 0; i < Times.Length; i++)
        {
            var time = last + Times[i];
            AddValue($"moment {i}", CoolingPlace.Skin, time);
            AddValue($"core {i}", CoolingPlace.Core, time);
            Array.ForEach(layers, layer => AddValue($"mean {i} {layer}", CoolingPlace.Mean(layer), time));
            Array.ForEach(layers, layer => AddValue($"middle {i} {layer}", CoolingPlace.MidDepth(layer), time));
        }
    }

    private void AddTime(string name, CoolingPlace place, Func<double[], double> celsius, double after) =>
        Add(name, (curve, sample) => curve.FirstBelow(place, celsius(sample), after) - after, double.PositiveInfinity, sample => [.. Numbers(place), after, celsius(sample)]);

    private void AddValue(string name, CoolingPlace place, double time)
    {
        Reach(time);
        Add(name, (curve, _) => curve.Value(place, time), double.NaN, _ => [.. Numbers(place), time]);
    }

    private static double[] Numbers(CoolingPlace place) => [(double)place.Kind, place.Layer, place.AtDepth];

    private void Reach(double time) => LastTime = Math.Max(LastTime, time);

    private void Add(string name, Func<CoolingCurve, double[], double?> answer, double absent, Func<double[], double[]> numbers)
    {
        if (byName.TryAdd(name, all.Count))
        {
            all.Add(new CoolingQuestion(name, answer, absent));
            lookedFor.Add(numbers);
        }
    }
}
