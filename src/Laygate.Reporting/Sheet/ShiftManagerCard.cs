using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Reporting.Language;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Sheet;

/// <summary>Times, tonnages, decisions, hold points and telephone list.</summary>
internal static class ShiftManagerCard
{
    public static void Write(CardWriter card, SiteSheet sheet)
    {
        card.Card("Shift manager");
        Times(card, sheet);
        Tonnages(card, sheet);
        Committed(card, sheet);
        StopWork(card, sheet);
        Decisions(card, sheet);
        HoldPoints(card, sheet);
        card.Part("Whom to call");
        card.Table(["role", "name", "call", "deputy"], sheet.People.Select(person => (IReadOnlyList<string>)
            [MarkdownText.Of(person.Role ?? person.Id), MarkdownText.Of(person.Name), MarkdownText.Of(person.Call), MarkdownText.Of(person.Deputy)]));
        Warnings(card, sheet);
    }

    /// <summary>Limits at which the work stops, as rules and plan give them.</summary>
    public static void StopWork(CardWriter card, SiteSheet sheet)
    {
        card.Part("Stop work when");
        foreach (var speed in sheet.Speeds.Where(speed => speed.StopLimit.Value is not null))
        {
            card.Item($"the paver {MarkdownText.Of(speed.Paver)} has stood for {SheetNumbers.Of(speed.StopLimit)}: make a joint");
        }

        foreach (var mix in sheet.Mixes.Where(mix => mix.RefuseBelow.Value is not null))
        {
            card.Item($"a load of {MarkdownText.Of(mix.Name)} is below {SheetNumbers.Of(mix.RefuseBelow)}: refuse it");
        }

        foreach (var finding in sheet.Limits.Where(finding => !finding.Address.StartsWith("roller:", StringComparison.Ordinal)))
        {
            card.Item($"{MarkdownText.Of(LimitWords.Of(finding))} at {MarkdownText.Of(finding.Address)} (limit, {MarkdownText.Of(finding.Rule)}): stop and ask");
        }
    }

    private static void Times(CardWriter card, SiteSheet sheet)
    {
        card.Part("Times");
        card.Table(["time", "what", "from", "found"], sheet.Moments.Select(moment => (IReadOnlyList<string>)
        [
            moment.Origin == FigureKind.Stated ? SheetNumbers.Time(moment.At, sheet.ShiftStart) : SheetNumbers.About(moment.At, sheet.ShiftStart, IsLatest(moment.Kind)),
            Name(moment.Kind),
            SheetNumbers.Kind(moment.Origin),
            CardWriter.Blank,
        ]));
        if (sheet.Moments.All(moment => moment.Kind != SheetMomentKind.LastMetre))
        {
            card.Gap();
            card.Line("The times of laying are not computed: the plan lays courses in more than one pass, or says too little about shift, speed or runs.");
        }
    }

    // A latest moment is never rounded up.
    private static bool IsLatest(SheetMomentKind kind) => kind is SheetMomentKind.FirstLoad or SheetMomentKind.SetUp or SheetMomentKind.LatestStart;

    private static string Name(SheetMomentKind kind) => kind switch
    {
        SheetMomentKind.FirstLoad => "first load leaves its plant, at the latest",
        SheetMomentKind.SetUp => "set-up and heating of the screed begins",
        SheetMomentKind.Start => "laying starts",
        SheetMomentKind.HalfWay => "half of the length is laid",
        SheetMomentKind.LatestStart => "latest start with which the length is laid by the end of the shift",
        SheetMomentKind.LastMetre => "last metre is laid",
        SheetMomentKind.ShiftEnd => "shift ends",
        SheetMomentKind.RolledOut => "last densifying pass over the last metre is done",
        SheetMomentKind.Firm => "last metre expected below the opening temperature; measure before opening",
        _ => "opening as planned",
    };

    private static void Tonnages(CardWriter card, SiteSheet sheet)
    {
        card.Part("Tonnages");
        card.Table(["course", "mix", "needed", "ordered", "loads", "a load", "last load", "a load reaches", "every"], sheet.Courses.Select(course => (IReadOnlyList<string>)
        [
            MarkdownText.Of(course.Id),
            MarkdownText.Of(course.Mix),
            SheetNumbers.Mass(course.Tonnage),
            SheetNumbers.Mass(course.Ordered),
            course.Loads == 0 ? string.Empty : course.Loads.ToString(CultureInfo.InvariantCulture),
            SheetNumbers.Value(course.Payload),
            course.LastLoad.Value is { } last ? SheetNumbers.Load(last) : string.Empty,
            SheetNumbers.Of(course.RunPerLoad),
            SheetNumbers.Of(course.Interval),
        ]));
    }

    private static void Committed(CardWriter card, SiteSheet sheet)
    {
        card.Part("Committed mix while the work runs evenly");
        card.Table(["mix", "on the way and waiting", "in full buffers"], sheet.Committed.Select(mix => (IReadOnlyList<string>)
            [MarkdownText.Of(mix.Mix), SheetNumbers.Mass(mix.OnTheWay), SheetNumbers.Mass(mix.OnMachines)]));
        card.Gap();
        card.Line("This is what is lost when rain or a stop ends the work. It is a balance without chance, not a simulation.");
    }

    private static void Decisions(CardWriter card, SiteSheet sheet)
    {
        card.Part("Decisions");
        card.Table(["sign", "when", "action", "who decides", "place or spare"], sheet.Contingencies.Select(action => (IReadOnlyList<string>)
        [
            action.Event is { } sign ? Words.Of(sign).Replace('-', ' ') : MarkdownText.Of(action.Id),
            MarkdownText.Of(action.When),
            MarkdownText.Of(action.Action),
            MarkdownText.Of(action.DecidedBy),
            MarkdownText.Of(action.Spare),
        ]));
    }

    private static void HoldPoints(CardWriter card, SiteSheet sheet)
    {
        card.Part("Hold points");
        card.Table(["done", "before", "criterion", "evidence", "owner", "released by", "value found", "time", "initials"], sheet.HoldPoints.Select(point => (IReadOnlyList<string>)
        [
            CardWriter.Box,
            MarkdownText.Of(point.Before),
            MarkdownText.Of(point.Criterion),
            MarkdownText.Of(point.Evidence),
            MarkdownText.Of(point.Owner),
            MarkdownText.Of(point.ReleasedBy),
            CardWriter.Blank,
            CardWriter.Blank,
            CardWriter.Blank,
        ]));
    }

    private static void Warnings(CardWriter card, SiteSheet sheet)
    {
        if (sheet.Warnings.Count > 0)
        {
            card.Part("Warnings of the check");
            foreach (var finding in sheet.Warnings)
            {
                card.Item($"{MarkdownText.Of(Wording.Message(finding))} ({MarkdownText.Of(finding.Rule)}, {MarkdownText.Of(finding.Address)})");
            }
        }
    }
}
