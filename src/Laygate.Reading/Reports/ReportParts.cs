using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reading.Reports;

/// <summary>Pieces that several parts of a JSON report share.</summary>
internal static class ReportParts
{
    /// <summary>A value, or null.</summary>
    public static ShownValue? MaybeValue(JsonPlace place, string key) => place.Maybe(key) is { } value ? Value(value) : null;

    /// <summary>A value.</summary>
    public static ShownValue Value(JsonPlace place) => new(
        place.MaybeNumber("number"),
        place.Text("unit"),
        place.MaybeNumber("low"),
        place.MaybeNumber("high"),
        place.MaybeText("text"),
        place.MaybeWord<Place>("place"));

    /// <summary>A place in a file, or null.</summary>
    public static Position? MaybePosition(JsonPlace place) => place.Maybe("position") is { } at
        ? new Position(FromOne(at, "line"), FromOne(at, "column"), FromOne(at, "end_line"), FromOne(at, "end_column"))
        : null;

    /// <summary>Why something could not be read.</summary>
    public static Problem Problem(JsonPlace place) => new(place.Text("file"), place.Text("message"), place.MaybeText("hint"), MaybePosition(place));

    /// <summary>An input by address and key.</summary>
    public static InputReference Input(JsonPlace place) => new(place.Text("address"), place.Text("key"));

    /// <summary>A remark; its sentence is worded anew.</summary>
    public static Note Note(JsonPlace place) => new(
        place.Text("id"),
        [.. place.Of("arguments").Entries().Select(argument => new NoteArgument(argument.Key, argument.Value.MaybeText("text"), argument.Value.MaybeNumber("number"), argument.Value.Text("unit")))]);

    /// <summary>An assumption that was used. Earlier reports name the input in whose place it stands only in words.</summary>
    public static AssumptionUse Assumption(JsonPlace place) => new(
        place.Text("id"),
        place.Text("address"),
        place.MaybeNumber("number") ?? double.NaN,
        place.Text("unit"),
        place.Word<Evidence>("evidence"),
        place.Text("source"),
        place.Maybe("input") is { } input ? Input(input) : place.MaybeText("stands_for") is { } words ? new InputReference(words, string.Empty) : null);

    /// <summary>How a value was found, or null.</summary>
    public static Working? MaybeWorking(JsonPlace place) => place.Maybe("working") is { } working
        ? new Working(working.List("inputs", WorkingInput), working.List("steps", WorkingStep), working.List("assumptions", Assumption))
        : null;

    /// <summary>A limit with its source, or null. In earlier reports the limits of remedies and hours come without one; no form shows it there.</summary>
    public static ShownLimit? MaybeLimit(JsonPlace place, string key) => place.Maybe(key) is { } limit ? Limit(limit, limit) : null;

    /// <summary>A limit whose source stands beside it, or null.</summary>
    public static ShownLimit? MaybeLimitBesideSource(JsonPlace place, string key) => place.Maybe(key) is { } limit ? Limit(limit, place) : null;

    private static ShownLimit Limit(JsonPlace limit, JsonPlace holder) => new(
        limit.Word<Strength>("strength"),
        limit.Word<Basis>("basis"),
        MaybeValue(limit, "low"),
        MaybeValue(limit, "high"),
        limit.Flag("low_exclusive"),
        limit.Flag("high_exclusive"),
        limit.MaybeText("stated"),
        limit.MaybeText("quantity"),
        limit.MaybeNumber("factor"),
        holder.Maybe("source") is { } source ? Source(source) : new SourceReference { Source = string.Empty, Evidence = Evidence.Recalled },
        holder.Maybe("source") is { } known ? Publication(known) : null,
        limit.Word<Layer>("layer"),
        limit.MaybeText("set_by"))
    {
        SilenceFails = limit.Flag("silence_fails"),
    };

    private static SourceReference Source(JsonPlace place) => new()
    {
        Source = place.Text("id"),
        Clause = place.MaybeText("clause"),
        Evidence = place.Word<Evidence>("evidence"),
        ValidFrom = place.MaybeDay("valid_from"),
        ValidTo = place.MaybeDay("valid_to"),
        Successor = place.MaybeText("successor"),
        Remark = place.MaybeText("remark"),
        Confirmation = place.Maybe("confirmation") is { } by ? new Confirmation(by.Text("by"), by.Day("on"), by.Text("edition"), by.Text("page")) : null,
    };

    private static Source? Publication(JsonPlace place) => place.MaybeText("title") is { } title
        ? new Source(place.Text("id"), title, place.Text("issuer"), place.MaybeText("edition"), place.MaybeText("year"), place.MaybeText("url"), place.MaybeText("carrier"), Licence: null)
        : null;

    private static WorkingInput WorkingInput(JsonPlace place) => new(
        place.Text("symbol"), place.Text("quantity"), place.Text("address"), place.MaybeNumber("number"), place.Text("unit"), place.MaybeText("text"));

    private static WorkingStep WorkingStep(JsonPlace place) => new(
        place.Text("symbol"), place.Text("expression"), place.MaybeNumber("number") ?? double.NaN, place.Text("unit"));

    private static int FromOne(JsonPlace place, string key) => place.Whole(key) is >= 1 and var number ? number : throw place.Of(key).Wrong("should be 1 or more");
}
