using System.Collections.Frozen;

namespace Laygate.Reporting.Language;

/// <summary>The sentence of each remark that the other rooms hand out. One line each; <c>{name}</c> is an argument.</summary>
internal static class NoteTable
{
    /// <summary>Sentences by id.</summary>
    public static FrozenDictionary<string, string> Sentences { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["basis-assumed"] = "The plan does not say on which basis the aggregate size stands; {basis} is assumed.",
        ["circular"] = "{quantity} would need itself: an error of the program, please report it.",
        ["evidence-recalled"] = "The limit is only recalled: check it in the publication.",
        ["jurisdiction-differs"] = "The plan lies in {plan}, but the rule book speaks for {book}: choose the rules of the place with --rules.",
        ["limit-end-announced"] = "This limit is to be replaced by {successor}; the day is not announced.",
        ["limit-ended"] = "The limit was in force until {date} and nothing is named that follows it.",
        ["limit-not-yet"] = "The limit comes into force on {date}.",
        ["no-bound"] = "The rule book in use sets no limit here; a specification would.",
        ["outside-range"] = "Outside the range in which the formula or table holds: {range}.",
        ["place-differs"] = "The limit is {limit}, the value {value}: the two cannot be compared.",
        ["place-unknown"] = "It is not stated where the temperature is measured.",
        ["row-not-listed"] = "The table of {source} does not list {value}.",
        ["size-basis-maximum"] = "The aggregate size is stated as the maximum; without the sieve series it cannot be set against a limit for D or the nominal maximum.",
    }.ToFrozenDictionary(StringComparer.Ordinal);
}
