using System.Globalization;
using Laygate.Model.Plans;

namespace Laygate.Checking.Starting;

/// <summary>The elements that a kind of job has, with what was answered: courses, strips, machines and their references. Which keys they need is found by judging them.</summary>
internal sealed class JobSkeleton(StartAnswers answers, FirmParts parts)
{
    private static readonly string[] OneCourse = ["surface"];
    private static readonly string[] TwoCourses = ["binder", "surface"];

    private readonly DraftMap plan = new();
    private readonly string[] kinds = answers.Kind is JobKind.TwoCourses or JobKind.HotOnHot ? TwoCourses : OneCourse;
    private readonly List<string> courses = [];
    private readonly List<string> mixes = [];

    /// <summary>Makes the draft.</summary>
    /// <param name="id">Id of the plan.</param>
    public DraftMap Make(string id)
    {
        plan.Set("format", new DraftText("1"));
        if (parts.Uses.Count > 0)
        {
            plan.SetList("uses", parts.Uses);
        }

        plan.Set("plan", DraftMap.Of(("id", id), ("stage", Words.Of(answers.Stage)), ("title", answers[StartQuestions.Title])));
        plan.Set("location", DraftMap.Of(("jurisdiction", answers[StartQuestions.Jurisdiction])));
        courses.AddRange(CourseIds());
        Mixes();
        Courses();
        Runs();
        ByHand();
        Pavers();
        if (answers.Stage >= Stage.Submission)
        {
            Supply();
            Rolling();
            Site();
            Beneath();
        }

        if (answers.Stage == Stage.Release)
        {
            Shift();
        }

        return plan;
    }

    // A paver of the firm names the courses that its screeds lay: by their ids its screeds and buffers need not be stated again.
    private IReadOnlyList<string> CourseIds() =>
        parts.Courses("pavers", FirstPaver, "screeds") is var named && named.Count == kinds.Length && named.Distinct(StringComparer.Ordinal).Count() == named.Count ? named : kinds;

    private void Mixes()
    {
        var given = answers.List(StartQuestions.Mixes);
        for (var index = 0; index < courses.Count; index++)
        {
            var name = index < given.Count ? given[index] : null;
            if (name is not null && parts.Has("mixes", name))
            {
                plan.List("mixes").Items.Add(new DraftText(name));
                mixes.Add(name);
                continue;
            }

            mixes.Add($"{courses[index]}-mix");
            plan.List("mixes").Items.Add(DraftMap.Of(("id", mixes[^1]), ("name", name)));
        }
    }

    private void Courses()
    {
        var thickness = answers.List(StartQuestions.Thickness);
        for (var index = 0; index < courses.Count; index++)
        {
            var course = DraftMap.Of(("id", courses[index]), ("kind", kinds[index]), ("mix", mixes[index]), ("thickness", index < thickness.Count ? thickness[index] : null));
            var isOnHot = index > 0 && answers.Kind == JobKind.HotOnHot;
            course.Set("laid", new DraftText(Words.Of(isOnHot ? Laying.HotOnHot : Laying.Separately)));
            if (isOnHot)
            {
                course.Set("on", new DraftText(courses[0])).Set("distance", DraftText.Blank);
            }

            plan.List("courses").Items.Add(course);
        }
    }

    private void Runs()
    {
        var lanes = int.TryParse(answers[StartQuestions.Lanes], NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : 1;
        var zero = answers.Units == Model.Measures.UnitSystem.UnitedStates ? "0 ft" : "0 m";
        for (var lane = 1; lane <= lanes; lane++)
        {
            var run = DraftMap.Of(("id", string.Create(CultureInfo.InvariantCulture, $"run-{lane}")));
            run.SetList("courses", courses).Set("paver", new DraftText(FirstPaver));
            run.Set("from", new DraftText(zero)).Set("to", new DraftText(answers[StartQuestions.Length])).Set("width", new DraftText(answers[StartQuestions.Width]));
            plan.List("runs").Items.Add(run);
            if (lane > 1)
            {
                foreach (var course in courses)
                {
                    plan.List("joints").Items.Add(DraftMap.Of(
                        ("id", string.Create(CultureInfo.InvariantCulture, $"{course}-{lane - 1}-{lane}")), ("kind", "longitudinal"), ("course", course),
                        ("run", string.Create(CultureInfo.InvariantCulture, $"run-{lane - 1}")), ("beside", string.Create(CultureInfo.InvariantCulture, $"run-{lane}"))));
                }
            }
        }
    }

    // A place laid by hand belongs to the strip that it adjoins; its mix is that of the uppermost course.
    private void ByHand()
    {
        if (answers.List(StartQuestions.ByHand) is [] or [StartQuestions.NoneOfThem])
        {
            return;
        }

        var run = (DraftMap)plan.List("runs").Items[0];
        foreach (var (id, _) in Machines(StartQuestions.ByHand, string.Empty, "by-hand-", 0))
        {
            run.List("hand_laid").Items.Add(DraftMap.Of(("id", id), ("area", null), ("mix", mixes[^1])));
        }
    }

    private string FirstPaver => Machines(StartQuestions.Pavers, "pavers", "p", 1)[0].Id;

    private void Pavers()
    {
        foreach (var (id, isPart) in Machines(StartQuestions.Pavers, "pavers", "p", 1))
        {
            var paver = DraftMap.Of((isPart ? "part" : "id", id));
            paver.SetList("courses", courses).Set("speed", new DraftText(answers[StartQuestions.Speed]));
            plan.List("pavers").Items.Add(paver);
        }
    }

    private void Supply()
    {
        var supply = plan.Group("supply");
        var plants = Machines(StartQuestions.Plants, "plants", "plant", 1);
        foreach (var (id, isPart) in plants)
        {
            supply.List("plants").Items.Add(isPart ? parts.States("plants", id, "mixes") ? new DraftText(id) : DraftMap.Of(("part", id)).SetList("mixes", mixes) : DraftMap.Of(("id", id)).SetList("mixes", mixes));
        }

        var trucks = answers.List(StartQuestions.Trucks);
        for (var index = 0; index < courses.Count; index++)
        {
            var answer = index < trucks.Count ? trucks[index] : null;
            var isPart = answer is not null && parts.Has("trucks", answer);
            var group = DraftMap.Of((isPart ? "part" : "id", isPart ? answer : $"trucks-{courses[index]}"), ("plant", plants[Math.Min(index, plants.Count - 1)].Id), ("mix", mixes[index]));
            if (!isPart || !parts.States("trucks", answer!, "count"))
            {
                group.Set("count", new DraftText(isPart ? null : answer));
            }

            supply.List("trucks").Items.Add(group);
        }
    }

    private void Rolling()
    {
        var rollers = Machines(StartQuestions.Rollers, "rollers", "r", 3);
        string[] phases = rollers.Count switch { 1 => ["main"], 2 => ["main", "finish"], _ => ["initial", "main", "finish"] };
        var rolling = plan.Group("rolling");
        foreach (var phase in phases)
        {
            rolling.List("phases").Items.Add(DraftMap.Of(("id", phase), ("kind", phase)));
        }

        for (var index = 0; index < rollers.Count; index++)
        {
            var phase = index == 0 ? phases[0] : index == rollers.Count - 1 ? phases[^1] : "main";
            rolling.List("rollers").Items.Add(DraftMap.Of((rollers[index].IsPart ? "part" : "id", rollers[index].Id), ("phase", phase)));
        }
    }

    private void Site()
    {
        var site = plan.Group("site");
        site.Set("traffic", new DraftText(answers[StartQuestions.Traffic]));
        if (answers[StartQuestions.Night] is { } night)
        {
            site.Group("conditions").Set("night", new DraftText(night));
        }

        foreach (var condition in answers.List(StartQuestions.Conditions).Where(word => word is not StartQuestions.NoneOfThem))
        {
            site.Group("conditions").Set(condition, new DraftText("yes"));
        }
    }

    // What lies below decides what is asked about the bond and about milling.
    private void Beneath()
    {
        var existing = plan.Group("existing");
        existing.Set("surface", new DraftText(answers.Kind == JobKind.MillAndFill ? "milled" : null));
        if (answers.Kind == JobKind.MillAndFill)
        {
            existing.Group("milling").Set("depth", DraftText.Blank);
        }

        foreach (var course in answers.Kind == JobKind.HotOnHot ? courses.Take(1) : courses)
        {
            plan.List("bond_coats").Items.Add(DraftMap.Of(("id", $"under-{course}"), ("below", course), ("applied", null)));
        }

        plan.Group("opening").Set("below", DraftMap.Of(("value", null), ("place", "skin")));
    }

    private void Shift()
    {
        plan.Set("shift", DraftMap.Of(("date", answers[StartQuestions.Date]), ("start", answers[StartQuestions.Start]), ("end", answers[StartQuestions.End]), ("zone", null)));
        foreach (var at in ShiftHours.Of(answers))
        {
            plan.Group("weather").List("hours").Items.Add(DraftMap.Of(("at", at), ("air", null), ("base", null), ("wind", null)));
        }

        foreach (var id in parts.Ids("people"))
        {
            plan.Group("plan").List("people").Items.Add(new DraftText(id));
        }

        if (parts.Ids("people").Count == 0)
        {
            plan.Group("plan").List("people").Items.Add(DraftMap.Of(("id", "shift-manager"), ("role", "shift manager"), ("name", null), ("call", null)));
        }
    }

    private List<(string Id, bool IsPart)> Machines(string question, string list, string prefix, int usual)
    {
        var given = answers.List(question);
        if (given is [var only] && int.TryParse(only, NumberStyles.None, CultureInfo.InvariantCulture, out var count))
        {
            return Numbered(prefix, count);
        }

        return given.Count > 0 ? [.. given.Select(id => (id, parts.Has(list, id)))] : Numbered(prefix, usual);
    }

    private static List<(string Id, bool IsPart)> Numbered(string prefix, int count) =>
        [.. Enumerable.Range(1, count).Select(number => (count == 1 && prefix.Length > 1 ? prefix : string.Create(CultureInfo.InvariantCulture, $"{prefix}{number}"), false))];
}
