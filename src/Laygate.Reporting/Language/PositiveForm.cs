using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>
/// What holds where a rule is met, said positively: titles name what goes wrong, and a list of passes that reads like a list of faults is read upside
/// down.
/// </summary>
internal static class PositiveForm
{
    private const string Suffix = " not stated in full";

    /// <summary>Ends what holds where a measure is merely stated.</summary>
    public const string NotChecked = " (quality not checked)";

    /// <summary>What a finding that is met says; a rule that has no words of its own is named as what does not occur.</summary>
    public static string Of(Finding finding) => PlainText.Show(Of(finding.Title, finding.Asks, finding.Holds) ?? $"Does not occur: {finding.Title}");

    /// <summary>What holds where a rule is met; null where nobody has worded it.</summary>
    /// <param name="title">Title of the rule.</param>
    /// <param name="asks">What it asks, after "whether"; null where it does not say.</param>
    /// <param name="holds">What holds, where that is another sentence.</param>
    public static string? Of(string title, string? asks, string? holds) =>
        holds
        ?? (title.EndsWith(Suffix, StringComparison.Ordinal) ? title[..^Suffix.Length] + " stated" + NotChecked : null)
        ?? (asks is null ? null : Names.Capital(asks));
}
