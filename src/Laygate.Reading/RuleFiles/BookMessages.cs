using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reading.Schema;
using Laygate.Rules.Binding;
using Laygate.Rules.Definitions;

namespace Laygate.Reading.RuleFiles;

/// <summary>Words the mistakes of a rule book.</summary>
internal static class BookMessages
{
    /// <summary>Message and hint of a mistake.</summary>
    public static (string Message, string? Hint) Of(BookMistake mistake, QuantityCatalogue catalogue) => mistake switch
    {
        BookMistake.UnknownQuantity m => ($"`{m.Name}` is no quantity.", Near(m.Name, catalogue.All.Select(quantity => quantity.Name), "The list of quantities is in the documentation.")),
        BookMistake.UnrelatedQuantity m => ($"`{m.Quantity}` is a quantity of a {Words.Of(m.Kind)}, and no {Words.Of(m.Element)} belongs to one {Words.Of(m.Kind)}.", "Use a quantity of the element itself or of what it belongs to."),
        BookMistake.CheckDoesNotFit m => ($"The check `{Words.Of(m.Check)}` does not fit `{m.Quantity}`, which is a {Words.Of(m.Kind)}.", Checks(m.Kind)),
        BookMistake.LimitDoesNotFit m => ($"The check `{Words.Of(m.Check)}` cannot have {Limit(m.Limit)} as its limit.", Limits(m.Check)),
        BookMistake.UnknownUnit m => ($"`{m.Unit}` is no unit.", Near(m.Unit, m.Units, $"Use {List(m.Units)}.")),
        BookMistake.WrongUnit m => ($"`{m.Unit}` does not measure `{m.Quantity}`.", $"Use {List(m.Units)}."),
        BookMistake.MissingUnit m => ($"`{m.Value}` has no unit, and `{m.Quantity}` needs one.", $"Use {List(m.Units)}."),
        BookMistake.NeedlessUnit m => ($"`{m.Quantity}` is a ratio or count and has no unit.", $"Remove `{m.Unit}`."),
        BookMistake.MissingLowEnd m => ($"The check `{Words.Of(m.Check)}` needs a lower end.", "Add `at_least:` or `above:`."),
        BookMistake.MissingHighEnd m => ($"The check `{Words.Of(m.Check)}` needs an upper end.", "Add `at_most:` or `below:`."),
        BookMistake.NeedlessLowEnd m => ($"The check `{Words.Of(m.Check)}` has no lower end.", "Remove `at_least:` or `above:`, or use the check `between`."),
        BookMistake.NeedlessHighEnd m => ($"The check `{Words.Of(m.Check)}` has no upper end.", "Remove `at_most:` or `below:`, or use the check `between`."),
        BookMistake.EmptyRange m => ($"Nothing lies between {m.Low} and {m.High}.", "Write the lower end first."),
        BookMistake.UnknownWord m => ($"`{m.Word}` is no word of `{m.Quantity}`.", Near(m.Word, m.Words, $"Known are {List(m.Words)}.")),
        BookMistake.NoWords m => ($"`{m.Quantity}` is compared with no word at all.", "Name at least one."),
        BookMistake.WordsForNumber m => ($"`{m.Quantity}` is a number and is compared with numbers.", "Write `at_least:` or `below:`, or both."),
        BookMistake.NumberForWords m => ($"`{m.Quantity}` is a {Words.Of(m.Kind)} and is compared with words.", m.Words.Count > 0 ? $"Use {List(m.Words)}." : "Write `is: [word]`."),
        BookMistake.KindCannotMatch m => ($"`{m.Quantity}` is a {Words.Of(m.Kind)} and can be neither a condition nor the key of a table.", null),
        _ => Bounds(mistake),
    };

    private static (string Message, string? Hint) Bounds(BookMistake mistake) => mistake switch
    {
        BookMistake.PlaceWithoutTemperature m => ($"`{m.Quantity}` is no temperature and has no place.", "Remove `place:`."),
        BookMistake.OtherPlace m => ($"`{m.Quantity}` is a temperature at the place {Words.Of(m.Place)}, and the limit speaks of {Words.Of(m.Limit)}.", "Compare temperatures of the same place only."),
        BookMistake.EntriesMissing m => ($"`{m.Quantity}` is a list; the bound does not say which entries it must have.", "Write `entries:` with `any_of` for each."),
        BookMistake.EntriesOfNoList m => ($"`{m.Quantity}` is no list with kinds.", "Leave `entries` out."),
        BookMistake.RequiredWithoutRight m => ($"A {Words.Of(m.Basis)} cannot be required.", "Only a requirement or a physical necessity may be, and the stating of a safety measure of severity A; write `strength: advised`."),
        BookMistake.TwoBoundsOfOneStrength m => ($"There are two {Words.Of(m.Strength)} bounds.", "Keep at most one required and one advised bound; figures by category belong into a table."),
        BookMistake.AdvisedNeverDecides => ("The advised bound is not stricter than the required one, so it never decides.", "Remove it or make it stricter."),
        BookMistake.NoBounds => ("The rule has no bound.", "Add `bounds:`, or `on_demand: yes` if a specification is to set them."),
        BookMistake.LimitIsItself m => ($"`{m.Quantity}` would be compared with itself.", "Name another quantity."),
        BookMistake.QuantitiesDiffer m => ($"`{m.Quantity}` and `{m.Limit}` measure different things.", "Name a quantity of the same kind and unit."),
        BookMistake.WrongFactor m => (string.Create(CultureInfo.InvariantCulture, $"`times: {m.Factor}` makes no sense here."), "A factor is positive; temperatures, moments and words have none."),
        BookMistake.EmptyTable => ("The table has no keys or no rows.", "Add `by:` and `rows:`."),
        BookMistake.WrongNumberOfMatches m => ($"The row has {m.Matches} matches for {m.Keys} keys.", "Write one match for each key of `by:`; `any` matches everything."),
        BookMistake.RowsOverlap m => ($"Rows {m.Earlier} and {m.Later} match the same values and set different limits.", "Where the publication overlaps, keep the stricter row and say so in its remark."),
        BookMistake.UnknownSource m => ($"`{m.Source}` is not in the bibliography.", "Add it to `sources.yaml`, or to `sources:` of the specification."),
        BookMistake.EndsBeforeItStarts m => ($"The limit ends on {Date(m.To)}, before it starts on {Date(m.From)}.", null),
        BookMistake.ConfirmationIncomplete => ("A confirmation needs who, when, edition and page.", "Confirm limits under `confirm:` of a specification."),
        BookMistake.SeverityOutsideSafety => ("Only rules of the family safety have a severity.", "Remove `severity:`."),
        BookMistake.SeverityMissing => ("A safety rule about presence needs its severity.", "Add `severity: A`, `B` or `C`."),
        _ => Overlays(mistake),
    };

    private static (string Message, string? Hint) Overlays(BookMistake mistake) => mistake switch
    {
        BookMistake.DuplicateRule m => ($"There is another rule `{m.Id}`.", "An id is never used twice; take the next free number."),
        BookMistake.DuplicateName m => ($"There is another rule `{m.Name}`.", "Give the folder another name."),
        BookMistake.DuplicateSource m => ($"There is another publication `{m.Id}` that differs from this one.", "Give it another id, or remove it here."),
        BookMistake.DuplicateSpecification m => ($"There is another specification `{m.Name}`.", "Name each specification once."),
        BookMistake.UnknownRule m => ($"There is no rule `{m.Id}`.", Near(m.Id, m.Known, null)),
        BookMistake.RemovedRule m => ($"The rule `{m.Id}` has been removed.", "Name its successor."),
        BookMistake.DeadOverride m => ($"This entry for `{m.Id}` changes nothing.", Dead(m.Why)),
        BookMistake.LifeCriticalWeakened m => ($"`{m.Id}` guards lives (severity A) and {Weakened(m.How)}.", "A specification may only make it stricter."),
        BookMistake.TwoSpecificationsDiffer m => ($"`{m.First}` and `{m.Second}` both change `{m.Id}`.", "Two specifications are never averaged: use one of them, or settle the limit in a particular specification."),
        BookMistake.GeneralSpecification => ("A specification is a standard or a particular one.", "Write `layer: standard` or `layer: particular`."),
        BookMistake.UnknownRow m => ($"There is no row `{m.Row}`; the table has {m.Rows}.", "Rows are counted from 1, or named by what they match, as `laygate explain` lists them."),
        BookMistake.ConfirmedLimitChanged m => ($"The limit of `{m.Id}` that was confirmed is \"{m.Seen}\"; it is \"{m.Now}\" now.", "Look it up again and confirm the limit that holds now, or remove the entry."),
        BookMistake.NothingToLookUp m => ($"The limit of `{m.Id}` is {Words.Of(m.Evidence).Replace('-', ' ')}: no publication holds it, so it cannot be confirmed.", "Set the contract's own limit under `set:` instead."),
        BookMistake.UnknownAssumption m => ($"There is no assumption `{m.Id}`.", null),
        BookMistake.AssumptionUnit m => ($"The assumption `{m.Id}` is stated in `{m.Unit}`.", $"State it in `{m.Expected}`."),
        BookMistake.AssumptionRange m => ($"The value of `{m.Id}` lies outside its own range.", "Check `low:` and `high:`."),
        _ => throw new InvalidOperationException($"The mistake {mistake} has no words."),
    };

    private static string? Near(string name, IEnumerable<string> known, string? otherwise)
    {
        var near = NearestNames.Of(name, known);
        return near.Count > 0 ? NearestNames.Asked(near) : otherwise;
    }

    private static string List(IEnumerable<string> words) => string.Join(", ", words);

    private static string Date(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Checks(ValueKind kind) => kind switch
    {
        ValueKind.Number => "Use `at-least`, `at-most` or `between`.",
        ValueKind.Moment => "Use `not-before`.",
        ValueKind.Presence => "Use `present`.",
        _ => "Use `agrees`.",
    };

    private static string Limit(Limit limit) => limit switch
    {
        ConstantLimit => "a number",
        TableLimit => "a table",
        QuantityLimit => "another quantity",
        WordsLimit => "words",
        _ => "no limit",
    };

    private static string Limits(CheckKind check) => check switch
    {
        CheckKind.Present => "Leave the limit out.",
        CheckKind.Agrees => "Write `words:`, or `quantity:` for another quantity of the same kind.",
        CheckKind.NotBefore => "Name the other moment with `quantity:`.",
        CheckKind.Between => "Write `at_least:` and `at_most:`, or a table of both.",
        _ => "Write a number with its unit, a table, or `quantity:`.",
    };

    private static string Dead(NoEffect why) => why switch
    {
        NoEffect.InForce => "The rule is in force already; remove the entry.",
        NoEffect.OutOfForce => "The rule is not in force; remove the entry.",
        NoEffect.SameBounds => "These are the bounds that the rule has already; remove the entry.",
        NoEffect.NoSuchBound => "There is no bound to work on; check the rule, or set its bounds.",
        NoEffect.SameValue => "This is the value that holds already; remove the entry.",
        _ => "Another entry of this specification says otherwise; keep one of them.",
    };

    private static string Weakened(WeakerBy how) => how switch
    {
        WeakerBy.TakenOut => "cannot be taken out of force",
        WeakerBy.Advised => "stays required",
        WeakerBy.Dropped => "keeps all its bounds",
        WeakerBy.Laxer => "cannot get a laxer limit",
        WeakerBy.WeakerEvidence => "cannot rest on a weaker source",
        WeakerBy.Shorter => "cannot hold for a shorter time",
        _ => "cannot get a limit that is not plainly as strict as the present one",
    };
}
