using System.Globalization;
using System.Text;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Verification;

/// <summary>The verification manual as Markdown. Its first paragraph says in one breath how near the solver comes to known solutions and that no field test stands behind it.</summary>
public static class VerificationManual
{
    /// <summary>Writes the manual.</summary>
    /// <param name="result">A run without problems.</param>
    /// <returns>Markdown with line feeds.</returns>
    public static string Markdown(VerificationResult result)
    {
        var text = new StringBuilder();
        text.Append("# Verification\n\n").Append(Opening(result)).Append("\n\n");
        text.Append("This page is written by the program from the case files in `docs/verification`; every figure under \"expected\" comes from the source beside it, none from this program. ");
        text.Append("Run the cases with `laygate verify`, or your own with `laygate verify FILES`. ");
        text.Append("Evidence: *read* in the source; *second-hand*, read in a carrier that reproduces it; *recalled* from memory; *derived*, worked out from such figures and as strong as the weakest of them.\n");
        Worst(text, result);
        foreach (var topic in result.Topics)
        {
            Topic(text, topic);
        }

        text.Append(FieldChapter.Markdown);
        return text.Append('\n').Append(VerificationWords.Tally(result.Tally)).Append('\n').ToString();
    }

    private static string Opening(VerificationResult result)
    {
        var parts = result.Worst
            .Where(worst => worst.Kind is VerifiedKind.Temperature or VerifiedKind.Flux or VerifiedKind.CrossingTime)
            .GroupBy(worst => worst.Kind)
            .Select(group => group.OrderByDescending(worst => worst.Tolerance.EndsWith('%')).ThenByDescending(worst => worst.Checks).First())
            .Select(worst => string.Create(CultureInfo.InvariantCulture, $"{Largest(worst)} in {worst.Checks} {VerificationWords.Plural(worst.Kind)} (tolerance {worst.Tolerance})"));
        return $"With the settings that `check` uses, the solver is off from closed solutions, textbook examples and another program (`tests/Tools`) by at most {string.Join(", ", parts)}, "
            + "and no field test whose inputs are all known has been found to compare the model with: these figures say how well the equations are solved, not how near the model comes to a real mat. "
            + "Properties of the mix, wind at the mat, contact and moisture of the base are known far less well than the equations are solved. Before you rely on a time, measure the mat on site; your specification and its engineer decide.";
    }

    private static void Worst(StringBuilder text, VerificationResult result)
    {
        text.Append("\n## Largest differences\n\nWhere a source rounds its figures, its rounding is part of the difference.\n\n| quantity | tolerance | checks | largest difference | share of the tolerance |\n|---|---|---:|---:|---:|\n");
        foreach (var worst in result.Worst.Where(worst => worst.Kind != VerifiedKind.Formula))
        {
            text.Append(CultureInfo.InvariantCulture, $"| {VerificationWords.Plural(worst.Kind)} | {Escape(worst.Tolerance)} | {worst.Checks} | {Largest(worst)} | {(worst.OfTolerance < 0.001 ? "below 0.1" : Digits(100 * worst.OfTolerance))} % |\n");
        }
    }

    private static void Topic(StringBuilder text, VerificationTopic topic)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n## {Escape(topic.Name)}\n\n| case | source | evidence | expected | computed | difference | tolerance | verdict |\n|---|---|---|---:|---:|---:|---|---|\n");
        foreach (var one in topic.Cases)
        {
            foreach (var check in one.Checks)
            {
                Row(text, one, check);
            }
        }

        var remarks = topic.Cases.Where(one => one.Remark is not null).GroupBy(one => one.Remark!, StringComparer.Ordinal).ToList();
        if (remarks.Count > 0)
        {
            text.Append("\nRemarks:\n\n");
            foreach (var remark in remarks)
            {
                var cases = remark.Count() == topic.Cases.Count ? "all cases" : string.Join("; ", remark.Select(one => one.Title));
                text.Append(CultureInfo.InvariantCulture, $"- {Escape(cases)}: {Escape(remark.Key)}\n");
            }
        }
    }

    private static void Row(StringBuilder text, VerificationCase one, VerificationCheck check)
    {
        var decimals = Decimals(check.Allowed);
        var computed = check.Computed is { } value ? VerificationWords.WithUnit(Fixed(value, decimals), check.Unit) : check.Reason ?? string.Empty;
        var difference = check.Difference is { } gap ? VerificationWords.WithUnit(Fixed(gap, decimals), VerificationWords.DifferenceUnit(check.Unit)) : string.Empty;
        text.Append(CultureInfo.InvariantCulture, $"| {Escape(one.Title)}: {Escape(VerificationWords.Of(check.Quantity))} | {Escape(VerificationWords.Of(one.Source))} | {VerificationWords.Of(one.Evidence)} ");
        text.Append(CultureInfo.InvariantCulture, $"| {VerificationWords.WithUnit(Plain(check.Expected), Escape(check.Unit))} | {Escape(computed)} | {Escape(difference)} | {Escape(check.Tolerance)} | {VerificationWords.Of(check.Verdict)} |\n");
    }

    private static string Largest(WorstDifference worst) => worst.Kind switch
    {
        VerifiedKind.Temperature => $"{Digits(worst.Absolute ?? 0)} K",
        VerifiedKind.HeatBalanceGap => (worst.Absolute ?? 0) < 1e-12 ? "below 0.000000000001" : Digits(worst.Absolute ?? 0),
        VerifiedKind.CrossingTime or VerifiedKind.Lag when !worst.Tolerance.EndsWith('%') => $"{Digits(worst.Absolute ?? 0)} s",
        _ when worst.Relative is { } relative => $"{Digits(100 * relative)} %",
        _ => $"{Digits(100 * worst.OfTolerance)} % of the tolerance",
    };

    /// <summary>Two significant digits, never as a power of ten.</summary>
    private static string Digits(double number)
    {
        if (number <= 0 || !double.IsFinite(number))
        {
            return number.ToString("0", CultureInfo.InvariantCulture);
        }

        var decimals = Math.Clamp(1 - (int)Math.Floor(Math.Log10(number)), 0, 15);
        return Fixed(number, decimals);
    }

    /// <summary>Two decimals more than the tolerance deserves, so that rounding noise of a machine never shows.</summary>
    private static int Decimals(double allowed) => allowed > 0 ? Math.Clamp((int)Math.Ceiling(-Math.Log10(allowed)) + 2, 0, 12) : 3;

    private static string Fixed(double number, int decimals)
    {
        var text = number.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.StartsWith('-') && text.AsSpan(1).IndexOfAnyExcept('0', '.') < 0 ? text[1..] : text;
    }

    private static string Plain(double number) => number.ToString("0.##################", CultureInfo.InvariantCulture);

    private static string Escape(string text)
    {
        var safe = new StringBuilder(text.Length);
        foreach (var letter in text.ReplaceLineEndings(" "))
        {
            if (letter is '\\' or '|' or '<' or '>' or '*' or '_' or '[' or ']' or '`' or '#')
            {
                safe.Append('\\');
            }

            safe.Append(letter);
        }

        return safe.ToString();
    }
}
