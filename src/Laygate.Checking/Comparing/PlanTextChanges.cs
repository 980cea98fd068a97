using System.Globalization;
using Laygate.Reading.Plans;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Checking.Comparing;

/// <summary>Finds the places where two plans say something different. Comments, order of keys and order of named list entries do not matter.</summary>
internal static class PlanTextChanges
{
    /// <summary>The differences: those of the later plan in its order, then what is gone.</summary>
    public static IReadOnlyList<TextChange> Between(MapToken? old, MapToken? @new)
    {
        var before = Leaves(old);
        var after = Leaves(@new);
        return
        [
            .. after.Where(leaf => !before.TryGetValue(leaf.Key, out var was) || !IsAlike(was, leaf.Value))
                .Select(leaf => Change(leaf.Key, before.GetValueOrDefault(leaf.Key), leaf.Value)),
            .. before.Where(leaf => !after.ContainsKey(leaf.Key)).Select(leaf => Change(leaf.Key, leaf.Value, null)),
        ];
    }

    private static Dictionary<string, ScalarToken> Leaves(MapToken? plan)
    {
        var leaves = new Dictionary<string, ScalarToken>(StringComparer.Ordinal);
        if (plan is not null)
        {
            Collect(plan, string.Empty, leaves);
        }

        return leaves;
    }

    private static void Collect(YamlToken token, string path, Dictionary<string, ScalarToken> leaves)
    {
        switch (token)
        {
            case ScalarToken scalar:
                leaves[path] = scalar;
                break;
            case MapToken map:
                foreach (var entry in map.Entries)
                {
                    Collect(entry.Value, Under(path, entry.Key.Text), leaves);
                }

                break;
            case ListToken list:
                Collect(list, path, leaves);
                break;
        }
    }

    // An entry without a name, or whose name stands twice, is known by its place.
    private static void Collect(ListToken list, string path, Dictionary<string, ScalarToken> leaves)
    {
        var taken = new HashSet<string>(StringComparer.Ordinal);
        for (var index = 0; index < list.Items.Count; index++)
        {
            var name = PositionedToken.Name(list.Items[index]);
            var step = name is { Length: > 0 } && taken.Add(name) ? name : string.Create(CultureInfo.InvariantCulture, $"{index + 1}");
            Collect(list.Items[index], Under(path, step), leaves);
        }
    }

    private static string Under(string path, string step) => path.Length == 0 ? step : $"{path}.{step}";

    // 40 and "40" are read alike where a text belongs and refused elsewhere, so the style does not matter here.
    private static bool IsAlike(ScalarToken one, ScalarToken other) => string.Equals(one.Text, other.Text, StringComparison.Ordinal);

    private static TextChange Change(string path, ScalarToken? old, ScalarToken? @new) =>
        new(path, old?.Text, @new?.Text, At(old), At(@new));

    private static Position? At(ScalarToken? token) =>
        token is null ? null : Spans.Of(token.Span);
}
