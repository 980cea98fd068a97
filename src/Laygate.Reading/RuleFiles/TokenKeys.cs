using Laygate.Model.Plans;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.RuleFiles;

/// <summary>Reads values of a token tree whose shape a schema has accepted.</summary>
internal static class TokenKeys
{
    public static string? Text(this MapToken map, string key) => (map[key] as ScalarToken)?.Text;

    public static string Needed(this MapToken map, string key) => map.Text(key) ?? string.Empty;

    public static MapToken? Map(this MapToken map, string key) => map[key] as MapToken;

    public static IReadOnlyList<YamlToken> Items(this MapToken map, string key) => (map[key] as ListToken)?.Items ?? [];

    public static IEnumerable<MapToken> Maps(this MapToken map, string key) => map.Items(key).OfType<MapToken>();

    public static IReadOnlyList<string> Texts(this MapToken map, string key) => TextsOf(map[key]);

    public static IReadOnlyList<string> TextsOf(YamlToken? token) =>
        token is ListToken list ? [.. list.Items.OfType<ScalarToken>().Select(item => item.Text)] : [];

    public static T? Word<T>(this MapToken map, string key)
        where T : struct, Enum => map.Text(key) is { } text ? Words.Find<T>(text) : null;

    public static T NeededWord<T>(this MapToken map, string key)
        where T : struct, Enum => map.Word<T>(key) ?? default;

    public static DateOnly? Date(this MapToken map, string key, List<ReadingProblem> problems)
    {
        if (map[key] is not ScalarToken scalar)
        {
            return null;
        }

        var date = ScalarTexts.Date(scalar.Text);
        if (date is null)
        {
            problems.Add(new ReadingProblem($"`{key}`: there is no day {TokenNames.Quote(scalar.Text)}.", scalar.Span, "Write a day of the calendar, such as `2026-04-01`."));
        }

        return date;
    }
}
