using System.Collections.Frozen;

namespace Laygate.Reporting.Language;

/// <summary>The sentence of each remark that the other rooms hand out. One line each; <c>{name}</c> is an argument, <c>{*}</c> all arguments that the sentence does not name.</summary>
internal static class NoteTable
{
    /// <summary>Sentences by id.</summary>
    public static FrozenDictionary<string, string> Sentences { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["advised-not-assessed"] = "The required limit is met; the advised one could not be assessed.",
        ["below-from-start"] = "The mat is below {limit} from the start.",
        ["circular"] = "The value would need itself ({quantity}): an error of the program, please report it.",
        ["committed-mix"] = "Up to {mass} of mix are on the road, waiting and in buffers at one time: that is what rain can spoil.",
        ["cooling-failed"] = "The cooling of the mat could not be solved ({reason}).",
        ["entry-missing"] = "Add an entry of the kind `{kind}` to `{list}`, with {fields}.",
        ["entry-thin"] = "`{entry}` ({kind}) does not say: {fields}. Who answers for it: {who}.",
        ["ends-combined"] = "Value and limit both have a band; their ends are combined on the safe side.",
        ["hours-begin-late"] = "The stated hours of weather begin at {begin}, laying begins at {laying}: state the hours before, or an envelope.",
        ["hours-bridged"] = "Between the hours of weather at {from} and {to} a straight line is taken; nearer hours would say more.",
        ["hours-end-early"] = "The stated hours of weather end at {end} (the last one counts for an hour), laying ends at {laying}: state the hours after, or an envelope.",
        ["hours-gap"] = "Nothing is known between the hours of weather at {from} and {to}, more than six hours apart: state the hours between.",
        ["jurisdiction-differs"] = "The plan lies in {plan}, but {specification} speaks for {book}: choose the rules of the place with --rules.",
        ["jurisdiction-not-stated"] = "The plan does not state its jurisdiction, and {specification} speaks for {book}: state `location.jurisdiction`.",
        ["laid-cold"] = "The course is not laid on a hot or warm one.",
        ["limit-end-announced"] = "The limit is to be replaced by {successor}; no day is announced.",
        ["limit-ended"] = "The {strength} limit ended on {to} and names no successor; this is judged for {date}.",
        ["limit-not-yet-valid"] = "The {strength} limit holds only from {from}; this is judged for {date}.",
        ["limit-place-not-stated"] = "The source does not say where its temperature is measured; the value is for this place: {place}.",
        ["limit-recalled"] = "The limit is only recalled: look it up in {source} before you rely on it.",
        ["limit-succeeded"] = "The limit ended on {to} and is still applied here; look at what follows it: {successor}.",
        ["limit-too-weak-to-fail"] = "Only a warning, because the limit is not known well enough to fail a plan ({evidence}).",
        ["no-neighbour"] = "The plan has no two runs on both sides of the joint {joint}, does not say which (`beside`), or does not say when the second of two pavers begins (`delay` of the joint or `starts_after` of the run).",
        ["side-by-side"] = "The runs {run} and {other} share stations and lie side by side.",
        ["no-pair"] = "No two courses are laid hot-on-hot here.",
        ["no-zone"] = "The shift states no offset from UTC, so its times are compared only with each other: state `shift.zone`.",
        ["not-reached"] = "Not reached within {within}, the longest time that is computed.",
        ["one-course-goes-on"] = "The plan lays {course} alone when the other mix is missing. Check a plan of its own for that course laid singly: its thickness, bond coat, surface course and traffic.",
        ["one-strip"] = "The pair is laid in one strip and has no longitudinal joint.",
        ["other-place"] = "The plan states its limit for one place ({stated}), the computation gives another ({predicted}): they cannot be compared.",
        ["other-reading"] = "Also read: {source} ({evidence}): {text}",
        ["outside-formula"] = "The stated values do not fit the formula ({quantity}).",
        ["places-differ"] = "The limit is for one place ({limit}), the value for another ({place}): they cannot be compared.",
        ["quick-check"] = "Left out by the quick check.",
        ["quick-report"] = "This was a quick check. It leaves out the spread of values, the simulated shifts, remedies and outlook; a pass rests on expected values only. Check again without --quick before you rely on it.",
        ["row-not-listed"] = "The table of the {strength} limit does not list {*}.",
        ["row-remark"] = "How the row was read: {text}",
        ["rule-deprecated"] = "This rule will be removed; its successor: {successor}.",
        ["rule-preview"] = "This rule is new and may change.",
        ["say-whether"] = "Say whether this holds here: {meaning}",
        ["silence-fails"] = "At release the silence fails, however well the source is known ({evidence}).",
        ["simulation-misses"] = "The worst-case relation holds, but the simulated shift does not ({rule}): the simulation is the verdict.",
        ["simulation-passes"] = "This is a worst-case relation. The simulated shift passes ({rule}) and is the verdict: mend this to gain a reserve, not to avoid a stop.",
        ["simulation-no-trucks"] = "No truck carries the mix {mix}, so the shift cannot be simulated.",
        ["simulation-plant-without-mix"] = "The plant {plant} does not make the mix {mix} that its trucks carry, so the shift cannot be simulated.",
        ["simulation-shared-feeder"] = "The feeder {feeder} would have to serve several pavers at different places; how it goes between them is not simulated. Stops for want of mix, finish and waits are not judged.",
        ["simulation-shared-trucks"] = "Several pavers take the mix {mix} from the same trucks without laying side by side at one speed; who gets which truck is not simulated. Stops for want of mix, finish and waits are not judged: give each paver a mix and trucks of its own in the plan, or check each as a plan of its own.",
        ["simulation-too-large"] = "The shift is too large to be simulated: at most {hours} and {loads} loads or trucks.",
        ["size-basis-maximum"] = "The aggregate size {sieve} is stated as the maximum; without the sieve series it cannot be set against a limit for D or the nominal maximum.",
        ["too-many-mixes"] = "{count} mixes pass through one feeder; no relation is known for more than two.",
        ["weak-assumption"] = "Only a warning, because the value rests on an assumption in place of something that the plan does not state.",
    }.ToFrozenDictionary(StringComparer.Ordinal);
}
