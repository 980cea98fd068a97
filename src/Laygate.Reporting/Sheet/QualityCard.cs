using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>Tests, times in which the mat can be worked, yield per load, hold points to be filled in.</summary>
internal static class QualityCard
{
    public static void Write(CardWriter card, SiteSheet sheet)
    {
        card.Card("Quality");
        card.Part("Time in which the mat can be worked");
        card.Table(["course", "densify within, after its screed", "yield: a load reaches", "found"], sheet.Courses.Select(course => (IReadOnlyList<string>)
            [MarkdownText.Of(course.Id), SheetNumbers.Of(course.Window) + Laid(course.Window), SheetNumbers.Of(course.RunPerLoad), CardWriter.Blank]));
        card.Gap();
        card.Item($"grit holds until {SheetNumbers.Of(sheet.GritWindow)} behind the last screed{Laid(sheet.GritWindow)}");
        card.Item("the two figures after \"between\" are the range that the computation allows for: measure, do not trust the minute");
        Tests(card, sheet);
        HoldPoints(card, sheet);
        ShiftManagerCard.StopWork(card, sheet);
    }

    private static string Laid(SheetFigure figure) =>
        figure.Laid is { } moment ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $", as laid at {moment:HH:mm}") : string.Empty;

    private static void Tests(CardWriter card, SiteSheet sheet)
    {
        card.Part("Tests");
        card.Table(["done", "test", "where", "when", "how many", "criterion", "by", "found"], sheet.Tests.Select(test => (IReadOnlyList<string>)
        [
            CardWriter.Box,
            test.Kind is { } kind ? Words.Of(kind).Replace('-', ' ') : MarkdownText.Of(test.Id),
            MarkdownText.Of(test.Where),
            MarkdownText.Of(test.When),
            MarkdownText.Of(test.HowMany),
            MarkdownText.Of(test.Criterion),
            MarkdownText.Of(test.By),
            CardWriter.Blank,
        ]));
    }

    private static void HoldPoints(CardWriter card, SiteSheet sheet)
    {
        var own = sheet.HoldPoints.Where(point => point.Owner?.Contains("quality", StringComparison.OrdinalIgnoreCase) == true).ToList();
        if (own.Count > 0)
        {
            card.Part("Hold points of quality");
            card.Table(["done", "before", "criterion", "evidence", "released by", "value found", "time"], own.Select(point => (IReadOnlyList<string>)
            [
                CardWriter.Box, MarkdownText.Of(point.Before), MarkdownText.Of(point.Criterion), MarkdownText.Of(point.Evidence), MarkdownText.Of(point.ReleasedBy),
                CardWriter.Blank, CardWriter.Blank,
            ]));
        }
    }
}
