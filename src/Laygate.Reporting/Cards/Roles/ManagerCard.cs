using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards.Roles;

/// <summary>Times, mix, decisions, hold points, whom to call.</summary>
internal sealed class ManagerCard(CardWords card)
{
    private const int MostTitles = 6;

    private readonly SiteSheet sheet = card.Sheet;
    private readonly CardTexts texts = card.Texts;
    private readonly CardNumbers numbers = card.Numbers;

    public IEnumerable<CardBlock> Blocks()
    {
        yield return Draft();
        yield return sheet.Moments.Count > 0
            ? card.Table(texts["times"], ["time", "what", "found"], sheet.Moments, moment =>
                [Time(moment), texts[$"moment.{Words.Of(moment.Kind)}"], texts["blank"]])
            : new CardList(texts["times"], [texts["times.none"]]);
        yield return Mix();
        yield return Committed();
        yield return new CardList(texts["decisions"], [.. sheet.Contingencies.Select(Decision)]);
        yield return card.Table(texts["holds"], ["before", "criterion", "released", "blank.three"], sheet.HoldPoints, point =>
            [card.Own(point.Before), card.Own(point.Criterion), card.Own(point.ReleasedBy), texts["blank"]]);
        yield return new CardList(texts["phones"], [.. sheet.People.Select(person => new CardLine(
            person.Role is null ? card.Show(person.Id) : card.Own(person.Role),
            texts["phone", card.Show(person.Name), card.Own(person.Call)] + (string.IsNullOrWhiteSpace(person.Deputy) ? string.Empty : texts["phone.deputy", card.Show(person.Deputy)])))]);
        yield return new CardList(texts["rest"],
        [
            texts["rest.limits"] + (sheet.Warnings.Count > 0 ? " " + texts["rest.warnings", sheet.Warnings.Count.ToString(CultureInfo.InvariantCulture)] : string.Empty),
        ]);
    }

    private string Time(SheetMoment moment) => moment.Origin == FigureKind.Stated
        ? numbers.Time(moment.At)
        : $"≈{PlainText.Glue}" + numbers.About(moment.At, moment.Kind is SheetMomentKind.FirstLoad or SheetMomentKind.SetUp or SheetMomentKind.LatestStart);

    // A card has room for the first of them; the document that is no card has all.
    private CardList Draft()
    {
        var titles = card.Failing().ToList();
        return new CardList(texts["draft.why"],
        [
            .. titles.Take(MostTitles).Select(title => (CardLine)title),
            .. titles.Count > MostTitles ? [texts["draft.more", (titles.Count - MostTitles).ToString(CultureInfo.InvariantCulture)]] : Array.Empty<CardLine>(),
        ]);
    }

    // Where each course has a mix of its own, what is under way stands beside it; otherwise below. One unit stands in the title.
    private CardTable Mix()
    {
        var units = sheet.Courses.SelectMany(course => new[] { course.Tonnage, course.Ordered, course.Payload, course.LastLoad }).Concat(sheet.Committed.SelectMany(mix => new[] { mix.OnTheWay, mix.OnMachines }))
            .Select(figure => figure.Value?.Unit).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        string Mass(ShownValue? value, int decimals) => value is null ? "—" : units.Count == 1 ? numbers.Local(CardNumbers.Bare(value, decimals)) : decimals == 0 ? CardNumbers.Whole(value) : numbers.Tenth(value);
        var title = texts[IsByCourse ? "tonnages.lost" : "tonnages", units.Count == 1 ? card.Show(units[0]) : string.Empty].Replace(" ()", string.Empty, StringComparison.Ordinal);
        return card.Table("tonnages", ["course", "needed", "ordered", "loads", "a-load", "last-load", "on-the-way", "on-machines"], sheet.Courses, (course, index) =>
        [
            card.Show(course.Id), Mass(course.Tonnage.Value, 0), Mass(course.Ordered.Value, 0),
            course.Loads == 0 ? "—" : course.Loads.ToString(CultureInfo.InvariantCulture), Mass(course.Payload.Value, 1), Mass(course.LastLoad.Value, 1),
            IsByCourse ? Mass(sheet.Committed[index].OnTheWay.Value, 0) : "—", IsByCourse ? Mass(sheet.Committed[index].OnMachines.Value, 0) : "—",
        ]) with
        { Title = title };
    }

    private bool IsByCourse => sheet.Committed.Count == sheet.Courses.Count && sheet.Courses.Select((course, i) => string.Equals(course.MixId, sheet.Committed[i].Mix, StringComparison.Ordinal)).All(same => same);

    private CardList Committed() => new(texts["committed"], IsByCourse ? [] : [.. sheet.Committed.Where(mix => mix.OnTheWay.Value is not null || mix.OnMachines.Value is not null).Select(mix =>
        new CardLine(card.Show(mix.Mix), texts["committed.line", CardNumbers.Whole(mix.OnTheWay.Value), CardNumbers.Whole(mix.OnMachines.Value)]))]);

    private CardLine Decision(Contingency action) => new(
        action.Event is { } sign ? texts[$"event.{Words.Of(sign)}"] : card.Show(action.Id),
        texts["decision", card.Own(action.When), card.Own(action.Action), card.Own(action.DecidedBy)] + (action.Spare is { Length: > 0 } spare ? texts["decision.spare", card.Own(spare)] : string.Empty));
}
