using Laygate.Reporting.Cards.Roles;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>
/// The cards of one plan: who needs what, in the crew's language. Free text stays as the plan writes it. Every form of the site sheet is written from
/// this one set, so that no figure can differ from one form to the other.
/// </summary>
internal sealed class CardSet(SiteSheet sheet, CardTexts texts)
{
    /// <summary>What is said about the whole: head, foot and caution.</summary>
    public CardFrame Frame { get; } = new(sheet, texts);

    /// <summary>Figures as these cards write them.</summary>
    public CardNumbers Numbers { get; } = new(texts, sheet);

    /// <summary>All cards in order.</summary>
    public IReadOnlyList<Card> Cards()
    {
        var frame = new CardWords(sheet, texts);
        IReadOnlyList<Card> all =
        [
            Card(texts["card.manager"], new ManagerCard(frame).Blocks()),
            Card(texts["card.foreman"], new ForemanCard(frame).Blocks()),
            Card(texts["card.screed"], new ScreedCard(frame).Blocks()),
            .. sheet.Feeder is not null || sheet.Buffers.Count > 0 ? [Card(texts[sheet.Feeder is null ? "card.hopper" : "card.feeder"], new FeederCard(frame).Blocks())] : Array.Empty<Card>(),
            .. RollingCard.Groups(sheet).Select(group => Card(RollingCard.Role(frame, group), new RollingCard(frame, group).Blocks())),
            .. sheet.Plants.Select(plant => Card(texts["card.plant", frame.Show(plant.Id)], new PlantCard(frame, plant).Blocks())),
            Card(texts["card.quality"], new QualityCard(frame).Blocks()),
            Safety(frame),
        ];
        return [.. all.Where(card => card.Blocks.Count > 0)];
    }

    /// <summary>All sides in order.</summary>
    public IReadOnlyList<CardSide> Sides() => [.. Cards().SelectMany(Split)];

    private IReadOnlyList<CardSide> Split(Card card) => Paging.Split(card, Frame, texts);

    // What is printed in full is as much as two sides hold; the rest stands there in short.
    private Card Safety(CardWords frame)
    {
        var safety = new SafetyCard(frame);
        for (var full = safety.Tonight; ; full--)
        {
            var card = Card(texts["card.safety"], safety.Blocks(full));
            if (full <= 0 || Paging.Fits(card, Frame, texts))
            {
                return card;
            }
        }
    }

    private static Card Card(string role, IEnumerable<CardBlock> blocks) =>
        new(role, [.. blocks.Where(block => block is not CardTable { Rows.Count: 0 } and not CardList { Items.Count: 0 } and not CardRun { Rows.Count: 0 })]);
}
