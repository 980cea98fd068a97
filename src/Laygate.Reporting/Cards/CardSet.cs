using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards;

/// <summary>Makes the cards of one plan: who needs what, in the crew's language. Free text stays as the plan writes it.</summary>
internal sealed class CardSet
{
    private readonly SiteSheet sheet;
    private readonly CardTexts texts;
    private readonly CardNumbers numbers;

    public CardSet(SiteSheet sheet, CardTexts texts)
    {
        (this.sheet, this.texts) = (sheet, texts);
        numbers = new CardNumbers(texts, sheet);
    }

    /// <summary>All sides in order.</summary>
    public IReadOnlyList<CardSide> Sides() =>
    [
        .. Card(texts["card.manager"], Manager()),
        .. Card(texts["card.screed"], Screed()),
        .. sheet.Feeder is not null || sheet.Buffers.Count > 0 ? Card(texts[sheet.Feeder is null ? "card.hopper" : "card.feeder"], Feeder()) : [],
        .. sheet.Rollers.SelectMany(roller => Card(texts[roller.IsSpare ? "card.roller.spare" : "card.roller", Show(roller.Id)], Roller(roller))),
        .. sheet.Plants.SelectMany(plant => Card(texts["card.plant", Show(plant.Id)], Plant(plant))),
        .. Card(texts["card.quality"], Quality()),
        .. Card(texts["card.safety"], Safety()),
    ];

    private IReadOnlyList<CardSide> Card(string role, IEnumerable<CardBlock> blocks) =>
        Paging.Split(role, [.. blocks.Where(block => block is not CardTable { Rows.Count: 0 } and not CardList { Items.Count: 0 })], title => texts["continued", title]);

    private IEnumerable<CardBlock> Manager()
    {
        yield return sheet.Moments.Any(moment => moment.Kind == SheetMomentKind.LastMetre) || sheet.Moments.Count > 0
            ? Table("times", ["time", "what", "found"], sheet.Moments, moment =>
            [
                moment.Origin == FigureKind.Stated ? numbers.Time(moment.At) : numbers.About(moment.At, moment.Kind is SheetMomentKind.FirstLoad or SheetMomentKind.SetUp or SheetMomentKind.LatestStart),
                $"{texts[$"moment.{Words.Of(moment.Kind)}"]} ({numbers.Kind(moment.Origin)})", texts["blank"],
            ])
            : new CardList(texts["times"], [texts["times.none"]]);
        yield return Table("tonnages", ["course", "needed", "ordered", "loads", "last-load"], sheet.Courses, course =>
        [
            Show(course.Id), CardNumbers.Whole(course.Tonnage.Value), CardNumbers.Whole(course.Ordered.Value),
            course.Loads == 0 ? "—" : course.Loads.ToString(CultureInfo.InvariantCulture), course.LastLoad.Value is { } last ? numbers.Tenth(last) : "—",
        ]);
        yield return Table("committed", ["mix", "on-the-way", "on-machines"], sheet.Committed, mix => [Show(mix.Mix), CardNumbers.Whole(mix.OnTheWay.Value), CardNumbers.Whole(mix.OnMachines.Value)]);
        yield return Stop();
        yield return Table("decisions", ["sign", "when", "action", "decides"], sheet.Contingencies, action =>
            [action.Event is { } sign ? texts[$"event.{Words.Of(sign)}"] : Show(action.Id), Own(action.When), Own(action.Action), Own(action.DecidedBy)]);
        yield return Table("holds", ["before", "criterion", "released", "found", "time", "initials"], sheet.HoldPoints, point =>
            [Own(point.Before), Own(point.Criterion), Own(point.ReleasedBy), texts["blank"], texts["blank"], "____"]);
        yield return Table("phones", ["role", "name", "call", "deputy"], sheet.People, person =>
            [person.Role is null ? Show(person.Id) : Own(person.Role), Show(person.Name), Own(person.Call), Show(person.Deputy)]);
    }

    private CardList Stop() => new(texts["stop"],
    [
        .. sheet.Speeds.Where(speed => speed.StopLimit.Value is not null).Select(speed => texts["stop.paver", Show(speed.Paver), numbers.Of(speed.StopLimit)]),
        .. sheet.Mixes.Where(mix => mix.RefuseBelow.Value is not null).Select(mix => texts["stop.load", Show(mix.Name), numbers.Of(mix.RefuseBelow)]),
        .. Limits(sheet.Limits.Where(finding => !finding.Address.StartsWith("roller:", StringComparison.Ordinal))),
    ]);

    // A limit that holds at several places is said once.
    private IEnumerable<string> Limits(IEnumerable<Finding> findings) => findings
        .GroupBy(finding => (finding.Rule, finding.Title, Limit: numbers.Limit(finding.Limit!)))
        .Select(same => texts["stop.limit", Title(same.First()), Places(same), same.Key.Limit]);

    // The rule's own words where this language has none for it, marked as such; its number lets anybody look it up.
    private string Title(Finding finding) =>
        $"{texts.Rule(finding.Rule)?.Title ?? Foreign(finding.Title)} ({texts["rule", Show(finding.Rule)]})";

    private string Wrong(Finding finding)
    {
        var (title, remedy) = texts.Rule(finding.Rule) ?? (Foreign(finding.Title), Foreign(finding.Remedy));
        return $"{title}. {remedy} ({texts["rule", Show(finding.Rule)]})";
    }

    // What there is only once, such as the weather, needs no name beside the title.
    private string Places(IEnumerable<Finding> findings)
    {
        var places = findings.Select(finding => finding.Address.Split(':', 2)).Where(parts => parts.Length == 2)
            .GroupBy(parts => parts[0], parts => parts[1], StringComparer.Ordinal)
            .Select(kind => $"{Kind(kind.Key)} {string.Join(", ", kind.Distinct(StringComparer.Ordinal).Select(Show))}").ToList();
        return places.Count == 0 ? string.Empty : ", " + string.Join(", ", places);
    }

    private string Kind(string kind) => texts.Find($"kind-of.{kind}") is { Length: > 0 } word ? word : Show(kind);

    private IEnumerable<CardBlock> Screed()
    {
        yield return Table("thickness", ["course", "compacted", "behind", "levelled", "found"], sheet.Courses, course =>
            [Show(course.Id), numbers.Of(course.Thickness), course.Behind.Value is null ? "—" : numbers.Known(course.Behind), Own(course.LevelledOn), texts["blank"]]);
        yield return Table("width", ["run", "station", "width"], sheet.Widths, width =>
            [Show(width.Run), width.At is null ? texts["whole-run"] : CardNumbers.Whole(width.At), numbers.Of(width.Width, exact: true)]);
        yield return new CardList(texts["speed"], [.. sheet.Speeds.SelectMany(Speed), texts["speed.keep"]]);
        yield return Table("obstacles", ["run", "what", "action", "who", "when"], sheet.Obstacles, obstacle =>
            [obstacle.At.Value is { } at ? $"{Show(obstacle.Run)} {CardNumbers.Whole(at)}" : Show(obstacle.Run), Own(obstacle.What), Own(obstacle.Treatment), Own(obstacle.Who), Own(obstacle.When)]);
    }

    private IEnumerable<string> Speed(SheetSpeed speed)
    {
        yield return texts["speed.planned", Show(speed.Paver), numbers.Known(speed.Planned)];
        if (speed.Lowest.Value is { } low && speed.Highest.Value is { } high)
        {
            yield return texts["speed.band", texts["band", numbers.Of(low, exact: true), numbers.Of(high, exact: true)]];
        }

        if (speed.RollersAllow.Value is not null)
        {
            yield return texts["speed.rollers", numbers.Known(speed.RollersAllow)];
        }

        if (speed.SupplyAllows.Value is not null)
        {
            yield return texts["speed.supply", numbers.Known(speed.SupplyAllows)];
        }

        yield return texts["speed.stop", numbers.Known(speed.StopLimit)];
    }

    private IEnumerable<CardBlock> Feeder()
    {
        yield return new CardList(texts["levels"],
        [
            .. sheet.Buffers.Where(buffer => buffer.Call.Value is not null).Select(buffer => texts["level.call", Show(buffer.Course), numbers.Of(buffer.Call)]),
            .. sheet.Buffers.Where(buffer => buffer.CallHighest.Value is not null).Select(buffer => texts["level.never", Show(buffer.Course), numbers.Of(buffer.CallHighest)]),
            .. sheet.Buffers.Select(buffer => texts["level.lowest", Show(buffer.Course), numbers.Of(buffer.Lowest), numbers.Of(buffer.Capacity)]),
            texts["level.decide"],
        ]);
        if (sheet.Feeder is { } feeder)
        {
            yield return new CardList(texts["drill"],
            [
                texts["drill.times", numbers.Of(feeder.Exchange), numbers.Of(feeder.Changeover)],
                texts[feeder.EmptiedBeforeChange switch { true => "drill.empty.yes", false => "drill.empty.no", _ => "drill.empty.unknown" }],
                texts["drill.rest", Or(feeder.RestGoesTo)],
            ]);
            yield return new CardList(texts["right-mix"], feeder.Identification is not { } marks ? [] :
            [
                texts["mark.truck", Or(marks.OnTruck)], texts["mark.ticket", Or(marks.OnTicket)], texts["mark.released", Or(marks.ReleasedBy)], texts["mark.mismatch", Or(marks.OnMismatch)],
            ]);
        }

        yield return sheet.Loads.Count == 0
            ? new CardList(texts["order"], [texts["order.none"]])
            : Table("order", ["load", "for", "size", "tip", "ends", "found"], sheet.Loads, load =>
            [
                load.Number.ToString(CultureInfo.InvariantCulture), load.IsLast ? $"{Show(load.Course)}, {texts["last"]}" : Show(load.Course), numbers.Tenth(load.Size),
                numbers.Time(load.TipsBy), CardNumbers.Whole(load.EndsAt), texts["blank"],
            ]);
    }

    private IEnumerable<CardBlock> Roller(SheetRoller roller)
    {
        yield return new CardList(texts["pattern"], [.. Pattern(roller)]);
        if (roller.Strips.Count > 0)
        {
            yield return new CardStrips(texts["strips"], roller.Strips, texts["strips.order"]);
        }

        yield return new CardList(texts["never"], [texts["never.stand"], texts["never.zone"], texts["never.people"]]);
        yield return new CardList(texts["stop"], [.. Limits(sheet.Limits.Where(finding => string.Equals(finding.Address, $"roller:{roller.Id}", StringComparison.Ordinal)))]);
        yield return new CardList(texts["care"],
        [
            texts["care.water", Or(roller.WaterAndFuel)], texts["care.parking", Or(roller.Parking)], texts["care.breaks", Or(roller.Breaks)], texts["care.check", texts["blank"]],
        ]);
    }

    private IEnumerable<string> Pattern(SheetRoller roller)
    {
        if (roller.Phase is not { } phase)
        {
            yield return texts["roller.standby"];
        }
        else
        {
            yield return roller.Passes is { } passes ? texts["roller.passes", Show(phase), passes.ToString(CultureInfo.InvariantCulture)] : texts["roller.passes.none", Show(phase)];
            yield return texts["roller.zone", numbers.Of(roller.ZoneFrom), numbers.Of(roller.ZoneTo)];
            yield return texts["roller.minutes", CardNumbers.Whole(roller.FromMinutes.Value), CardNumbers.Whole(roller.DoneBy.Value)];
        }

        var mode = roller.Mode is { } known ? texts[$"mode.{Words.Of(known)}"] : texts["none"];
        yield return roller is { PassesInMode: { } some, Passes: { } all } && some < all
            ? texts["roller.mode.share", mode, some.ToString(CultureInfo.InvariantCulture), all.ToString(CultureInfo.InvariantCulture)]
            : texts["roller.mode", mode];
        if (roller is { Mode: RollingMode.Vibration, Frequency.Value: not null, Amplitude.Value: not null })
        {
            yield return texts["roller.drum", numbers.Of(roller.Frequency), numbers.Of(roller.Amplitude)];
        }

        yield return texts["roller.speed", numbers.Of(roller.Speed)];
    }

    private IEnumerable<CardBlock> Plant(SheetPlant plant)
    {
        yield return Table("mixes", ["mix", "lowest", "expected", "highest", "refuse"], plant.Mixes, mix =>
            [Show(mix.Name), numbers.Of(mix.Lowest), numbers.Of(mix.Expected), numbers.Of(mix.Highest), numbers.Of(mix.RefuseBelow)]);
        var own = sheet.Loads.Where(load => load.Plant is null
            ? plant.Mixes.Any(mix => string.Equals(mix.Id, load.Mix, StringComparison.Ordinal))
            : string.Equals(load.Plant, plant.Id, StringComparison.Ordinal)).ToList();
        yield return new CardList(texts["orders"],
        [
            texts["plant.words"], texts["plant.output", numbers.Of(plant.Planned), Or(plant.Spare)],
            .. own.Where(load => load.IsLast).Select(load => texts["plant.last", Show(load.Course), numbers.Tenth(load.Size), load.OfMix.ToString(CultureInfo.InvariantCulture)]),
        ]);
        yield return own.Count == 0
            ? new CardList(texts["order"], [texts["order.none"]])
            : Table("order", ["load", "for", "size", "leave", "tip", "left"], own, load =>
            [
                load.OfMix.ToString(CultureInfo.InvariantCulture), load.IsLast ? $"{Show(load.Course)}, {texts["last"]}" : Show(load.Course), numbers.Tenth(load.Size),
                numbers.Time(load.LeavesAt), numbers.Time(load.TipsBy), texts["blank"],
            ]);
    }

    private string Laid(SheetFigure figure) => figure.Laid is { } moment
        ? texts["laid", moment.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture)]
        : string.Empty;

    private IEnumerable<CardBlock> Quality()
    {
        yield return new CardList(texts["window"],
        [
            .. sheet.Courses.Where(course => course.Window.Value is not null).Select(course => texts["window.line", Show(course.Id), numbers.Of(course.Window)] + Laid(course.Window)),
            .. sheet.Courses.Where(course => course.RunPerLoad.Value is not null).Select(course => texts["yield.line", Show(course.Id), numbers.Of(course.RunPerLoad)]),
            .. sheet.GritWindow.Value is null ? Array.Empty<string>() : [texts["grit.line", numbers.Of(sheet.GritWindow)] + Laid(sheet.GritWindow)],
            texts["measure"],
        ]);
        yield return Table("tests", ["test", "where", "when", "criterion", "by", "found"], sheet.Tests, test =>
            [test.Kind is { } kind ? texts[$"test.{Words.Of(kind)}"] : Show(test.Id), Own(test.Where), Own(test.When), Own(test.Criterion), Own(test.By), texts["blank"]]);
        yield return Stop();
    }

    private IEnumerable<CardBlock> Safety()
    {
        yield return new CardList(texts["anybody"], [texts["emergency"], texts["doubt"], .. sheet.OverheadLines.Select(Overhead)]);
        if (sheet.Wrong.Count > 0)
        {
            yield return new CardList(texts["wrong"], [.. sheet.Wrong.Select(Wrong)]);
        }

        yield return new CardList(texts["opening"],
        [
            sheet.Opening.Below.Value is null ? texts["opening.none"] : texts["opening.below", numbers.Of(sheet.Opening.Below)],
            texts["opening.released", Or(sheet.Opening.ReleasedBy)],
            .. sheet.Opening.ClosureEnds is { } end ? [texts["opening.closure", numbers.Time(end)]] : Array.Empty<string>(),
        ]);
        yield return Table("measures", ["for", "what", "where", "who", "seen"], sheet.Measures, measure =>
            [measure.Kind is { } kind ? texts[$"measure.{Words.Of(kind)}"] : Show(measure.Id), Own(measure.What), Own(measure.Where), Own(measure.Who), "☐"]);
    }

    private string Overhead(SheetOverheadLine line) => texts[
        "line.overhead", Show(line.Id), line.At.Value is { } at ? $" {texts["at"]} {CardNumbers.Whole(at)}" : string.Empty, line.Height.Value is null ? texts["line.unknown"] : numbers.Of(line.Height)];

    // A column of which no row says anything takes room from those that do.
    private CardTable Table<T>(string title, string[] head, IEnumerable<T> rows, Func<T, IReadOnlyList<string>> cells)
    {
        var all = rows.Select(cells).ToList();
        var kept = Enumerable.Range(0, head.Length).Where(column => column == 0 || all.Exists(row => row[column] is not "—")).ToList();
        if (kept.Count == 1 && head.Length > 1)
        {
            all.Clear();
        }

        return new(texts[title], [.. kept.Select(column => texts[head[column]])], [.. all.Select(row => (IReadOnlyList<string>)[.. kept.Select(column => row[column])])]);
    }

    // Free text of the plan; in quotes where the card speaks another language.
    private string Own(string? text) => string.IsNullOrWhiteSpace(text) ? "—" : Quoted(text, numbers.IsForeign);

    private string Foreign(string text) => Quoted(text, texts.Language is not "en");

    private string Quoted(string text, bool isForeign) => isForeign ? texts["quoted", PlainText.Show(text)] : PlainText.Show(text);

    private static string Show(string? text) => string.IsNullOrWhiteSpace(text) ? "—" : PlainText.Show(text);

    private string Or(string? text) => string.IsNullOrWhiteSpace(text) ? texts["none"] : Own(text);
}
