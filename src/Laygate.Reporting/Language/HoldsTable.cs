using System.Collections.Frozen;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>
/// What holds where a rule is met, said positively: titles name what goes wrong, and a list of passes that reads like a list of faults is read upside
/// down. Most rules are asked after in words that also say what holds (<see cref="WhetherTable"/>); those that are not have a line here.
/// </summary>
internal static class HoldsTable
{
    private const string Suffix = " not stated in full";

    private const string Table = """
        BON-001 = It is said whether a bond coat lies below the course
        BON-017 = It is said how much of a thin end is cut off
        BON-040 = The bond coat that the specification asks for is stated
        BON-041 = The joints of the run are stated
        BON-050 = Something hot lies beside the edge that is called hot
        BON-051 = Something is cut off where the face is cut
        BON-052 = The joint lies against something
        CON-002 = No more mix is ordered than the course needs
        CON-004 = The degree of compaction says to which density it refers
        CON-014 = A joint is stated where runs lie side by side
        CON-050 = The density is one that a mix of this kind can have
        CON-073 = No traffic runs through a place that is fully closed
        FRI-001 = The plan says when traffic may use the surface
        FRI-006 = Something is stated for the skid resistance of the fresh surface
        FRI-010 = The one who opens to traffic is named
        FRI-011 = A deformation test is planned before the opening
        FRI-021 = A deformation test is planned after a warm night
        FRI-040 = The rate of grit is one that is spread on fresh asphalt
        LAY-015 = Levels at kerbs, covers and tie-ins are stated
        LAY-051 = No edge of the thick pair is left free
        LAY-060 = The crossfall is one that a road has
        LAY-061 = The gradient is one on which pavers and rollers work
        MIX-011 = The plan says below which temperature a load is refused
        MIX-021 = The binder can be rolled as cold as the plan says
        MIX-030 = The binder can be rolled as cold as the plan says
        PAV-003 = An action is stated for a paver that stops for long
        PAV-004 = An action is stated for a plant that stops
        PAV-006 = The strip is one that a paver may lay so wide
        QUA-001 = The hold point has criterion, evidence, owner and release
        QUA-002 = A test of the density is planned
        QUA-003 = A check of the yield is planned
        QUA-004 = People on the shift are named
        QUA-005 = The specification that governs the plan is named
        QUA-006 = The pair has a trial length
        QUA-007 = A test of the density of the longitudinal joint is planned
        QUA-008 = A check of the thickness is planned
        QUA-009 = A check of the evenness is planned
        QUA-010 = A thermal profile is planned for the long haul
        QUA-011 = A thermal profile is planned for the cool night
        QUA-040 = The method statement has the sections that reviewers look for
        QUA-050 = Something shows that the passes reach the density
        QUA-051 = The trial length says what it reached
        QUA-060 = The release of the base before laying is stated
        QUA-061 = The release of the surface before traffic is stated
        QUA-062 = A test of the mix temperature is planned
        QUA-063 = A test of the mat temperature is planned
        QUA-064 = The test has a criterion
        QUA-065 = The density tests have a number
        QUA-066 = A friction test of the new surface is planned
        QUA-067 = The release carries an approval
        QUA-090 = Evenness of the pair is tested by a criterion
        QUA-091 = Evenness is tested where a paver runs on the hot lower course
        QUA-092 = It is agreed how the density of each course is found
        ROL-008 = A spare roller, or what replaces it, is stated
        ROL-009 = Water, fuel and rest of the roller are stated
        ROL-010 = An action is stated for a roller that fails
        ROL-065 = Finish rolling is planned
        ROL-066 = The phase has a roller
        SAF-028 = The barrier beside fast traffic, or what stands in for it, is stated
        SAF-050 = The plan against heat illness is stated
        SAF-066 = The relief of the spotter is stated
        SAF-076 = The plan against heat illness is stated for the hot shift
        SAF-099 = The measure has a kind
        SAF-100 = The barrier that Germany asks for is stated
        SAF-120 = The plan's own data do not contradict its no to a hazard
        SAF-121 = The plan's own data do not contradict its no to a condition
        SAF-122 = The obstacle has a kind
        SUP-008 = The loads of two mixes are told apart
        SUP-010 = It is said where the rest from the feeder goes
        SUP-017 = A stop for want of mix is unlikely
        SUP-021 = There is a place for loads that rain catches
        SUP-060 = The load is one that such a truck carries
        SUP-061 = Two mixes for one pair have a feeder
        SUP-062 = An action is stated for a load of the wrong mix
        SUP-063 = An action is stated for a feeder that fails
        SUP-071 = The order is one that rock can weigh
        WEA-005 = The plan says what to do in the rain that is likely
        WEA-009 = It is said whose forecast it is and when it was last looked at
        WEA-010 = The plan for the crew holds the weather by the hour
        """;

    private static readonly FrozenDictionary<string, string> Sentences = Table.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
        .Select(line => line.Split(" = ", 2)).ToFrozenDictionary(parts => parts[0], parts => parts[1], StringComparer.Ordinal);

    /// <summary>Ids that have a line.</summary>
    public static IEnumerable<string> Rules => Sentences.Keys;

    /// <summary>Ends what holds where a measure is merely stated.</summary>
    public const string NotChecked = " (quality not checked)";

    /// <summary>What a finding that is met says; a rule that has no words of its own is named as what does not occur.</summary>
    public static string Of(Finding finding) => PlainText.Show(Of(finding.Rule, finding.Title) ?? $"Does not occur: {finding.Title}");

    /// <summary>What holds where a rule is met; null where nobody has worded it.</summary>
    /// <param name="rule">Id of the rule.</param>
    /// <param name="title">Its title.</param>
    public static string? Of(string rule, string title) =>
        Sentences.GetValueOrDefault(rule)
        ?? (title.EndsWith(Suffix, StringComparison.Ordinal) ? title[..^Suffix.Length] + " stated" + NotChecked : null)
        ?? (WhetherTable.Of(rule) is { } clause ? Names.Capital(clause) : null);
}
