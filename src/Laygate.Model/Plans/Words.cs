using System.Text;

namespace Laygate.Model.Plans;

/// <summary>The words by which plans and rule files name the members of a closed list: lower case with hyphens.</summary>
public static class Words
{
    /// <summary>All words of a list, in the order of its members.</summary>
    public static IReadOnlyList<string> Of<T>()
        where T : struct, Enum => Table<T>.Words;

    /// <summary>The word of one member.</summary>
    public static string Of<T>(T member)
        where T : struct, Enum => Array.IndexOf(Table<T>.Members, member) is var index and >= 0 ? Table<T>.Words[index] : string.Empty;

    /// <summary>Finds the member that a word names; letter case matters.</summary>
    /// <returns>The member, or null when the list has no such word.</returns>
    public static T? Find<T>(string word)
        where T : struct, Enum => Array.IndexOf(Table<T>.Words, word) is var index and >= 0 ? Table<T>.Members[index] : null;

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

    // A report asks for thousands of words; they are made from the names of the members once. Arrays: a dictionary for each list would be megabytes of machine code.
    private static class Table<T>
        where T : struct, Enum
    {
        public static readonly T[] Members = Enum.GetValues<T>();
        public static readonly string[] Words = Array.ConvertAll(Enum.GetNames<T>(), Hyphenate);
    }
}
