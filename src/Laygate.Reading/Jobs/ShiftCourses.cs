using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Jobs;

/// <summary>The courses of a shift's plan: all of the job, those that other shifts lay with the moment at which they do.</summary>
/// <param name="shifts">The shifts of the job.</param>
/// <param name="common">What the shifts have in common, as a plan.</param>
internal sealed class ShiftCourses(IReadOnlyList<ShiftEntry> shifts, MapToken common)
{
    private readonly ILookup<string, ShiftEntry> layers = (
        from shift in shifts
        from course in CoursesOf(common, shift)
        select (course, shift)).ToLookup(one => one.course, one => one.shift, StringComparer.Ordinal);

    /// <summary>The courses of one shift.</summary>
    /// <param name="courses">Its courses as they stand.</param>
    /// <param name="shift">The shift.</param>
    /// <param name="own">What it states of courses itself.</param>
    public YamlToken? Of(YamlToken? courses, ShiftEntry shift, YamlToken? own) => courses is ListToken list
        ? new ListToken([.. list.Items.Select(item => item is MapToken course && course["id"] is ScalarToken id ? Of(course, id.Text, shift, own) : item)], list.Span)
        : courses;

    private MapToken Of(MapToken course, string id, ShiftEntry shift, YamlToken? own)
    {
        var by = layers[id].Distinct().ToList();
        if (by.Contains(shift))
        {
            // The order of the job is for all shifts that lay the course; what is ordered for this one is its own to state.
            var stated = (own as ListToken)?.Items.OfType<MapToken>().Any(one => string.Equals(PositionedToken.Name(one), id, StringComparison.Ordinal) && one.Find("tonnage") is not null) == true;
            return by.Count > 1 && !stated ? Overlay.With(course, "tonnage", null) : course;
        }

        return When(by, shift) is { } moment ? Overlay.With(course, "laid_at", moment) : course;
    }

    // What a shift lays upon was there when it began: the last of the earlier shifts counts, else the first of the later ones.
    private static ScalarToken? When(List<ShiftEntry> by, ShiftEntry shift)
    {
        var placed = by.Where(other => other.Begins is not null && other.EndsAt is not null).OrderBy(other => other.Begins).ToList();
        return (placed.FindLast(other => other.Begins < shift.Begins) ?? placed.FirstOrDefault())?.EndsAt;
    }

    private static IEnumerable<string> CoursesOf(MapToken common, ShiftEntry shift)
    {
        var all = Names(common["courses"]);
        var runs = (common[JobKeys.Runs] as ListToken)?.Items.OfType<MapToken>().Where(run => shift.Runs.Any(own => string.Equals(PositionedToken.Name(run), own.Text, StringComparison.Ordinal))) ?? [];
        return runs.SelectMany(run => run["courses"] is ListToken named ? Names(named) : all).Distinct(StringComparer.Ordinal);
    }

    private static List<string> Names(YamlToken? list) => (list as ListToken)?.Items.Select(PositionedToken.Name).OfType<string>().ToList() ?? [];
}
