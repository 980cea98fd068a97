using System.Globalization;
using Laygate.Model.Measures;
using Laygate.Reading.Measures;
using Laygate.Reading.Plans;
using Laygate.Reading.RuleFiles;
using Laygate.Reading.Yaml;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Checking.Cases;

/// <summary>Holds a finding against what a case says about it.</summary>
internal static class FindingComparison
{
    /// <summary>The differences, one sentence each.</summary>
    public static IReadOnlyList<string> Compare(MapToken expected, Finding actual)
    {
        var found = new List<string>();
        Words("outcome", expected.Text("outcome"), Model.Plans.Words.Of(actual.Outcome), found);
        Words("status", expected.Text("status") ?? "none", Model.Plans.Words.Of(actual.Status), found);
        if (expected.Text("strength") is { } strength)
        {
            Words("strength", strength, actual.Limit is { } limit ? Model.Plans.Words.Of(limit.Strength) : "none", found);
        }

        if (expected.Find("missing") is not null)
        {
            Missing(expected.Texts("missing"), actual, found);
        }

        if (expected.Text("value") is { } value)
        {
            Shown("value", value, actual.Value, found);
        }

        if (expected.Text("limit") is { } text)
        {
            Limit(text, actual.Limit, found);
        }

        Completeness(expected, actual, found);
        return found;
    }

    // A case that leaves out a number would hold whatever the number became.
    private static void Completeness(MapToken expected, Finding actual, List<string> found)
    {
        if (actual.Outcome is Outcome.Met or Outcome.Missed && actual.Check is not (CheckKind.Present or CheckKind.NotBefore))
        {
            found.AddRange(new[] { "value", "limit" }.Where(key => expected.Find(key) is null).Select(key => $"The case does not say what the {key} is."));
        }
    }

    private static void Words(string what, string? expected, string actual, List<string> found)
    {
        if (!string.Equals(expected, actual, StringComparison.Ordinal))
        {
            found.Add($"The {what} is {actual}, not {expected}.");
        }
    }

    private static void Missing(IReadOnlyList<string> expected, Finding actual, List<string> found)
    {
        var missing = actual.Missing.Select(input => input.Key.Length == 0 ? input.Address : $"{input.Address}/{input.Key}").ToList();
        if (!missing.Order(StringComparer.Ordinal).SequenceEqual(expected.Order(StringComparer.Ordinal), StringComparer.Ordinal))
        {
            found.Add($"Missing is {(missing.Count == 0 ? "nothing" : string.Join(", ", missing))}, not {string.Join(", ", expected)}.");
        }
    }

    private static void Limit(string expected, ShownLimit? actual, List<string> found)
    {
        var ends = expected.Split(" to ");
        if (actual is { Low: not null, High: not null } && ends.Length == 2)
        {
            Shown("lower limit", ends[0], actual.Low, found);
            Shown("upper limit", ends[1], actual.High, found);
        }
        else if (actual is { Low: not null, High: not null })
        {
            found.Add($"The limit is a band, from {Write(actual.Low)} to {Write(actual.High)}, not {expected}.");
        }
        else
        {
            Shown("limit", expected, actual?.Low ?? actual?.High, found);
        }
    }

    private static void Shown(string what, string expected, ShownValue? actual, List<string> found)
    {
        if (actual is null)
        {
            found.Add($"There is no {what}; the case says {expected}.");
        }
        else if (actual.Number is { } number ? !SameNumber(expected, number, actual.Unit) : !SameText(expected, actual.Text ?? string.Empty))
        {
            found.Add($"The {what} is {Write(actual)}, not {expected}.");
        }
    }

    // A moment may be written without its offset from UTC.
    private static bool SameText(string expected, string actual) =>
        string.Equals(expected, actual, StringComparison.Ordinal)
        || (ScalarLooksLikeMoment(expected) && actual.StartsWith(expected, StringComparison.Ordinal));

    private static bool ScalarLooksLikeMoment(string text) => ScalarTexts.Moment(text) is not null;

    private static bool SameNumber(string expected, double actual, string unit)
    {
        var parts = MeasureText.Split(expected) ?? (MeasureText.IsBareNumber(expected) ? (expected, string.Empty) : null);
        if (parts is not var (digits, written) || InUnit(actual, unit, written) is not { } converted)
        {
            return false;
        }

        var point = digits.IndexOf('.', StringComparison.Ordinal);
        var decimals = point < 0 ? 0 : digits.Length - point - 1;
        var tolerance = 0.5 * Math.Pow(10, -decimals) * (1 + 1e-9);
        return Math.Abs(converted - double.Parse(digits, CultureInfo.InvariantCulture)) <= tolerance;
    }

    private static double? InUnit(double number, string from, string to)
    {
        if (string.Equals(from, to, StringComparison.Ordinal))
        {
            return number;
        }

        return UnitTable.Find(from) is { } own && UnitTable.Find(to) is { } wanted && own.Dimension == wanted.Dimension
            ? wanted.FromSi(own.ToSi(number))
            : null;
    }

    private static string Write(ShownValue value) =>
        value.Number is { } number ? $"{number.ToString("G6", CultureInfo.InvariantCulture)} {value.Unit}".TrimEnd() : value.Text ?? "nothing";
}
