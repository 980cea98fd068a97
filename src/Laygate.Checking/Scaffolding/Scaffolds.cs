using System.Globalization;
using Laygate.Reading.Plans;

namespace Laygate.Checking.Scaffolding;

/// <summary>A file that a scaffold makes.</summary>
/// <param name="Path">Its path from the folder that was asked for, divided by <c>/</c>.</param>
/// <param name="Text">Its text.</param>
public sealed record NewFile(string Path, string Text)
{
    /// <summary>The lines, from 1, that still hold a blank.</summary>
    public IReadOnlyList<int> Blanks =>
        [.. Text.Split('\n').Select((line, index) => (line, index)).Where(one => !one.line.TrimStart().StartsWith('#') && one.line.Contains(Laygate.Reading.Plans.Blanks.Mark, StringComparison.Ordinal)).Select(one => one.index + 1)];
}

/// <summary>Makes the files with which specifications begin. What nobody but their author can know is left as a marked blank.</summary>
public static class Scaffolds
{
    /// <summary>A particular specification.</summary>
    /// <param name="name">Its name: lower-case letters and digits joined by single hyphens.</param>
    public static NewFile Specification(string name) => new($"{name}/specification.yaml", string.Create(CultureInfo.InvariantCulture, $$"""
        # The particular specification of one contract. It comes after general practice and a standard specification, and wins.
        # Use it with: laygate check PLAN --rules {{name}}
        # Test its rules with: laygate rules --test {{name}}
        name: {{name}}
        title: {{Blanks.Mark}} the title of the contract's specification
        issuer: {{Blanks.Mark}} who issues it
        edition: {{Blanks.Mark}} the revision and its date
        status: in force for this contract
        layer: particular
        jurisdiction: none                 # an ISO 3166 code such as DE or US-WA, or none
        coverage: {{Blanks.Mark}} what it covers and what it leaves to others
        # One entry for each clause: what it is about, in your own words, and how far rules judge it
        # (automated, partly, person, out-of-scope).
        clauses: []
        # The publications that its limits name.
        sources:
          - id: {{name}}
            title: {{Blanks.Mark}} the title of the contract's specification
            issuer: {{Blanks.Mark}} who issues it
            carrier: the contract itself
        bring_in: []                       # rules brought into force as they stand
        take_out: []                       # rules taken out of force, each with a reason
        # Limits of the contract's own. They replace all limits of the rule:
        #   - rule: LAY-002
        #     reason: why
        #     bounds:
        #       - strength: required
        #         basis: requirement
        #         at_most: the limit and its unit
        #         source: { id: {{name}}, clause: "the clause", evidence: read }
        set: []
        move: []                           # limits moved between required and advised
        confirm: []                        # limits that were looked up; `laygate confirm` writes them
        assume: []                         # assumptions replaced, each with its source

        """).ReplaceLineEndings("\n"));
}
