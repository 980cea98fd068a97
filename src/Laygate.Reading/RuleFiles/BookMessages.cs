using Laygate.Engineering.Quantities;
using Laygate.Reading.Schema;
using Laygate.Rules.Binding;

namespace Laygate.Reading.RuleFiles;

/// <summary>Words the mistakes of a rule book.</summary>
internal static class BookMessages
{
    /// <summary>Message and hint of a mistake.</summary>
    public static (string Message, string? Hint) Of(BookProblem problem, QuantityCatalogue catalogue) => problem.Mistake switch
    {
        BookMistake.UnknownQuantity => ($"`{problem["name"]}` is no quantity.", Near(problem["name"], catalogue.All.Select(quantity => quantity.Name), "The list of quantities is in the documentation.")),
        BookMistake.UnrelatedQuantity => ($"`{problem["quantity"]}` is a quantity of a {problem["kind"]}, and no {problem["element"]} belongs to one {problem["kind"]}.", "Use a quantity of the element itself or of what it belongs to."),
        BookMistake.CheckDoesNotFit => ($"The check `{problem["check"]}` does not fit `{problem["quantity"]}`, which is a {problem["kind"]}.", Checks(problem["kind"])),
        BookMistake.LimitDoesNotFit => ($"The check `{problem["check"]}` cannot have {Limit(problem["limit"])} as its limit.", Limits(problem["check"])),
        BookMistake.UnknownUnit or BookMistake.WrongUnit or BookMistake.MissingUnit or BookMistake.NeedlessUnit => Unit(problem),
        BookMistake.MissingLowEnd => ($"The check `{problem["check"]}` needs a lower end.", "Add `at_least:` or `above:`."),
        BookMistake.MissingHighEnd => ($"The check `{problem["check"]}` needs an upper end.", "Add `at_most:` or `below:`."),
        BookMistake.NeedlessLowEnd => ($"The check `{problem["check"]}` has no lower end.", "Remove `at_least:` or `above:`, or use the check `between`."),
        BookMistake.NeedlessHighEnd => ($"The check `{problem["check"]}` has no upper end.", "Remove `at_most:` or `below:`, or use the check `between`."),
        BookMistake.EmptyRange => ($"Nothing lies between {problem["low"]} and {problem["high"]}.", "Write the lower end first."),
        BookMistake.UnknownWord => ($"`{problem["word"]}` is no word of `{problem["quantity"]}`.", Near(problem["word"], problem["words"].Split(", "), $"Known are {problem["words"]}.")),
        BookMistake.NoWords => ($"`{problem["quantity"]}` is compared with no word at all.", "Name at least one."),
        BookMistake.WordsForNumber => ($"`{problem["quantity"]}` is a number and is compared with numbers.", "Write `at_least:` or `below:`, or both."),
        BookMistake.NumberForWords => ($"`{problem["quantity"]}` is a {problem["kind"]} and is compared with words.", problem["words"].Length > 0 ? $"Use {problem["words"]}." : "Write `is: [word]`."),
        BookMistake.KindCannotMatch => ($"`{problem["quantity"]}` is a {problem["kind"]} and can be neither a condition nor the key of a table.", null),
        _ => Bounds(problem),
    };

    private static (string Message, string? Hint) Unit(BookProblem problem) => problem.Mistake switch
    {
        BookMistake.UnknownUnit => ($"`{problem["unit"]}` is no unit.", Near(problem["unit"], problem["units"].Split(", "), $"Use {problem["units"]}.")),
        BookMistake.WrongUnit => ($"`{problem["unit"]}` does not measure `{problem["quantity"]}`.", $"Use {problem["units"]}."),
        BookMistake.MissingUnit => ($"`{problem["value"]}` has no unit, and `{problem["quantity"]}` needs one.", $"Use {problem["units"]}."),
        _ => ($"`{problem["quantity"]}` is a ratio or count and has no unit.", $"Remove `{problem["unit"]}`."),
    };

    private static (string Message, string? Hint) Bounds(BookProblem problem) => problem.Mistake switch
    {
        BookMistake.PlaceWithoutTemperature => ($"`{problem["quantity"]}` is no temperature and has no place.", "Remove `place:`."),
        BookMistake.OtherPlace => ($"`{problem["quantity"]}` is a temperature at the place {problem["place"]}, and the limit speaks of {problem["limit"]}.", "Compare temperatures of the same place only."),
        BookMistake.EntriesMissing => ($"`{problem["quantity"]}` is a list; the bound does not say which entries it must have.", "Write `entries:` with `any_of` for each."),
        BookMistake.EntriesOfNoList => ($"`{problem["quantity"]}` is no list with kinds.", "Leave `entries` out."),
        BookMistake.RequiredWithoutRight => ($"A {problem["basis"]} cannot be required.", "Only a requirement or a physical necessity may be, and the stating of a safety measure of severity A; write `strength: advised`."),
        BookMistake.TwoBoundsOfOneStrength => ($"There are two {problem["strength"]} bounds.", "Keep at most one required and one advised bound; figures by category belong into a table."),
        BookMistake.AdvisedNeverDecides => ("The advised bound is not stricter than the required one, so it never decides.", "Remove it or make it stricter."),
        BookMistake.NoBounds => ("The rule has no bound.", "Add `bounds:`, or `on_demand: yes` if a specification is to set them."),
        BookMistake.LimitIsItself => ($"`{problem["quantity"]}` would be compared with itself.", "Name another quantity."),
        BookMistake.QuantitiesDiffer => ($"`{problem["quantity"]}` and `{problem["limit"]}` measure different things.", "Name a quantity of the same kind and unit."),
        BookMistake.WrongFactor => ($"`times: {problem["factor"]}` makes no sense here.", "A factor is positive; temperatures, moments and words have none."),
        BookMistake.EmptyTable => ("The table has no keys or no rows.", "Add `by:` and `rows:`."),
        BookMistake.WrongNumberOfMatches => ($"The row has {problem["matches"]} matches for {problem["keys"]} keys.", "Write one match for each key of `by:`; `any` matches everything."),
        BookMistake.RowsOverlap => ($"Rows {problem["rows"]} match the same values and set different limits.", "Where the publication overlaps, keep the stricter row and say so in its remark."),
        BookMistake.UnknownSource => ($"`{problem["source"]}` is not in the bibliography.", "Add it to `sources.yaml`, or to `sources:` of the specification."),
        BookMistake.EndsBeforeItStarts => ($"The limit ends on {problem["to"]}, before it starts on {problem["from"]}.", null),
        BookMistake.ConfirmationIncomplete => ("A confirmation needs who, when, edition and page.", "Confirm limits under `confirm:` of a specification."),
        BookMistake.SeverityOutsideSafety => ("Only rules of the family safety have a severity.", "Remove `severity:`."),
        BookMistake.SeverityMissing => ("A safety rule about presence needs its severity.", "Add `severity: A`, `B` or `C`."),
        _ => Overlays(problem),
    };

    private static (string Message, string? Hint) Overlays(BookProblem problem) => problem.Mistake switch
    {
        BookMistake.DuplicateRule => ($"There is another rule `{problem["id"]}`.", "An id is never used twice; take the next free number."),
        BookMistake.DuplicateName => ($"There is another rule `{problem["name"]}`.", "Give the folder another name."),
        BookMistake.DuplicateSource => ($"There is another publication `{problem["id"]}` that differs from this one.", "Give it another id, or remove it here."),
        BookMistake.DuplicateSpecification => ($"There is another specification `{problem["name"]}`.", "Name each specification once."),
        BookMistake.UnknownRule => ($"There is no rule `{problem["id"]}`.", Near(problem["id"], problem["known"].Split(", "), null)),
        BookMistake.RemovedRule => ($"The rule `{problem["id"]}` has been removed.", "Name its successor."),
        BookMistake.DeadOverride => ($"This entry for `{problem["id"]}` changes nothing.", Dead(problem["why"])),
        BookMistake.LifeCriticalWeakened => ($"`{problem["id"]}` guards lives (severity A) and {Weakened(problem["how"])}.", "A specification may only make it stricter."),
        BookMistake.TwoSpecificationsDiffer => ($"`{problem["first"]}` and `{problem["second"]}` both change `{problem["id"]}`.", "Two specifications are never averaged: use one of them, or settle the limit in a particular specification."),
        BookMistake.GeneralSpecification => ("A specification is a standard or a particular one.", "Write `layer: standard` or `layer: particular`."),
        BookMistake.UnknownRow => ($"There is no row `{problem["row"]}`; the table has {problem["rows"]}.", "Rows are counted from 1, or named by what they match, as `laygate explain` lists them."),
        BookMistake.ConfirmedLimitChanged => ($"The limit of `{problem["id"]}` that was confirmed is \"{problem["seen"]}\"; it is \"{problem["now"]}\" now.", "Look it up again and confirm the limit that holds now, or remove the entry."),
        BookMistake.NothingToLookUp => ($"The limit of `{problem["id"]}` is {problem["evidence"].Replace('-', ' ')}: no publication holds it, so it cannot be confirmed.", "Set the contract's own limit under `set:` instead."),
        BookMistake.UnknownAssumption => ($"There is no assumption `{problem["id"]}`.", null),
        BookMistake.AssumptionUnit => ($"The assumption `{problem["id"]}` is stated in `{problem["unit"]}`.", $"State it in `{problem["expected"]}`."),
        BookMistake.AssumptionRange => ($"The value of `{problem["id"]}` lies outside its own range.", "Check `low:` and `high:`."),
        _ => throw new InvalidOperationException($"The mistake {problem.Mistake} has no words."),
    };

    private static string? Near(string name, IEnumerable<string> known, string? otherwise)
    {
        var near = NearestNames.Of(name, known);
        return near.Count > 0 ? $"Did you mean {string.Join(" or ", near.Select(one => $"`{one}`"))}?" : otherwise;
    }

    private static string Checks(string kind) => kind switch
    {
        "number" => "Use `at-least`, `at-most` or `between`.",
        "moment" => "Use `not-before`.",
        "presence" => "Use `present`.",
        _ => "Use `agrees`.",
    };

    private static string Limit(string limit) => limit switch
    {
        "constant" => "a number",
        "table" => "a table",
        "quantity" => "another quantity",
        "words" => "words",
        _ => "no limit",
    };

    private static string Limits(string check) => check switch
    {
        "present" => "Leave the limit out.",
        "agrees" => "Write `words:`, or `quantity:` for another quantity of the same kind.",
        "not-before" => "Name the other moment with `quantity:`.",
        "between" => "Write `at_least:` and `at_most:`, or a table of both.",
        _ => "Write a number with its unit, a table, or `quantity:`.",
    };

    private static string Dead(string why) => why switch
    {
        "in-force" => "The rule is in force already; remove the entry.",
        "out-of-force" => "The rule is not in force; remove the entry.",
        "same-bounds" => "These are the bounds that the rule has already; remove the entry.",
        "no-such-bound" => "There is no bound to work on; check the rule, or set its bounds.",
        "same-value" => "This is the value that holds already; remove the entry.",
        _ => "Another entry of this specification says otherwise; keep one of them.",
    };

    private static string Weakened(string how) => how switch
    {
        "taken-out" => "cannot be taken out of force",
        "advised" => "stays required",
        "dropped" => "keeps all its bounds",
        "laxer" => "cannot get a laxer limit",
        "weaker-evidence" => "cannot rest on a weaker source",
        "shorter" => "cannot hold for a shorter time",
        _ => "cannot get a limit that is not plainly as strict as the present one",
    };
}
