using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Laygate.Register;
using Laygate.Reporting.Text;
using Laygate.Service.Pages;

namespace Laygate.Service.Telling;

/// <summary>What a notice says, for programs and for people. Of the plan it holds the title and counts, nothing else.</summary>
internal static class NoticeText
{
    private static readonly JsonSerializerOptions Plain = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
    };

    /// <summary>The body of a webhook, the same with each attempt.</summary>
    /// <param name="notice">The notice.</param>
    /// <param name="address">Address of the service; empty: links name the path alone.</param>
    public static byte[] Body(NoticeClaim notice, string address) => JsonSerializer.SerializeToUtf8Bytes(
        new
        {
            Type = "submission." + JsonNamingPolicy.SnakeCaseLower.ConvertName(notice.Event.ToString()),
            Timestamp = notice.At.UtcDateTime,
            Data = new
            {
                notice.Facts.Submission,
                notice.Facts.Series,
                notice.Facts.Revision,
                notice.Facts.Title,
                notice.Facts.State,
                notice.Facts.Counts,
                notice.Facts.Failing,
                notice.Facts.Changes,
                Link = Link(notice, address),
            },
        },
        Plain);

    /// <summary>Subject of a mail: one line, whatever the plan calls itself.</summary>
    public static string Subject(NoticeClaim notice) => $"{Said(notice.Event)}: {Name(notice.Facts)}";

    /// <summary>Text of a mail.</summary>
    /// <param name="notice">The notice.</param>
    /// <param name="address">Address of the service; empty: links name the path alone.</param>
    public static string Mail(NoticeClaim notice, string address) => string.Join('\n', Lines(notice, address)) + "\n";

    /// <summary>An event in words, such as <c>screened again, with changes</c>.</summary>
    public static string Words(NoticeEvent what) => what switch
    {
        NoticeEvent.Submitted => "submitted",
        NoticeEvent.Screened => "screened",
        NoticeEvent.ScreenedAgain => "screened again, with changes",
        NoticeEvent.Accepted => "accepted, with or without departures",
        NoticeEvent.Returned => "returned",
        _ => "a comment waits for an answer",
    };

    private static IEnumerable<string> Lines(NoticeClaim notice, string address)
    {
        var facts = notice.Facts;
        yield return $"{Said(notice.Event)}: {Name(facts)}";
        yield return $"It is now: {StateWords.Of(facts.State)}.";
        if (facts.Counts is { } counts)
        {
            var severities = facts.Failing is { } by ? Text($" (severity A {by.A}, B {by.B}, C {by.C})") : string.Empty;
            yield return Text($"Findings: {counts.Failed} fail{severities}, {counts.Warned} warn, {counts.NotAssessed} not assessed, {counts.NeedsPerson} need a person, {counts.Passed} pass, {counts.Departed} under a departure.");
        }

        if (facts.Changes is { } changes)
        {
            yield return Text($"Against the screening before: {changes.Worse} worse, {changes.Better} better, {changes.New} new, {changes.Gone} gone, {changes.Otherwise} otherwise changed.");
        }

        yield return string.Empty;
        yield return Link(notice, address);
        yield return string.Empty;
        yield return Text($"{notice.At.UtcDateTime:yyyy-MM-dd HH:mm} UTC, notice {notice.Id}.");
        yield return $"{PlainText.Show(notice.To.OwnerName)} has asked for this. Change it or end it: {address}/notices";
        yield return "A check states what follows from the plan. It is no approval, permit or safety assessment.";
    }

    private static string Said(NoticeEvent what) => what switch
    {
        NoticeEvent.Submitted => "Submitted",
        NoticeEvent.Screened => "Screened",
        NoticeEvent.ScreenedAgain => "Screened again, with changes",
        NoticeEvent.Accepted => "Accepted",
        NoticeEvent.Returned => "Returned",
        _ => "Comment waits for an answer",
    };

    private static string Name(NoticeFacts facts) => Text($"{(facts.Title is { } title ? PlainText.Show(title) : "plan " + facts.Submission)}, revision {facts.Revision}");

    private static string Link(NoticeClaim notice, string address) => $"{address}/submissions/{notice.Facts.Submission}";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
