using Laygate.Reporting.Html;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>The site sheet in its forms, each written from the same cards: a page for print, black on white, one side of A5 each; Markdown.</summary>
public static class CardsWriter
{
    /// <summary>The content security policy of the page, for a host that also sends it as a header.</summary>
    public static string ContentPolicy { get; } = HtmlWriter.Policy(CardStyles.Cards);

    /// <summary>Writes the cards of some plans as a page in UTF-8: one file that stands alone, without script.</summary>
    /// <param name="sheets">The site sheets.</param>
    /// <param name="language">One of <see cref="CardTexts.Languages"/>.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(IReadOnlyList<SiteSheet> sheets, string language, Stream output) =>
        HtmlWriter.Render<CardsPage>(output, new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(CardsPage.Sheets)] = sheets,
            [nameof(CardsPage.Texts)] = CardTexts.Of(language),
        });

    /// <summary>The cards of some plans in Markdown.</summary>
    /// <param name="sheets">The site sheets.</param>
    /// <param name="language">One of <see cref="CardTexts.Languages"/>.</param>
    /// <returns>Markdown with line feeds.</returns>
    public static string Markdown(IReadOnlyList<SiteSheet> sheets, string language)
    {
        var texts = CardTexts.Of(language);
        return string.Join('\n', sheets.Select(sheet => new CardMarkdown(sheet, texts).Write()));
    }
}
