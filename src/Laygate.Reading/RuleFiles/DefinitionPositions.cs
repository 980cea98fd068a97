using System.Globalization;
using Laygate.Reading.Yaml;
using Laygate.Rules.Binding;

namespace Laygate.Reading.RuleFiles;

/// <summary>Where definitions stand in their files.</summary>
public sealed class DefinitionPositions
{
    private readonly Dictionary<(string? Specification, string? Rule), (string File, YamlToken Root)> documents = [];

    internal void Add(string? specification, string? rule, string file, YamlToken root) => documents[(specification, rule)] = (file, root);

    internal void Add(DefinitionPositions others)
    {
        foreach (var (key, document) in others.documents)
        {
            documents[key] = document;
        }
    }

    /// <summary>Finds the place of a mistake: the value itself, or the nearest key above it.</summary>
    /// <returns>File and span; the file is empty for definitions that were not read from text.</returns>
    public (string File, TextSpan? Span) Find(BookPlace place)
    {
        if (!documents.TryGetValue((place.Specification, place.Rule), out var document))
        {
            return (place.Rule ?? place.Specification ?? string.Empty, null);
        }

        var token = document.Root;
        var span = TokenNames.Head(token).Span;
        foreach (var step in place.Path.Split('/', StringSplitOptions.RemoveEmptyEntries))
        {
            if (Step(token, step) is not var (next, at))
            {
                break;
            }

            (token, span) = (next, at);
        }

        return (document.File, span);
    }

    private static (YamlToken Next, TextSpan Span)? Step(YamlToken token, string step)
    {
        if (token is MapToken map && map.Find(step) is { } entry)
        {
            return (entry.Value, entry.Value is ScalarToken { IsNull: false } ? entry.Value.Span : entry.Key.Span);
        }

        return token is ListToken list && int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var index) && index < list.Items.Count
            ? (list.Items[index], TokenNames.Head(list.Items[index]).Span)
            : null;
    }
}
