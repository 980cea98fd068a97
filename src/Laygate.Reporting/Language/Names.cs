using System.Collections.Frozen;
using Laygate.Engineering.Quantities;
using Laygate.Model.Plans;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>Words for the members of closed lists and for names that only a program would write.</summary>
public static class Names
{
    // A reference to the plan as a whole names a key of the block `plan`, or a block that is no element of its own.
    private static readonly FrozenSet<string> IdentityKeys = FrozenSet.Create(
        StringComparer.Ordinal,
        "id", "stage", "title", "revision", "date", "supersedes", "contract", "client", "contractor", "language", "prepared", "checked", "approved", "people");

    /// <summary>What a finding is called on a report: one of fail, warn, pass, departed, not assessed, needs a person, open, not applicable.</summary>
    public static string Of(FindingGroup group) => group switch
    {
        FindingGroup.Failed => "fail",
        FindingGroup.Warned => "warn",
        FindingGroup.NotAssessed => "not assessed",
        FindingGroup.NeedsPerson => "needs a person",
        FindingGroup.Open => "open",
        FindingGroup.Departed => "departed",
        FindingGroup.Passed => "pass",
        _ => "not applicable",
    };

    /// <summary>Where a temperature is measured or predicted.</summary>
    public static string Of(Place place) => place switch
    {
        Place.Skin => "at the skin",
        Place.MidDepth => "at mid-depth",
        Place.InLoad => "in the load",
        Place.CourseMean => "as the mean of the course",
        _ => "in the core",
    };

    /// <summary>A layer of the rule book.</summary>
    public static string Of(Layer layer) => layer switch
    {
        Layer.GeneralPractice => "general practice",
        Layer.StandardSpecification => "standard specification",
        _ => "particular specification",
    };

    /// <summary>How strongly a limit speaks: required, needed, recommended or advised.</summary>
    public static string Of(Strength strength, Basis basis) => (strength, basis) switch
    {
        (Strength.Required, Basis.PhysicalNecessity) => "needed",
        (Strength.Required, _) => "required",
        (_, Basis.Recommendation) => "recommended",
        _ => "advised",
    };

    /// <summary>A quantity's name in words: <c>course.thickness_to_size</c> is "thickness to size", <c>weather.wind_highest_at_mat</c> is "highest wind at mat".</summary>
    public static string OfQuantity(string quantity)
    {
        var words = quantity[(quantity.IndexOf('.', StringComparison.Ordinal) + 1)..].Split('_');
        return PlainText.Show(string.Join(' ', words.OrderBy(word => word is "lowest" or "highest" ? 0 : 1)));
    }

    /// <summary>A key as a person would look for it in the plan: <c>opening.below.value</c>, or <c>course:wearing/thickness</c> for an element with an id.</summary>
    public static string Of(InputReference input)
    {
        var address = PlainText.Show(input.Address);
        var key = PlainText.Show(input.Key);
        if (address.Contains(':', StringComparison.Ordinal))
        {
            return key.Length == 0 ? address : $"{address}/{key}";
        }

        var block = address.Replace('-', '_');
        return key.Length == 0 ? block : block is "plan" && !IdentityKeys.Contains(key.Split('.')[0]) ? key : $"{block}.{key}";
    }

    /// <summary>What a finding waits for, each key once; a list for which a remark names the entry to add is left to the remark.</summary>
    public static IReadOnlyList<string> Missing(Finding finding)
    {
        var told = finding.Notes.Where(note => string.Equals(note.Id, "entry-missing", StringComparison.Ordinal))
            .SelectMany(note => note.Arguments).Where(argument => argument.Name is "list").Select(argument => argument.Text).ToHashSet(StringComparer.Ordinal);
        return [.. finding.Missing.Select(Of).Distinct(StringComparer.Ordinal).Where(key => !told.Contains(key))];
    }

    /// <summary>A word with a capital.</summary>
    internal static string Capital(string text) =>
        text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
