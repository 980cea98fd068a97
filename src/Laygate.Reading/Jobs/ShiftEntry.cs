using System.Globalization;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Jobs;

/// <summary>A shift as the job states it.</summary>
/// <param name="Id">Its id, where it stands.</param>
/// <param name="Entry">All its keys.</param>
/// <param name="Times">The keys of its block <c>shift</c>: its own, over those that the job states for every shift.</param>
/// <param name="Runs">Ids of the runs that it lays, in order.</param>
internal sealed record ShiftEntry(ScalarToken Id, MapToken Entry, MapToken Times, IReadOnlyList<ScalarToken> Runs)
{
    /// <summary>When its last metre is laid at the latest, as a plan writes it, and where its date stands; null where date or times are no such.</summary>
    public ScalarToken? EndsAt
    {
        get
        {
            if (Date is not { } date || Start is not { } start || Time("end") is not { } end)
            {
                return null;
            }

            var day = end <= start && date < DateOnly.MaxValue ? date.AddDays(1) : date;
            var zone = (Times["zone_at_end"] ?? Times["zone"]) is ScalarToken stated ? stated.Text : string.Empty;
            return new ScalarToken(string.Create(CultureInfo.InvariantCulture, $"{day:yyyy-MM-dd}T{end:HH:mm}{zone}"), ScalarStyle.Plain, Times["date"]!.Span);
        }
    }

    /// <summary>When it begins, by the clock of the place; null where date or start are no such.</summary>
    public DateTime? Begins => Date is { } date && Start is { } start ? date.ToDateTime(start) : null;

    private DateOnly? Date => Times["date"] is ScalarToken text ? ScalarTexts.Date(text.Text) : null;

    private TimeOnly? Start => Time("start");

    private TimeOnly? Time(string key) => Times[key] is ScalarToken text ? ScalarTexts.Time(text.Text) : null;
}
