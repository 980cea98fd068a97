using System.Globalization;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>The site sheet in Markdown: one short card per role.</summary>
public static class SheetDocument
{
    /// <summary>Writes the cards of one plan.</summary>
    /// <param name="sheet">What they show.</param>
    /// <returns>Markdown with line feeds.</returns>
    public static string Write(SiteSheet sheet)
    {
        var cards = new List<Action<CardWriter>> { writer => ShiftManagerCard.Write(writer, sheet), writer => ScreedCard.Write(writer, sheet) };
        if (sheet.Feeder is not null || sheet.Buffers.Count > 0)
        {
            cards.Add(writer => FeederCard.Write(writer, sheet));
        }

        cards.AddRange(sheet.Rollers.Select(roller => (Action<CardWriter>)(writer => RollerCard.Write(writer, sheet, roller))));
        cards.AddRange(sheet.Plants.Select(plant => (Action<CardWriter>)(writer => PlantCard.Write(writer, sheet, plant))));
        cards.Add(writer => QualityCard.Write(writer, sheet));
        cards.Add(writer => SafetyCard.Write(writer, sheet));
        var document = new CardWriter(sheet, cards.Count);
        Head(document, sheet);
        cards.ForEach(card => card(document));
        return document.Text;
    }

    private static void Head(CardWriter document, SiteSheet sheet)
    {
        document.Line($"# Site sheet: {MarkdownText.Of(sheet.PlanTitle ?? sheet.PlanId)}{(sheet.IsDraft ? " (DRAFT)" : string.Empty)}");
        document.Gap();
        document.Line($"Derived from plan {MarkdownText.Of(sheet.PlanId)}, revision {MarkdownText.Of(sheet.Revision ?? "not stated")}, {CardWriter.Hash(sheet.PlanHash)}, "
            + $"checked by rule book {CardWriter.Hash(sheet.BookHash)} with Laygate {MarkdownText.Of(sheet.ProgramVersion)}, made on {sheet.Issued.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}. "
            + "When the plan changes, this sheet is void: make it again.");
        document.Gap();
        document.Line("**Site conditions and the competent person come first.** Each figure says where it comes from: *stated* in the plan, *computed* from it, *assumed*, or a *limit*. "
            + "Computed figures hold for even work without chance; times are local, moments to five minutes, loads to the minute before.");
        if (sheet.IsDraft)
        {
            Draft(document, sheet);
        }

        document.Gap();
        foreach (var sentence in Caution.Sentences)
        {
            document.Item(MarkdownText.Of(sentence));
        }
    }

    private static void Draft(CardWriter document, SiteSheet sheet)
    {
        document.Gap();
        document.Line("**DRAFT, not for work.** " + (sheet.Failing.Count == 0
            ? "It was asked for as a draft."
            : "The plan fails; work does not start on it until these are mended:"));
        document.Gap();
        foreach (var finding in sheet.Failing)
        {
            document.Item($"{MarkdownText.Of(Wording.Message(finding))} ({MarkdownText.Of(finding.Rule)}, {MarkdownText.Of(finding.Address)})");
        }
    }
}
