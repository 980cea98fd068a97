using System.Globalization;
using System.Text;
using Laygate.Reading.Yaml;

namespace Laygate.UnitTests.Reading.Yaml;

internal static class ReadingTestHelper
{
    public static ReadingResult Read(string text) => YamlReader.Read(Encoding.UTF8.GetBytes(text));

    public static YamlDocument Document(string text)
    {
        var result = Read(text);
        Assert.Empty(result.Problems);
        return Assert.Single(result.Documents);
    }

    public static string Place(TextSpan span) =>
        string.Create(CultureInfo.InvariantCulture, $"{span.Line}:{span.Column}-{span.EndLine}:{span.EndColumn}");

    /// <summary>A sample that uses every style of YAML that the reader knows.</summary>
    public const string Sample = """
        # a plan for tests, all figures invented
        plan: {format: 1, id: "sample-1"}
        courses:
          - id: wearing
            thickness: &t 40 mm
            note: 'quoted ''text'''
          - id: binder
            thickness: *t
            note: |
              first line
              second line
        runs: [{id: r1, width: 3.50 m}, {id: r2, width: 3.75 m}]
        folded: >-
          one
          two
        """;
}
