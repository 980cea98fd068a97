using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards.Roles;

/// <summary>What stops the work, tests with place, criterion, limit and a blank, times in which the mat can be worked.</summary>
internal sealed class QualityCard(CardWords card)
{
    private readonly SiteSheet sheet = card.Sheet;
    private readonly CardTexts texts = card.Texts;
    private readonly CardNumbers numbers = card.Numbers;
    private readonly StopLines stops = new(card);

    public IEnumerable<CardBlock> Blocks()
    {
        yield return new CardList(texts["stop"], [.. stops.All()]);
        yield return card.Table(texts["tests"], ["test", "where", "criterion", "found"], sheet.Tests.Where(IsTonight), test =>
            [Name(test.Test), card.Own(test.Test.Where, test.Test.When, HowMany(test.Test)), Criterion(test), texts["blank"]]);
        yield return new CardList(texts["evidence"], [.. sheet.HoldPoints.Where(point => !string.IsNullOrWhiteSpace(point.Evidence)).Select(point =>
            new CardLine(card.Own(point.Before), $"{card.Own(point.Evidence)}{(string.IsNullOrWhiteSpace(point.Owner) ? string.Empty : $" ({card.Own(point.Owner)})")}"))]);
    }

    // A trial length is laid before the shift.
    private bool IsTonight(SheetTest test) => test.Test is not { Kind: TestKind.TrialLength, Done: { } done } || sheet.ShiftStart is not { } start || done >= DateOnly.FromDateTime(start.Date);

    private string Name(Test test) =>
        $"{(test.Kind is { } kind ? texts[$"test.{Words.Of(kind)}"] : card.Show(test.Id))}{(string.IsNullOrWhiteSpace(test.By) ? string.Empty : $" ({card.Own(test.By)})")}";

    // "each load" both as when and as how many says it once.
    private static string? HowMany(Test test) => string.Equals(test.HowMany, test.When, StringComparison.OrdinalIgnoreCase) ? null : test.HowMany;

    private string Criterion(SheetTest test)
    {
        var limits = test.Limits.GroupBy(limit => (Text: limit.Figure is { Kind: FigureKind.Computed, Value: { } value } ? $"≈ {numbers.Tenth(value)}" : numbers.Of(limit.Figure), limit.IsLeast)).Select(same =>
            texts[same.Key.IsLeast ? "limit.least" : "limit.aim", same.Key.Text] + (test.Limits.Count == 1 ? string.Empty : $" ({string.Join(", ", same.Select(limit => card.Show(limit.Of)))})")).ToList();
        var criterion = string.IsNullOrWhiteSpace(test.Test.Criterion) ? test.Test.Kind is TestKind.TrialLength ? "—" : texts["none"] : card.Own(test.Test.Criterion);
        return limits.Count == 0 ? criterion : $"{criterion}. {texts["in-plan", string.Join("; ", limits)]}";
    }
}
