using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Reading.Sets;

/// <summary>Names of files in a set: relative, divided by <c>/</c>, each one file on every system.</summary>
internal static class SetNames
{
    /// <summary>Why the files of a set cannot stand beside each other.</summary>
    /// <param name="set">The set, as it is shown.</param>
    /// <param name="names">The names of its files.</param>
    public static IReadOnlyList<Problem> Check(string set, IReadOnlyList<string> names)
    {
        List<Problem> problems = [.. names.Select(name => Fault(name) is var (message, hint) ? Of(set, message, hint) : null).OfType<Problem>()];
        return problems.Count > 0 ? problems : [.. Clashes(set, names)];
    }

    /// <summary>A name in the form in which names are compared: letters with marks in one piece.</summary>
    public static string Key(string name)
    {
        // Some archives hold marks apart from their letters; a name with half of a character has no other form.
        try
        {
            return name.Normalize();
        }
        catch (ArgumentException)
        {
            return name;
        }
    }

    /// <summary>Where a name leads, seen from the folder of a file; null where it leads out of the set.</summary>
    /// <param name="from">A file of the set.</param>
    /// <param name="name">A relative name.</param>
    public static string? Combine(string from, string name)
    {
        List<string> way = [.. from.Split('/')[..^1]];
        foreach (var step in name.Split('/'))
        {
            switch (step)
            {
                case "" or ".":
                    break;
                case "..":
                    if (way.Count == 0)
                    {
                        return null;
                    }

                    way.RemoveAt(way.Count - 1);
                    break;
                default:
                    way.Add(step);
                    break;
            }
        }

        return string.Join('/', way);
    }

    /// <summary>Whether a name begins at the root of a disk.</summary>
    public static bool IsAbsolute(string name) => name.StartsWith('/') || (name.Length > 1 && name[1] == ':' && char.IsAsciiLetter(name[0]));

    /// <summary>A problem of a set as a whole.</summary>
    public static Problem Of(string set, string message, string? hint) => new(set, ShownProblems.Short(message), hint, null);

    private static (string Message, string Hint)? Fault(string name)
    {
        var shown = TokenNames.Quote(name);
        return name.Length == 0 ? ("A file has no name.", "Give each file a name.")
            : name.Length > SetLimits.Name ? ($"The name {shown} is longer than {SetLimits.Name} characters.", "Shorten it.")
            : name.Contains('\0', StringComparison.Ordinal) ? ($"The name {TokenNames.Quote(name.Replace('\0', ' '))} holds a NUL character.", "Rename the file.")
            : name.Any(char.IsControl) ? ("The name of a file holds a control character.", "Rename the file.")
            : name.Contains('\uFFFD', StringComparison.Ordinal) || HasHalves(name) ? ($"The name {shown} is not written in UTF-8.", "Pack the files again with a program that writes names in UTF-8, or use plain letters.")
            : name.Contains('\\', StringComparison.Ordinal) ? ($"The name {shown} holds a backslash.", "Divide folders by `/`.")
            : IsAbsolute(name) ? ($"The name {shown} begins at the root of a disk.", "Name files from the top of the set, such as `firm/machines.yaml`.")
            : name.Split('/').Any(step => step is "..") ? ($"The name {shown} leads out of the set (`..`).", "Name files from the top of the set, such as `firm/machines.yaml`.")
            : name.Split('/').Any(step => step is "" or "." || step.Trim().Length == 0) ? ($"The name {shown} holds a folder without a name.", "Name files from the top of the set, such as `firm/machines.yaml`.")
            : null;
    }

    private static bool HasHalves(string name) => !System.Text.Encoding.UTF8.GetString(System.Text.Encoding.UTF8.GetBytes(name)).Equals(name, StringComparison.Ordinal);

    private static IEnumerable<Problem> Clashes(string set, IReadOnlyList<string> names)
    {
        var seen = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach (var name in names)
        {
            if (!seen.TryAdd(Key(name), name))
            {
                var other = seen[Key(name)];
                yield return string.Equals(Key(other), Key(name), StringComparison.Ordinal)
                    ? Of(set, $"Two files have the name {TokenNames.Quote(name)}.", "Send each file once; files of the same name belong in folders of an archive.")
                    : Of(set, $"{TokenNames.Quote(other)} and {TokenNames.Quote(name)} differ in letter case only; on some systems they are one file.", "Rename one of them.");
            }
        }

        foreach (var name in names)
        {
            for (var at = name.IndexOf('/', StringComparison.Ordinal); at > 0; at = name.IndexOf('/', at + 1))
            {
                if (seen.TryGetValue(Key(name[..at]), out var file))
                {
                    yield return Of(set, $"{TokenNames.Quote(file)} is a file and the folder of {TokenNames.Quote(name)} at once.", "Rename one of them.");
                }
            }
        }
    }
}
