using System.Text.RegularExpressions;
using Laygate.ConformanceTests.Verification;
using Laygate.Engineering.Quantities;
using Laygate.Rules.Results;

namespace Laygate.ConformanceTests.Docs;

/// <summary>An expected figure says where it comes from and how that is known; the form stands in DEVELOPERS.md.</summary>
public sealed partial class SourceLineTests
{
    private static readonly string[] Folders =
        ["tests/Laygate.UnitTests/Engineering", .. new[] { "Outside", "Remedies", "Safety", "Sheets", "Verification" }.Select(folder => $"tests/Laygate.ConformanceTests/{folder}")];

    public static TheoryData<string> Files => [.. Folders
        .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), "*.cs", SearchOption.AllDirectories))
        .Select(path => Path.GetRelativePath(Repository.Root, path).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void Expected_figures_name_their_source(string file) => None(Without(File.ReadAllText(Path.Combine(Repository.Root, file)), file));

    /// <summary>The reading itself: a figure alone, or called own or computed, has no source; a publication, a derivation, practice and judgement are sources.</summary>
    [Theory]
    [InlineData("", "41.3", false)]
    [InlineData("// Own figure, computed with the program.", "41.3", false)]
    [InlineData("// We read it.", "41.3", false)]
    [InlineData("// derived", "41.3", false)]
    [InlineData("// Source: AAPA Work Tip 31, November 2001 (read).", "41.3", true)]
    [InlineData("// By hand: 4.35 t/min for 9.5 min.", "41.3", true)]
    [InlineData("// Common practice, no published source.", "41.3", true)]
    [InlineData("// Judgement: no more than a foreman can count.", "41.3", true)]
    [InlineData("", "4.35 * 9.5", true)]
    [InlineData("", "given", true)]
    [InlineData("", "1", true)]
    public void A_figure_without_a_source_is_found(string comment, string expected, bool holds)
    {
        var text = $"public class SomeTests\n{{\n    [Fact]\n    public void Some()\n    {{\n        {comment}\n        Assert.Equal({expected}, Answer(given), 0.05);\n    }}\n}}\n";
        Assert.Equal(holds, Without(text, "some").Count == 0);
        var rows = $"public class SomeTests\n{{\n    {comment}\n    [Theory]\n    [InlineData(5, {expected})]\n    public void Some(double given, double found) => Near(found, Answer(given));\n}}\n";
        Assert.Equal(holds, Without(rows, "some").Count == 0);
    }

    /// <summary>A verification case that is derived shows the derivation or names the script that others can run; any other names a publication.</summary>
    [Fact]
    public void Verification_cases_show_where_their_values_come_from()
    {
        var cases = VerificationFiles.Names.SelectMany(name => VerificationFiles.Runner().Run([VerificationFiles.Read(name)]).Topics).SelectMany(topic => topic.Cases).ToList();
        Assert.NotEmpty(cases);
        None([.. cases.Where(one => !Shows(one)).Select(one => $"{one.Title}: {one.Source.Document}, {one.Source.Place}").Distinct(StringComparer.Ordinal)]);
    }

    private static void None(IReadOnlyList<string> wrong) => Assert.True(wrong.Count == 0, string.Join('\n', wrong));

    private static bool Shows(VerificationCase one)
    {
        var said = $"{one.Source.Document} {one.Source.Edition} {one.Source.Place} {one.Remark}";
        if (Empty().IsMatch(said))
        {
            return false;
        }

        if (one.Evidence != Evidence.Derived)
        {
            return one.Source.Document.Length > 8 && (one.Source.Place ?? one.Source.Edition) is not null;
        }

        return said.Contains("tests/Tools/", StringComparison.Ordinal) || Worked().IsMatch(said);
    }

    private static List<string> Without(string text, string file) =>
    [
        .. TestMethod.Of(text).Select(test => (test, Figures: test.Figures())).Where(pair => pair.Figures.Count > 0 && !Names(pair.test.Comments))
            .Select(pair => $"{file}:{pair.test.Line} {pair.test.Name}: {string.Join(", ", pair.Figures)}"),
    ];

    private static bool Names(string comments) => comments.Split('\n').Any(line => Known().IsMatch(line) && line.Trim().Length > 24);

    [GeneratedRegex(@"\bread[,:;)]|\b(recalled|second-hand|derived|by hand|common practice|judgement)\b", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, Patience.Milliseconds)]
    private static partial Regex Known();

    [GeneratedRegex(@"\bown (program|inputs|figures)\b|run for this project|computed for this project", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, Patience.Milliseconds)]
    private static partial Regex Empty();

    [GeneratedRegex(@"[=·/*^]|\bsqrt|\bexp\b|\d{4}|:", RegexOptions.ExplicitCapture, Patience.Milliseconds)]
    private static partial Regex Worked();
}
