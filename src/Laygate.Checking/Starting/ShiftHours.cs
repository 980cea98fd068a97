using System.Globalization;

namespace Laygate.Checking.Starting;

/// <summary>The points in time for which the weather of a shift is wanted.</summary>
internal static class ShiftHours
{
    /// <summary>Hours between two of them: as far apart as the weather is joined without a word.</summary>
    private const int Step = 3;

    private const string Day = "yyyy-MM-dd";
    private const string Clock = "HH:mm";
    private const string Moment = "yyyy-MM-ddTHH:mm";

    /// <summary>From the start of the shift to its end; one blank where they were not answered.</summary>
    public static IReadOnlyList<string?> Of(StartAnswers answers)
    {
        if (!DateOnly.TryParseExact(answers[StartQuestions.Date], Day, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            || !TimeOnly.TryParseExact(answers[StartQuestions.Start], Clock, CultureInfo.InvariantCulture, DateTimeStyles.None, out var start)
            || !TimeOnly.TryParseExact(answers[StartQuestions.End], Clock, CultureInfo.InvariantCulture, DateTimeStyles.None, out var end))
        {
            return [null];
        }

        var first = day.ToDateTime(new TimeOnly(start.Hour, 0));
        var last = day.ToDateTime(end);
        last = end <= start ? last.AddDays(1) : last;
        var hours = new List<string?>();
        for (var at = first; at < last; at = at.AddHours(Step))
        {
            hours.Add(at.ToString(Moment, CultureInfo.InvariantCulture));
        }

        hours.Add(last.ToString(Moment, CultureInfo.InvariantCulture));
        return hours;
    }
}
