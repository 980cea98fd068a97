using Laygate.Engineering.Cooling;
using Laygate.Engineering.Cooling.Sampling;
using Laygate.Engineering.PlanViews;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;

namespace Laygate.Engineering.Mat;

/// <summary>How long a question needs a solve to go on.</summary>
/// <param name="Layer">Layer whose mean must be below a temperature.</param>
/// <param name="Below">That temperature, °C; not a number where only the time counts.</param>
/// <param name="Time">Time in s before which the solve must not end.</param>
internal sealed record MatNeed(int Layer, double Below, double Time)
{
    /// <summary>Solves are followed for whole steps of this time, s, so that a pass that moves by minutes finds the solve of its neighbour.</summary>
    private const double Whole = 900;

    /// <summary>Needs a solve until a time.</summary>
    public static MatNeed Until(double time) => new(-1, double.NaN, time);

    /// <summary>Where a solve for several questions may end: a duration, or a stop within the longest one.</summary>
    public static (double Duration, CoolingStop? Stop) Of(IReadOnlyList<MatNeed> needs)
    {
        var time = Math.Min(MatCooling.LongestRolling, Math.Ceiling((needs.Max(need => need.Time) + 1) / Whole) * Whole);
        var waiting = needs.Where(need => double.IsFinite(need.Below)).ToList();
        return waiting.Count == 0
            ? (time, null)
            : (MatCooling.LongestRolling, new CoolingStop(waiting.Max(need => need.Layer), waiting.Min(need => need.Below), time));
    }
}

/// <summary>What is asked of every cooling curve of one hot body while it is rolled, and which side of an answer is unfavourable. Times in s after the screed concerned; infinite where not reached.</summary>
internal sealed class MatQuestions
{
    private readonly List<CoolingQuestion> all = [];
    private readonly Dictionary<string, int> byName = new(StringComparer.Ordinal);
    private readonly List<Func<double[], double[]>> lookedFor = [];
    private readonly List<bool> highIsWorse = [];
    private readonly List<MatNeed> needs = [];
    private readonly MatInputs inputs;
    private readonly int[] layers;
    private readonly double last;

    public MatQuestions(QuantityContext context, PavingPass pass, MatInputs inputs, bool everyPass)
    {
        this.inputs = inputs;
        layers = [.. pass.Courses.Select(course => inputs.LayerOf(course.Id))];
        last = inputs.LastScreed;
        AddSkinTimes(context, pass);
        AddCourses(context, pass);
        AddDifferences(context, pass);
        AddEdges(context, pass);
        AddFirst(context, pass);
        Times = [.. PassPlan.Moments(new Calculation(context), everyPass).Where(time => time >= 0 && time <= MatCooling.LongestRolling / 2).Distinct().Order()];
        AddMoments(pass);
    }

    /// <summary>All questions.</summary>
    public IReadOnlyList<CoolingQuestion> All => all;

    /// <summary>Times of the passes, s after the last screed.</summary>
    public double[] Times { get; }

    /// <summary>Numbers that all questions look for at a sample: places, limits and times.</summary>
    public IEnumerable<double> LookedFor(double[] sample) => lookedFor.SelectMany(numbers => numbers(sample));

    /// <summary>Index of a question; null where it is not asked of this body.</summary>
    public int? Find(string name) => byName.TryGetValue(name, out var index) ? index : null;

    /// <summary>How long each question needs a solve to go on.</summary>
    public IReadOnlyList<MatNeed> Needs => needs;

    /// <summary>For each question, whether a high answer is the unfavourable one.</summary>
    public IReadOnlyList<bool> HighIsWorse => highIsWorse;

    /// <summary>The question about a temperature at the time of a pass; null where that time is not asked for.</summary>
    /// <param name="what">skin, core, core-skin, least middle, or mean or middle with the id of a course.</param>
    /// <param name="time">Time, s after the last screed.</param>
    public string? AtPass(string what, double time) => Array.IndexOf(Times, time) is >= 0 and var i ? $"{what} at {i}" : null;

    private static double At(MatRange range, double[] sample, int dimension) => range.At(sample, dimension);

    private void AddSkinTimes(QuantityContext context, PavingPass pass)
    {
        var embedment = MatLimits.EmbedmentRange(context, pass.Top);
        if (!double.IsNaN(embedment.Central))
        {
            AddTime("grit", CoolingPlace.Skin, sample => At(embedment, sample, MatRanges.Embedment), last, embedment.Low);
        }

        var hot = MatLimits.RangeOf(context, Assumptions.AssumptionIds.MarkingHot);
        var cold = MatLimits.RangeOf(context, Assumptions.AssumptionIds.MarkingCold);
        AddTime("marking from", CoolingPlace.Skin, sample => At(hot, sample, MatRanges.Embedment), last, hot.Low, isLateWorse: true);
        AddTime("marking to", CoolingPlace.Skin, sample => At(cold, sample, MatRanges.Embedment), last, cold.Low);
    }

    private void AddCourses(QuantityContext context, PavingPass pass)
    {
        for (var i = 0; i < pass.Courses.Count; i++)
        {
            var (course, laid, limit) = (pass.Courses[i], inputs.Courses[inputs.HotFrom + i].LaidAt, MatLimits.CessationRange(context, pass.Courses[i]));
            if (!double.IsNaN(limit.Central))
            {
                AddTime($"window {course.Id}", CoolingPlace.Mean(layers[i]), sample => At(limit, sample, MatRanges.Cessation), laid, limit.Low);
            }

            if (MatLimits.Start(new Calculation(context), course) is { } start)
            {
                AddTime($"bears {course.Id}", new CoolingPlace(start.Kind, layers[i]), _ => start.Celsius, laid, start.Celsius, isLateWorse: true);
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
            Add("core-skin", (curve, _) => Largest(curve, from, to, 30, double.PositiveInfinity), double.NaN, _ => [last, from, to], MatNeed.Until(last + to), isHighWorse: true);
        }

        var tender = MatLimits.Tender(new Calculation(context), pass.Top);
        foreach (var span in VibrationSpan.Of(new Calculation(context)))
        {
            var need = MatNeed.Until(last + Math.Min(span.To, MatCooling.LongestRolling / 2));
            Add($"vibration {span.Roller}", (curve, _) => Largest(curve, span.From, span.To, 15, tender) ?? 0, 0, _ => [last, span.From, span.To, tender], need, isHighWorse: true);
            if (MatLimits.TenderRange(new Calculation(context), pass.Top) is var (low, high))
            {
                Add($"tender {span.Roller}", (curve, _) => ShareWithin(curve, span, low, high), 0, _ => [last, span.From, span.To, low, high], need, isHighWorse: true);
            }
        }
    }

    /// <summary>Share of a span in which the skin is within a range, looked at in even steps.</summary>
    private double? ShareWithin(CoolingCurve curve, VibrationSpan span, double low, double high)
    {
        const double Step = 15; // s: a pass takes minutes.
        var (inside, all) = (0, 0);
        for (var time = last + span.From; time <= Math.Min(last + span.To, curve.End); time += Step, all++)
        {
            var skin = curve.Value(CoolingPlace.Skin, time);
            inside += skin >= low && skin < high ? 1 : 0;
        }

        return all > 0 ? (double)inside / all : null;
    }

    /// <summary>Largest core-skin difference, K, while the skin is below a temperature, looked for at even steps: it rises and falls over several minutes.</summary>
    private double? Largest(CoolingCurve curve, double from, double to, double step, double skinBelow)
    {
        var start = last + from;
        return GridPeak.Largest((int)Math.Floor((Math.Min(last + to, curve.End) - start) / step) + 1, i => Difference(start + (i * step)));

        double? Difference(double time) => double.IsPositiveInfinity(skinBelow) || curve.Value(CoolingPlace.Skin, time) < skinBelow
            ? curve.Value(CoolingPlace.CoreSkinDifference, time)
            : null;
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

    /// <summary>Temperatures at the earliest moment of the first pass: a course that is too hot shoves, so the hot side is the unfavourable one.</summary>
    private void AddFirst(QuantityContext context, PavingPass pass)
    {
        if (PassPlan.Of(new Calculation(context)) is not [{ Earliest: >= 0 and <= MatCooling.LongestRolling / 2 and var earliest }, ..])
        {
            return;
        }

        for (var i = 0; i < pass.Courses.Count; i++)
        {
            var kind = MatLimits.Start(new Calculation(context), pass.Courses[i])?.Kind ?? CoolingPlaceKind.LayerMean;
            AddValue($"first {pass.Courses[i].Id}", new CoolingPlace(kind, layers[i]), last + earliest, isHighWorse: true);
        }
    }

    private void AddMoments(PavingPass pass)
    {
        for (var i = 0; i < Times.Length; i++)
        {
            var time = last + Times[i];
            AddValue($"skin at {i}", CoolingPlace.Skin, time);
            AddValue($"core at {i}", CoolingPlace.Core, time);
            AddValue($"core-skin at {i}", CoolingPlace.CoreSkinDifference, time, isHighWorse: true);
            Add($"least middle at {i}", (curve, _) => layers.Min(layer => curve.Value(CoolingPlace.MidDepth(layer), time)), double.NaN, _ => [.. layers, time], MatNeed.Until(time));
            for (var course = 0; course < layers.Length; course++)
            {
                AddValue($"mean {pass.Courses[course].Id} at {i}", CoolingPlace.Mean(layers[course]), time);
                AddValue($"middle {pass.Courses[course].Id} at {i}", CoolingPlace.MidDepth(layers[course]), time);
            }
        }
    }

    /// <summary>The mean of the lowest layer that the place belongs to is as warm as the place, or warmer, while a mat cools.</summary>
    private void AddTime(string name, CoolingPlace place, Func<double[], double> celsius, double after, double lowest, bool isLateWorse = false) => Add(
        name,
        (curve, sample) => curve.FirstBelow(place, celsius(sample), after) - after,
        double.PositiveInfinity,
        sample => [.. Numbers(place), after, celsius(sample)],
        new MatNeed(place.Kind switch { CoolingPlaceKind.Skin => layers[^1], CoolingPlaceKind.Core => layers[0], _ => place.Layer }, lowest - 1, after),
        isLateWorse);

    private void AddValue(string name, CoolingPlace place, double time, bool isHighWorse = false) =>
        Add(name, (curve, _) => curve.Value(place, time), double.NaN, _ => [.. Numbers(place), time], MatNeed.Until(time), isHighWorse);

    private static double[] Numbers(CoolingPlace place) => [(double)place.Kind, place.Layer, place.AtDepth];

    private void Add(string name, Func<CoolingCurve, double[], double?> answer, double absent, Func<double[], double[]> numbers, MatNeed need, bool isHighWorse = false)
    {
        if (byName.TryAdd(name, all.Count))
        {
            all.Add(new CoolingQuestion(name, answer, absent));
            lookedFor.Add(numbers);
            needs.Add(need);
            highIsWorse.Add(isHighWorse);
        }
    }
}
