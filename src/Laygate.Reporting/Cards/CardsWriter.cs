using Laygate.Reporting.Html;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>The site sheet as cards for print: black on white, one side of A5 each, in the crew's language. One file that stands alone, without script.</summary>
public static class CardsWriter
{
    /// <summary>The content security policy of the page, for a host that also sends it as a header.</summary>
    public static string ContentPolicy { get; } = HtmlWriter.Policy(CardStyles.Cards);

    /// <summary>Writes the cards of some plans as UTF-8.</summary>
    /// <param name="sheets">The site sheets.</param>
    /// <param name="language">One of <see cref="CardTexts.Languages"/>.</param>
    /// <param name="output">Where to write.</param>
    public static void Write(IReadOnlyList<SiteSheet> sheets, string language, Stream output) =>
        HtmlWriter.Render<CardsPage>(output, new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(CardsPage.Sheets)] = sheets,
            [nameof(CardsPage.Texts)] = CardTexts.Of(language),
        });
}
