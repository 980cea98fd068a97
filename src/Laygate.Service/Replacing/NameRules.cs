using System.Text.RegularExpressions;
using Laygate.Model.Measures;
using Laygate.Reading;
using Laygate.Reading.Personal;
using Laygate.Reporting.Cards;
using Laygate.Reporting.Text;
using Laygate.Service.Checking;

namespace Laygate.Service.Replacing;

/// <summary>
/// Which values are names of people, and which of them can be told from other words. Both are judgement; when in doubt a value is a name at its own key, and no name elsewhere, so
/// that no finding, number or word of the program is ever touched.
/// </summary>
internal sealed partial class NameRules
{
    private const int LeastDigits = 6;
    private const int LeastLetters = 3;

    // What people on a site, in an office or at an authority are called by what they do.
    private static readonly HashSet<string> Roles = new(
        """
        all anybody anyone each every everybody everyone nobody whoever the a an of on at for and or in to by chief head lead leading senior assistant deputy duty shift night day site plant road works work
        foreman forewoman manager engineer superintendent supervisor inspector surveyor technician operator driver crew gang team worker workers labourer spotter banksman dispatcher laboratory lab office
        officer coordinator representative client contractor authority agency county city district project quality safety paving paver roller feeder traffic mix release first aider laying planner reviewer
        agent designer clerk owner consultant council police ambulance kerb client's
        bauleiter bauleitung polier schachtmeister vorarbeiter oberbauleiter einbaumeister walzenfahrer fahrer mischmeister labor prüfstelle auftraggeber auftragnehmer bauüberwachung bauoberleitung sicherheitskoordinator
        einweiser kolonne der die das des im am und oder für vom von
        """.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries),
        StringComparer.OrdinalIgnoreCase);

    private readonly Lazy<HashSet<string>> own;

    /// <summary>The rules of a service: the words of its rule book, its schemas and its cards are its own.</summary>
    public NameRules(CheckDesk desk) => own = new Lazy<HashSet<string>>(() => new HashSet<string>(
        EmbeddedSchemas.Names.Select(name => EmbeddedSchemas.Find(name)!).Append(desk.Book.Text).Concat(CardTexts.Languages.SelectMany(language => CardTexts.Of(language).All))
            .Concat(UnitTable.All.Select(unit => unit.Spelling)).SelectMany(Words),
        StringComparer.OrdinalIgnoreCase));

    /// <summary>Whether what stands at a key is a name, or a telephone number, and no role.</summary>
    /// <param name="sort">The sort of the key.</param>
    /// <param name="value">What stands there.</param>
    /// <param name="roles">Roles that the same plan states.</param>
    public static bool IsName(PersonalSort sort, string value, IReadOnlySet<string> roles) => sort switch
    {
        PersonalSort.Name => value.Any(char.IsLetter) && !IsRole(value),
        PersonalSort.Who => value.Any(letter => char.IsUpper(letter) || char.GetUnicodeCategory(letter) == System.Globalization.UnicodeCategory.OtherLetter) && !IsRole(value) && !roles.Contains(value.Trim()),
        PersonalSort.Call => IsNumber(value),
        _ => false,
    };

    /// <summary>Whether a name can be told from other words wherever it stands.</summary>
    public bool IsPlain(string name)
    {
        if (Telephone().IsMatch(name.Trim()) || name.Contains('@', StringComparison.Ordinal))
        {
            return true;
        }

        List<string> words = [.. Words(name)];
        var capital = words.Where(word => !char.IsLower(word[0])).ToList();
        return (capital.Count > 1 && !name.Any(char.IsDigit) && words.TrueForAll(word => !char.IsLower(word[0]) || word.Length <= LeastLetters))
            || capital.Exists(word => (word.Length >= LeastLetters || char.GetUnicodeCategory(word[0]) == System.Globalization.UnicodeCategory.OtherLetter) && !own.Value.Contains(word));
    }

    /// <summary>Whether a word can be no number of a report: a hash in hexadecimal digits, with a letter.</summary>
    public static bool IsHash(string word) => word.All(char.IsAsciiHexDigit) && word.Any(char.IsAsciiLetter);

    /// <summary>The forms in which a name may be shown.</summary>
    public static IEnumerable<string> Forms(string name) => new[] { name.Trim(), PlainText.Show(name.Trim()) }.Select(EncodedText.Plain).Where(form => form.Length > 0).Distinct(StringComparer.Ordinal);

    private static bool IsRole(string value) => Words(value).ToList() is { Count: > 0 } words && words.TrueForAll(Roles.Contains) && !value.Any(char.IsDigit);

    private static bool IsNumber(string value) => value.Count(char.IsDigit) >= LeastDigits || value.Contains('@', StringComparison.Ordinal);

    private static IEnumerable<string> Words(string text) => Word().Matches(text).Select(match => match.Value);

    // As no number, date or time of a report is written.
    [GeneratedRegex(@"^(?:\+|\(|0)\d[\d ()/.-]{5,}$", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Telephone();

    [GeneratedRegex(@"\p{L}[\p{L}\p{M}'’]*", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 5000)]
    private static partial Regex Word();
}
