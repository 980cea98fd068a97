using Laygate.Reporting.Language;
using Laygate.Reporting.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Runs;

/// <summary>One entry of a list for machines: a finding, or a departure that does not hold.</summary>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Group">Part of the report.</param>
/// <param name="File">File in which it stands.</param>
/// <param name="Position">Place in the file; the first character where none is known.</param>
/// <param name="Address">Address of the element.</param>
/// <param name="Title">What goes wrong, in a few words.</param>
/// <param name="Sentence">Value against limit.</param>
/// <param name="Advice">What to state, what is remarked, what to do.</param>
/// <param name="Fingerprint">The same for the same rule, file and address, wherever its lines are.</param>
/// <param name="Report">Report it belongs to.</param>
/// <param name="Finding">The finding; null for a departure that does not hold.</param>
internal sealed record ListedItem(
    string Rule, FindingGroup Group, string File, Position Position, string Address, string Title, string Sentence,
    IReadOnlyList<string> Advice, string Fingerprint, Report Report, Finding? Finding)
{
    /// <summary>Rule id of departures that do not hold.</summary>
    public const string DepartureRule = "departure-not-held";

    /// <summary>Whether a baseline knows it of old.</summary>
    public bool Known => Finding?.Known == true;

    /// <summary>Title, place, sentence and advice on one line; the first sentence is short and ends with a full stop.</summary>
    public string Text => string.Join(' ', [$"{PlainText.Show(Title)} at {PlainText.Show(Address)}.", Sentence, .. Advice]);
}
