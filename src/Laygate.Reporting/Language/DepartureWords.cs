using System.Globalization;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>Words departures: what is permitted, and why one does not hold.</summary>
public static class DepartureWords
{
    /// <summary>Who permitted what until when, and why.</summary>
    public static string Permission(Departure departure)
    {
        var value = departure.Accepted is { } accepted ? $", up to {PlainText.Show(accepted.Text)}" : string.Empty;
        var reference = departure.Reference is { Length: > 0 } text ? $" ({PlainText.Show(text)})" : string.Empty;
        return $"{PlainText.Show(departure.Id)} by {PlainText.Show(departure.ApprovedBy)} on {Day(departure.ApprovedOn)}{reference}, until {Day(departure.ExpiresOn)}{value}, asked for by {PlainText.Show(departure.AskedBy)}: {PlainText.Show(departure.Reason)}";
    }

    /// <summary>Why a departure does not hold and what to do; what it is for where it holds.</summary>
    public static string Of(DepartureUse use)
    {
        var departure = use.Departure;
        var which = $"Departure {PlainText.Show(departure.Id)} from {PlainText.Show(departure.Rule)} at {PlainText.Show(departure.Address)}";
        return use.State switch
        {
            DepartureState.Holds => $"{which} holds until {Day(departure.ExpiresOn)}.",
            DepartureState.Expired => $"{which} ended on {Day(departure.ExpiresOn)}: the finding counts again. Have it renewed, or change the plan.",
            DepartureState.NotYet => $"{which} is permitted only from {Day(departure.ApprovedOn)}: the finding counts until then.",
            DepartureState.Exceeded => $"{which} accepts {PlainText.Show(departure.Accepted!.Text)}, and the plan now has {Value(use.Value)}: the finding counts again. Change the plan, or have the departure extended.",
            DepartureState.NoValueAccepted => $"{which} does not say which value it accepts, and the plan has {Value(use.Value)}: the finding counts. Have `accepted` added.",
            DepartureState.NoElement => $"{which} is not used: the plan has no {PlainText.Show(departure.Address)}. Correct the address, name the plan it is for, or remove it.",
            DepartureState.NoFinding => $"{which} is not used: the rule is not in force here, or does not look at that kind of element. Remove it.",
            _ => $"{which} is not used: the finding there is {Names.Of(GroupOf(use))}. Remove it.",
        };
    }

    private static FindingGroup GroupOf(DepartureUse use) => use switch
    {
        { Status: Status.Pass } => FindingGroup.Passed,
        { Outcome: Outcome.Open } => FindingGroup.Open,
        _ => FindingGroup.NotApplicable,
    };

    // More digits than a finding shows: a value that exceeds never looks like the one that is accepted.
    private static string Value(ShownValue? value) => value switch
    {
        { Number: { } number } => Figures.WithUnit(Rounding.Kept(number).ToString("G6", CultureInfo.InvariantCulture), value.Unit).Replace(PlainText.Glue, ' '),
        { Text: { Length: > 0 } text } => PlainText.Show(text),
        _ => "no value",
    };

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
