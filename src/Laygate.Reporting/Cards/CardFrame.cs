using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>What stands around each card: of which plan it is, for which shift, who comes first.</summary>
internal sealed class CardFrame(SiteSheet sheet, CardTexts texts)
{
    private readonly CardNumbers numbers = new(texts, sheet);

    /// <summary>Whether each side has the mark of a draft.</summary>
    public bool IsDraft => sheet.IsDraft;

    /// <summary>Title of all cards of the plan.</summary>
    public string Title => $"{texts["title"]}: {PlainText.Show(sheet.PlanTitle ?? sheet.PlanId)}";

    /// <summary>Plan, revision, hash and shift.</summary>
    public string Plan =>
        $"{texts["plan", PlainText.Show(sheet.PlanId), PlainText.Show(sheet.Revision ?? texts["revision.none"])]}, {texts["hash", Hash(sheet.PlanHash)]}. {Valid}";

    /// <summary>What cannot wait, then who comes first; on every side.</summary>
    public string Caution => $"{texts["emergency.short"]} {texts["competent"]}";

    /// <summary>When the cards were made, and what makes them void.</summary>
    public string Issued => $"{texts["issued", numbers.Day(sheet.Issued), PlainText.Show(sheet.ProgramVersion)]}.{(numbers.IsForeign ? $" {texts["foreign"]}" : string.Empty)}";

    /// <summary>The rule book that the plan was checked by.</summary>
    public string Book => texts["book", Hash(sheet.BookHash)];

    private string Valid => (sheet.ShiftStart, sheet.ShiftEnd) switch
    {
        ({ } start, { } end) => texts["valid", numbers.Day(start), numbers.Time(end)] + ".",
        ({ } start, null) => texts["valid.open", numbers.Day(start)] + ".",
        _ => texts["valid.none"],
    };

    private static string Hash(string hash) => PlainText.Show(hash.Length > 12 ? hash[..12] : hash);
}
