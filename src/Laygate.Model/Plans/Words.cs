using System.Text;

namespace Laygate.Model.Plans;

/// <summary>The words by which plans and rule files name the members of a closed list: lower case with hyphens.</summary>
public static class Words
{
    /// <summary>All words of a list, in the order of its members.</summary>
    public static IReadOnlyList<string> Of<T>()
        where T : struct, Enum => [.. Enum.GetNames<T>().Select(Hyphenate)];

    /// <summary>The word of one member.</summary>
    public static string Of<T>(T member)
        where T : struct, Enum => Hyphenate(Enum.GetName(member) ?? string.Empty);

    /// <summary>Finds the member that a word names; letter case matters.</summary>
    /// <returns>The member, or null when the list has no such word.</returns>
    public static T? Find<T>(string word)
        where T : struct, Enum
    {
        foreach (var member in Enum.GetValues<T>())
        {
            if (string.Equals(Of(member), word, StringComparison.Ordinal))
            {
                return member;
            }
        }

        return null;
    }

    private static string Hyphenate(string name)
    {
        var text = new StringBuilder(name.Length + 4);
        foreach (var letter in name)
        {
            if (char.IsAsciiLetterUpper(letter) && text.Length > 0)
            {
                text.Append('-');
            }

            text.Append(char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }
}
