using Laygate.Engineering.Quantities;
using Laygate.Rules.Results;
using YamlDotNet.RepresentationModel;

namespace Laygate.ConformanceTests.Examples;

/// <summary>Where findings point to, held against the real text of each example: the approved findings leave positions out.</summary>
public sealed class ExamplePositionTests
{
    [Theory]
    [MemberData(nameof(ExampleReports.All), MemberType = typeof(ExampleReports))]
    public void Every_finding_points_at_what_it_speaks_of(string example, string rules)
    {
        var outline = PlanOutline.Of(System.Text.Encoding.UTF8.GetString(Repository.Bytes(Repository.Whole(example))));
        var findings = Assert.Single(Repository.Check(Repository.Whole(example), rules.Length == 0 ? [] : [rules]).Reports).Findings;
        Assert.NotEmpty(findings);
        Assert.Equal(string.Empty, string.Join('\n', findings.Select(finding => Fault(outline, About(finding), finding.Position!) is { } fault ? $"{finding.Rule}: {fault}" : null).OfType<string>()));
    }

    [Fact]
    public void A_position_that_is_a_line_off_or_in_another_element_is_found_out()
    {
        var outline = PlanOutline.Of("format: 1\ncourses:\n  - { id: a, thickness: 4 cm }\n  - { id: b, thickness: 5 cm }\n");
        Assert.Null(Fault("course:b", "thickness", 4, 25, 29));
        Assert.NotNull(Fault("course:b", "thickness", 3, 25, 29));
        Assert.NotNull(Fault("course:b", "thickness", 4, 25, 28));
        Assert.NotNull(Fault("course:b", "thickness", 4, 5, 7));
        Assert.Null(Fault("course:b", "width", 4, 7, 9));
        Assert.NotNull(Fault("course:b", "width", 2, 1, 8));
        Assert.Null(Fault("course:c", "width", 2, 1, 8));
        Assert.NotNull(Fault("course:b", "width", 1, 1, 7));
        Assert.Null(Fault("opening", "at", 1, 1, 7));

        string? Fault(string address, string key, int line, int column, int end) =>
            ExamplePositionTests.Fault(outline, new InputReference(address, key), new Position(line, column, line, end));
    }

    private static InputReference About(Finding finding) =>
        finding.Missing.Count > 0 ? finding.Missing[0] : finding.Input ?? new InputReference(finding.Address, string.Empty);

    // What is wrong with a position; null when nothing is.
    private static string? Fault(PlanOutline outline, InputReference about, Position at)
    {
        var shown = $"{about.Address}/{about.Key} at {at.Line}:{at.Column}";
        if (outline.At(at.Line, at.Column) is not { } spot)
        {
            return $"{shown}: nothing begins there.";
        }

        var text = outline.Text(at.Line, at.Column, at.EndColumn).Trim('"', '\'');
        if (at.EndLine != at.Line || !string.Equals(text, spot.Text, StringComparison.Ordinal))
        {
            return $"{shown}: `{text}` is not `{spot.Text}`.";
        }

        var wanted = Wanted(outline.Root, about);
        return Candidates(spot).Any(path => path.SequenceEqual(wanted, StringComparer.Ordinal))
            ? null
            : $"{shown}: {string.Join(" / ", spot.Path)} in place of {string.Join(" / ", wanted)}.";
    }

    // What a place can stand for: a value or key for itself; the first key of a group also for the group, when that has no key of its own.
    private static IEnumerable<IEnumerable<string>> Candidates(Spot spot) =>
        spot switch
        {
            { IsKey: false } => [spot.Path],
            { StartsEntry: true } => [spot.Path, spot.Path.SkipLast(1)],
            _ => [spot.Path],
        };

    // The longest part of the way to an input that the plan really has.
    private static List<string> Wanted(YamlNode root, InputReference about)
    {
        var (node, way) = Element(root, about.Address);
        var rest = about.Key;
        while (node is not null && rest.Length > 0)
        {
            var (next, name) = Longest(node, rest);
            if (next is null)
            {
                break;
            }

            way.Add(name);
            node = next;
            rest = rest.Length > name.Length ? rest[(name.Length + 1)..] : string.Empty;
        }

        // What the plan as a whole lacks is said at its name, a block that is missing at the start.
        return way.Count > 0 ? way : [about.Address is "plan" ? "plan" : ((YamlScalarNode)((YamlMappingNode)root).Children[0].Key).Value!];
    }

    // A station as a name may hold a dot.
    private static (YamlNode? Node, string Name) Longest(YamlNode node, string rest)
    {
        for (var end = rest.Length; end > 0; end = rest.LastIndexOf('.', end - 1))
        {
            if (PlanOutline.Child(node, rest[..end]) is { } found)
            {
                return (found, rest[..end]);
            }
        }

        return (null, string.Empty);
    }

    // An element stands in the list that is named after its kind, a pair at its upper course; the plan holds every key of the top.
    private static (YamlNode? Node, List<string> Way) Element(YamlNode root, string address)
    {
        var (kind, id) = address.Split(':', 2) is [var first, var second] ? (first, second) : (address, string.Empty);
        if (kind is "plan")
        {
            return (root, []);
        }

        var isPair = kind is "pair";
        var stem = isPair ? "course" : kind.Replace('-', '_');
        var list = Lists(root, []).FirstOrDefault(one => id.Length == 0
            ? one.Way.Count == 1 && string.Equals(one.Way[0], stem, StringComparison.Ordinal)
            : one.Node is not YamlScalarNode && one.Way[^1].StartsWith(stem.TrimEnd('y'), StringComparison.Ordinal));
        if (list.Way is null)
        {
            return (null, []);
        }

        if (id.Length == 0 || list.Node is YamlMappingNode)
        {
            return list;
        }

        var name = isPair ? id.Split('+')[1] : id;
        return PlanOutline.Child(list.Node, name) is { } item ? (item, [.. list.Way, name]) : (null, list.Way);
    }

    private static IEnumerable<(YamlNode Node, List<string> Way)> Lists(YamlNode node, IReadOnlyList<string> way)
    {
        if (node is not YamlMappingNode map)
        {
            yield break;
        }

        foreach (var (key, value) in map.Children)
        {
            List<string> below = [.. way, ((YamlScalarNode)key).Value!];
            yield return (value, below);
            foreach (var deeper in Lists(value, below).Where(_ => below.Count < 2))
            {
                yield return deeper;
            }
        }
    }
}
