using System.Globalization;
using System.Text;
using Laygate.Checking.Verification;
using Laygate.Rules.Results;

namespace Laygate.UnitTests.Checking.Verification;

/// <summary>Case files as text, for tests. Figures of the formula case: production arithmetic, 150 t/h on 3.5 m by 50 mm at 2.4 t/m3 are 5.952 m/min.</summary>
internal static class CaseText
{
    public const string Conduction = """
        format: 1
        topic: t
        title: slab on its own kind
        source: {document: image sources}
        evidence: derived
        conduction:
          duration: 600 s
          materials:
            hot: {conductivity: 1.2 W/(m K), density: 2300 kg/m3, specific_heat: 920 J/(kg K)}
          layers:
            - {id: slab, role: course, thickness: 50 mm, material: hot, initial: 150 °C}
            - {id: base, role: existing, thickness: 100 mm, material: hot, initial: 10 °C}
          skin: closed
          bottom: half-space
          expected:
            - quantity: temperature
              places: [skin, {middle: slab}]
              unit: °C
              tolerance: 0.05 K
              rows:
                - {time: 300 s, values: [149.05967, 137.72384]}
        """;

    public const string Formula = """
        format: 1
        topic: t
        title: speed
        source: {document: worked by hand}
        evidence: derived
        formula:
          name: paver-speed
          inputs: {width: 3.5 m, thickness: 50 mm}
          unit: m/min
          tolerance: 0.0006 m/min
          rows:
            - {inputs: {supply: 150 t/h, density: 2.40 t/m3}, value: 5.952}
        """;

    private static readonly VerificationRunner Runner = new();

    public static string SchemaText() => File.ReadAllText(Path.Combine(SourceTree.Root, "schemas", "verification-case.schema.json"));

    public static VerificationResult Run(params IReadOnlyList<string> files) =>
        Runner.Run([.. files.Select((text, at) => new VerificationFile(string.Create(CultureInfo.InvariantCulture, $"{at}.yaml"), Encoding.UTF8.GetBytes(text)))]);

    /// <summary>A text in which one part that occurs once is replaced.</summary>
    public static string Changed(string text, string old, string replacement)
    {
        Assert.Equal(2, text.Split(old).Length);
        return text.Replace(old, replacement, StringComparison.Ordinal);
    }

    /// <summary>Line and column of a part that occurs in a text, from 1.</summary>
    public static (int Line, int Column) Place(string text, string part)
    {
        var at = text.IndexOf(part, StringComparison.Ordinal);
        Assert.True(at >= 0, part);
        return (text[..at].Count(letter => letter == '\n') + 1, at - text.LastIndexOf('\n', at));
    }
}
