using System.Text.Json.Serialization;
using Laygate.Engineering.Quantities;
using Laygate.Exchange.Reports;
using Laygate.Rules.Results;

namespace Laygate.Exchange.Sizing;

/// <summary>What <c>laygate size</c> writes as JSON. Keys may be added; none is renamed or removed under the same sizing_version.</summary>
/// <param name="SizingVersion">Version of this shape.</param>
/// <param name="Program">Name of the program.</param>
/// <param name="ProgramVersion">Version of the program.</param>
/// <param name="Files">Files in the given order.</param>
/// <param name="Caution">Show these sentences wherever the figures are shown.</param>
public sealed record SizingShape(
    [property: Schema(Only = SizingShape.Version)] int SizingVersion,
    string Program,
    string ProgramVersion,
    IEnumerable<SizedFileShape> Files,
    [property: JsonConverter(typeof(SentencesToken)), Schema(NotEmpty = true)] IReadOnlyList<string> Caution)
{
    /// <summary>Version of the shape; a key may be added without raising it, none is renamed or removed.</summary>
    public const int Version = 1;
}

/// <summary>A file with its plans.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Plans">Its plans.</param>
/// <param name="Problems">Why it could not be read; then there are no plans.</param>
public sealed record SizedFileShape(string File, IEnumerable<SizedPlanShape> Plans, IReadOnlyList<ProblemShape> Problems);

/// <summary>The first sizing of a plan.</summary>
/// <param name="Plan">Id of the plan.</param>
/// <param name="Title">Its title.</param>
/// <param name="Lines">The lines of the table.</param>
/// <param name="Usual">Usual values that were taken because the plan does not state them.</param>
/// <param name="Missing">What keeps further lines from being computed.</param>
/// <param name="LatestMonth">The latest month in which it can be laid; null where no monthly temperatures were stated.</param>
public sealed record SizedPlanShape(string Plan, string? Title, IEnumerable<SizedLineShape> Lines, IEnumerable<UsualValueShape> Usual, IReadOnlyList<InputReference> Missing, LatestMonth? LatestMonth);

/// <summary>A line of the table.</summary>
/// <param name="Shows">What it shows.</param>
/// <param name="Label">The same in words.</param>
/// <param name="Quantity">The quantity that it shows or that decides it.</param>
/// <param name="Address">The element.</param>
/// <param name="Value">Expected value; low and high are the 5 % and 95 % points over the ranges of what goes in.</param>
/// <param name="Air">Temperature of air and surface for which it holds; null where no weather goes in, or where the plan states it.</param>
/// <param name="Rule">Id of the rule that it meets later; null when none reads it.</param>
/// <param name="Driver">Id of the usual value or assumption that moves it most; null when none does.</param>
/// <param name="State">Key of the plan that replaces that one; null when no plan states it.</param>
public sealed record SizedLineShape(
    [property: Schema(Words = "quantity rollers rollers-together length-per-shift in-weather")] SizedKind Shows,
    string Label,
    string Quantity,
    string Address,
    ShownValue Value,
    ShownValue? Air,
    string? Rule,
    string? Driver,
    string? State);

/// <summary>A usual value.</summary>
/// <param name="Key">Key of the plan that replaces it, entries of lists by their id.</param>
/// <param name="Assumption">Id of the assumption; null for a word.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Value">The value with its range, or the word.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Evidence">How it is known.</param>
public sealed record UsualValueShape(string Key, string? Assumption, string Meaning, ShownValue Value, string Source, Evidence Evidence);
