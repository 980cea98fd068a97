using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.Reporting.Text;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Language;

/// <summary>Where a limit comes from, how it is known and who set it.</summary>
public static class SourceWords
{
    /// <summary>How a figure is known.</summary>
    public static string Of(Evidence evidence) => evidence switch
    {
        Evidence.Recalled => "recalled from memory",
        Evidence.Judgement => "engineering judgement",
        Evidence.CommonPractice => "common practice, no published source",
        Evidence.Derived => "derived from other figures",
        Evidence.SecondHand => "second-hand",
        Evidence.Read => "read in the publication",
        _ => "confirmed by the checking side",
    };

    /// <summary>How a limit is known, and that it can only warn where that is so.</summary>
    public static string HowKnown(ShownLimit limit)
    {
        var words = limit.Source.Confirmation is { } confirmation
            ? $"confirmed by {PlainText.Show(confirmation.By)} on {Day(confirmation.On)}, {PlainText.Show(confirmation.Edition)}, page {PlainText.Show(confirmation.Page)}"
            : Of(limit.Source.Evidence) + Carrier(limit);
        return OnlyWarns(limit) ? words + (limit.SilenceFails ? ": only warns before release" : ": can only warn") : words;
    }

    /// <summary>Issuer, title, edition and clause of a publication; its id where the bibliography does not have it.</summary>
    public static string Publication(ShownLimit limit)
    {
        var title = limit.Publication is { } publication
            ? Join(publication.Issuer, publication.Title, publication.Edition ?? publication.Year)
            : limit.Source.Source;
        return PlainText.Show(Join(title, limit.Source.Clause));
    }

    /// <summary>All about the source of a limit in one line.</summary>
    public static string Line(ShownLimit limit)
    {
        var parts = new List<string> { $"{Publication(limit)} ({HowKnown(limit)}).", $"Set by {SetBy(limit)}." };
        if (Validity(limit.Source) is { } validity)
        {
            parts.Add(validity);
        }

        if (limit.Source.Remark is { Length: > 0 } remark)
        {
            parts.Add(PlainText.Show(remark));
        }

        return string.Join(' ', parts);
    }

    /// <summary>The layer that set a limit, with the specification's name.</summary>
    public static string SetBy(ShownLimit limit) => limit.SetBy is { Length: > 0 } name
        ? $"{PlainText.Show(name)} ({Names.Of(limit.Layer)})"
        : Names.Of(limit.Layer);

    private static string Carrier(ShownLimit limit) =>
        limit.Source.Evidence == Evidence.SecondHand && limit.Publication?.Carrier is { Length: > 0 } carrier
            ? $", quoted in {PlainText.Show(carrier)}"
            : string.Empty;

    // The same line of the status table that decides: weak evidence cannot fail, unless the contract or the plan itself sets the limit.
    private static bool OnlyWarns(ShownLimit limit) =>
        limit is { Strength: Strength.Required, Quantity: null, Source.Confirmation: null }
        && limit.Layer != Layer.ParticularSpecification
        && limit.Source.Evidence is Evidence.Recalled
            or Evidence.Judgement or Evidence.CommonPractice;

    internal static string? Validity(SourceReference source) => (source.ValidFrom, source.ValidTo, source.Successor) switch
    {
        (_, { } to, { Length: > 0 } next) => $"In force until {Day(to)}, then {PlainText.Show(next)}.",
        (_, { } to, _) => $"In force until {Day(to)}.",
        (_, null, { Length: > 0 } next) => $"To be replaced by {PlainText.Show(next)}, day not announced.",
        ({ } from, _, _) => $"In force since {Day(from)}.",
        _ => null,
    };

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Join(params string?[] parts) => string.Join(", ", parts.Where(part => !string.IsNullOrEmpty(part)));
}
