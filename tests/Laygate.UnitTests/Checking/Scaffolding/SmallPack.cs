using System.Text;
using Laygate.Checking;
using Laygate.Reading;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Merging;
using Laygate.UnitTests.Reading.RuleFiles;

namespace Laygate.UnitTests.Checking.Scaffolding;

/// <summary>A small rule book on the real catalogue, with invented limits: a constant, a table, a judgement, and a rule of severity A.</summary>
internal static class SmallPack
{
    public static RulePack Pack { get; } = Make();

    public static RuleBook Book { get; } = RuleBooks.Load(Pack, [], new Files()).Book!;

    private static RulePack Make()
    {
        var files = new Dictionary<string, byte[]>(StringComparer.Ordinal)
        {
            ["sources.yaml"] = Bytes("- { id: manual, title: Manual, issuer: Issuer }\n- { id: laygate-judgement, title: Judgement, issuer: Laygate }\n"),
            ["layers/thin/rule.yaml"] = Rule("LAY-001", "course", "at-least", "course.thickness", "at_least: 30 mm", "recalled"),
            ["layers/thin-by-kind/rule.yaml"] = Rule("LAY-002", "course", "at-least", "course.thickness", "table: { by: [mix.kind], rows: [ { match: [stone-mastic], at_least: 25 mm }, { match: [[asphalt-concrete, porous]], at_least: 30 mm } ] }", "recalled"),
            ["layers/judged/rule.yaml"] = Rule("LAY-003", "course", "at-most", "course.thickness", "at_most: 200 mm", "judgement", "laygate-judgement"),
            ["safety/nobody-guides/rule.yaml"] = Rule("SAF-001", "site", "present", "site.measures", "entries: [ { any_of: [traffic-management] } ]", "read", severity: "A"),
        };
        var read = new RuleFileReader(RuleFileTests.Schemas).ReadBook(new RuleFolderInMemory("rules", files), "1");
        Assert.Empty(read.Problems);
        return new RulePack(read.General!, [], "hash");
    }

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private static byte[] Rule(string id, string element, string check, string quantity, string? limit, string evidence, string source = "manual", string? severity = null) => Bytes($"""
        id: {id}
        title: Too thin
        why: It tears.
        remedy: Lay it thicker.
        local: Ask.
        applies_to: {element}
        check: {check}
        quantity: {quantity}
        from_stage: submission
        life: {"{ state: in-use, since: 0.1.0 }"}
        {(severity is null ? "bounds:" : $"severity: {severity}\nbounds:")}
          - strength: {(evidence is "judgement" ? "advised" : "required")}
            basis: {(evidence is "judgement" ? "judgement" : "requirement")}
            source: {"{"} id: {source}, evidence: {evidence} {"}"}
            {limit}
        """.TrimEnd() + "\n");
}

/// <summary>Files in memory.</summary>
internal sealed class Files : IRuleFiles
{
    public Dictionary<string, string> Texts { get; } = new(StringComparer.Ordinal);

    public IRuleFolder? Folder(string path) => null;

    byte[]? IRuleFiles.File(string path) => Texts.TryGetValue(path, out var text) ? SmallPack.Bytes(text) : null;
}
