using Laygate.Model.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Yaml;

namespace Laygate.Checking.Cases;

/// <summary>Reads <c>cases.yaml</c>.</summary>
internal static class CaseReader
{
    public static IReadOnlyList<RuleCase> Read(MapToken root, List<ReadingProblem> problems) =>
        [.. root.Maps("cases").Select(item => One(item, root.Needed("base"), problems))];

    private static RuleCase One(MapToken map, string basePlan, List<ReadingProblem> problems) => new(
        map.Needed("case"),
        map.Text("base") ?? basePlan,
        map.Word<Stage>("stage"),
        map.Date("date", problems),
        map.Texts("with"),
        [.. Entries(map.Map("set")).Select(entry => (entry.Key.Text, entry.Value))],
        map.Texts("remove"),
        [
            .. Entries(map.Map("give")).SelectMany(element =>
                Entries(element.Value as MapToken).Select(entry => (element.Key.Text, entry.Key.Text, entry.Value))),
        ],
        map.Map("finding") ?? new MapToken([], map.Span),
        TokenNames.Head(map).Span);

    private static IReadOnlyList<MapEntry> Entries(MapToken? map) => map?.Entries ?? [];
}
